"""The small engine's interpreter without what no calculator can call.

The interpreter brings modules that `calc` may not import (asyncio, tarfile, unittest, encryption, ...): a
third of its bytes. In the slim one, functions that are left out stop the engine when they are called, and the
page goes on with the whole one; modules written in Python that it holds ready-made are not found. Nothing
else differs.

Which functions are left out is noted by `python -m scripts.slimming`, to be run again with every new release
of the interpreter.
"""

import re
from hashlib import sha256
from pathlib import Path

from scripts.building import wasm
from scripts.building.errors import BuildError

NOTED = Path(__file__).with_name("left_out.txt")
STOP = bytes([0, 0, wasm.END])
"""A body without variables that does what must never be reached."""
NAMES = re.compile(rb"(?:[\w/]+\.py\0){10,}\0")
"""The table of modules that are held ready-made; an empty one begins with a zero."""
POINTER_BYTES = 4
MODULE_POINTERS = 3
"""Of a ready-made module the interpreter holds addresses of its names, its constants and its code."""


def slim(interpreter: bytes) -> bytes:
    """Return an interpreter that lacks what is noted.

    Raises:
        BuildError: the note belongs to another interpreter.
    """
    made_from, *ranges = NOTED.read_text().split()
    if made_from != sha256(interpreter).hexdigest():
        raise BuildError("the interpreter has changed; run: python -m scripts.slimming")
    left_out = {index for each in ranges for index in _range(each)}
    return wasm.joined([_slim(each, left_out) for each in wasm.sections_of(interpreter)])


def ranges_of(numbers: set[int]) -> list[str]:
    """Return numbers as text: `3-7` for five in a row."""
    firsts = sorted(each for each in numbers if each - 1 not in numbers)
    lasts = sorted(each for each in numbers if each + 1 not in numbers)
    return [f"{first}-{last}" for first, last in zip(firsts, lasts, strict=True)]


def _range(text: str) -> range:
    first, last = map(int, text.split("-"))
    return range(first, last + 1)


def _slim(section: wasm.Section, left_out: set[int]) -> wasm.Section:
    if section.id == wasm.CODE:
        bodies = [STOP if index in left_out else body
                  for index, body in enumerate(wasm.items(section.content))]
        return wasm.Section(wasm.CODE, wasm.of_items(bodies))
    if section.id == wasm.DATA:
        return wasm.Section(wasm.DATA, without_modules(section.content))
    return section


def without_modules(data: bytes) -> bytes:
    """Return a data section without the modules written in Python that it holds ready-made.

    Behind the table of their names stand, module by module, the addresses of their parts. What lies between
    the first of these and the code of the last module belongs to them alone.
    """
    to_place, names = _first_segment(data), NAMES.search(data)
    if not names:
        raise BuildError("the interpreter holds no modules where they are looked for")
    table = to_place + -(-(names.end() - to_place) // POINTER_BYTES) * POINTER_BYTES
    many = names[0].count(b"\0") - 1
    parts = [int.from_bytes(data[table + POINTER_BYTES * place:][:POINTER_BYTES], "little")
             for place in range(MODULE_POINTERS * many)]
    begin, end = (to_place + address for address in (min(filter(None, parts)), parts[-1]))
    emptied = bytearray(data)
    emptied[names.start()] = 0
    emptied[begin:end] = bytes(end - begin)
    return bytes(emptied)


def _first_segment(data: bytes) -> int:
    """Return what to add to an address in memory to find it in the first segment of a data section."""
    _, at = wasm.number(data, 0)
    if data[at] or data[at + 1] != wasm.CONSTANT:
        raise BuildError("the interpreter's data does not begin at a fixed address")
    address, at = wasm.number(data, at + 2)  # which is positive, and so has the same form without a sign
    _, at = wasm.number(data, at + 1)
    return at - address
