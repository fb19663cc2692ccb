"""Taking a WebAssembly module apart and putting it together again.

The layout is that of the WebAssembly core specification, chapter 5, "Binary Format".
"""

from typing import NamedTuple

HEADER = b"\0asm\1\0\0\0"
CODE, DATA = 10, 11
CONSTANT, END = 0x41, 0x0B


class Section(NamedTuple):
    """A section by its number, without its length."""

    id: int
    content: bytes


def sections_of(module: bytes) -> list[Section]:
    """Return the sections of a module in their order."""
    found, at = [], len(HEADER)
    while at < len(module):
        size, begin = number(module, at + 1)
        found.append(Section(module[at], module[begin:begin + size]))
        at = begin + size
    return found


def joined(sections: list[Section]) -> bytes:
    """Return the module of these sections."""
    return HEADER + b"".join(bytes([each.id]) + counted(each.content) for each in sections)


def items(content: bytes) -> list[bytes]:
    """Return the items of a section whose items all say their length, such as the bodies of functions."""
    many, at = number(content, 0)
    found = []
    for _ in range(many):
        size, begin = number(content, at)
        found.append(content[begin:begin + size])
        at = begin + size
    return found


def of_items(found: list[bytes]) -> bytes:
    """Return the content of a section with these items."""
    return as_number(len(found)) + b"".join(map(counted, found))


def counted(content: bytes) -> bytes:
    """Return content behind its length."""
    return as_number(len(content)) + content


def number(code: bytes, at: int) -> tuple[int, int]:
    """Return the unsigned number (LEB128) that stands at a place, and the place behind it."""
    value = shift = 0
    while True:
        byte = code[at]
        value |= (byte & 0x7F) << shift
        at, shift = at + 1, shift + 7
        if byte < 0x80:
            return value, at


def as_number(value: int) -> bytes:
    """Return an unsigned number in LEB128."""
    low, rest = value & 0x7F, value >> 7
    return bytes([low | 0x80]) + as_number(rest) if rest else bytes([low])
