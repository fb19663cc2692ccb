"""What a function of a WebAssembly module calls, and a module that notes what was called.

Opcodes are those of the WebAssembly core specification, chapter 5, "Instructions".
"""

from scripts.building import wasm

IMPORTS, GLOBALS, EXPORTS = 2, 6, 7
OF_FUNCTION, OF_TABLE, OF_MEMORY, OF_GLOBAL = range(4)
CALL, CALL_INDIRECT, BRANCH_TABLE, FLOAT, DOUBLE, PREFIX, SELECT = 0x10, 0x11, 0x0E, 0x43, 0x44, 0xFC, 0x1C
WITH_ONE_NUMBER = (0x02, 0x03, 0x04, 0x0C, 0x0D, *range(0x20, 0x27), 0x3F, 0x40, 0x41, 0x42, 0xD0, 0xD2)
WITH_TWO_NUMBERS = (CALL_INDIRECT, *range(0x28, 0x3F))
NUMBERS_BEHIND_PREFIX = {8: 2, 9: 1, 10: 2, 11: 1, 12: 2, 13: 1, 14: 2, 15: 1, 16: 1, 17: 1}
UNKNOWN = (*range(0x06, 0x0B), *range(0x12, 0x1A), 0xFD, 0xFE)
"""Exceptions, tail calls, vectors and threads, which the interpreter does without."""
I32 = 0x7F
SET_TO_ONE = bytes([wasm.CONSTANT, 1, 0x24])
VARIABLE_OF_NOUGHT = bytes([I32, 1, wasm.CONSTANT, 0, wasm.END])
NAME = "called"


def called_by(body: bytes) -> set[int]:
    """Return the numbers of the functions that a body calls by name."""
    found: set[int] = set()
    at = _behind_variables(body)
    while at < len(body):
        opcode, at = body[at], at + 1
        if opcode in UNKNOWN:
            raise ValueError(f"opcode {opcode:#x} is not read here")
        if opcode == CALL:
            function, at = wasm.number(body, at)
            found.add(function)
            continue
        numbers = (opcode in WITH_ONE_NUMBER) + 2 * (opcode in WITH_TWO_NUMBERS)
        if opcode in (BRANCH_TABLE, SELECT):
            many, at = wasm.number(body, at)
            numbers = many + (opcode == BRANCH_TABLE)
        elif opcode == PREFIX:
            second, at = wasm.number(body, at)
            numbers = NUMBERS_BEHIND_PREFIX.get(second, 0)
        for _ in range(numbers):
            _, at = wasm.number(body, at)
        at += 4 * (opcode == FLOAT) + 8 * (opcode == DOUBLE)
    return found


def _behind_variables(body: bytes) -> int:
    groups, at = wasm.number(body, 0)
    for _ in range(groups):
        _, at = wasm.number(body, at)
        at += 1
    return at


def with_all_called(called: set[int], bodies: list[bytes], imported: int, but: set[int]) -> set[int]:
    """Return functions and all that they may call by name, counted from the first that is not imported.

    but: functions that are not followed, nor are they among what is returned.
    """
    met = set(but)
    waiting = list(called)
    while waiting:
        function = waiting.pop()
        if function not in met:
            met.add(function)
            waiting += [other - imported for other in called_by(bodies[function]) if other >= imported]
    return met - but


def imported_functions(module: bytes) -> int:
    """Return how many functions a module imports."""
    [content] = [each.content for each in wasm.sections_of(module) if each.id == IMPORTS]
    many, at = wasm.number(content, 0)
    found = 0
    for _ in range(many):
        for _ in ("from", "name"):
            size, at = wasm.number(content, at)
            at += size
        kind, at = content[at], at + 1
        found += kind == OF_FUNCTION
        if kind == OF_GLOBAL:
            at += 2
            continue
        at += kind == OF_TABLE
        limits, at = (0, at) if kind == OF_FUNCTION else wasm.number(content, at)
        for _ in range(1 + limits % 2):
            _, at = wasm.number(content, at)
    return found


def exported_functions(module: bytes) -> dict[str, int]:
    """Return the functions that scripts may call by name, counted from the first that is not imported."""
    [content] = [each.content for each in wasm.sections_of(module) if each.id == EXPORTS]
    imported = imported_functions(module)
    many, at = wasm.number(content, 0)
    found = {}
    for _ in range(many):
        size, at = wasm.number(content, at)
        name, kind = content[at:at + size].decode(), content[at + size]
        index, at = wasm.number(content, at + size + 1)
        if kind == OF_FUNCTION:
            found[name] = index - imported
    return found


def noting(module: bytes) -> bytes:
    """Return a module in which each function sets a variable of its own, `called0` and so on, when it begins.

    The module must import no variables.
    """
    sections = wasm.sections_of(module)
    content = {each.id: each.content for each in sections}
    bodies = wasm.items(content[wasm.CODE])
    first, _ = wasm.number(content[GLOBALS], 0)
    changed = {
        GLOBALS: _with_more(content[GLOBALS], [VARIABLE_OF_NOUGHT] * len(bodies)),
        EXPORTS: _with_more(content[EXPORTS], [
            wasm.counted(f"{NAME}{index}".encode()) + bytes([OF_GLOBAL]) + wasm.as_number(first + index)
            for index in range(len(bodies))]),
        wasm.CODE: wasm.of_items([_noting(body, first + index) for index, body in enumerate(bodies)]),
    }
    return wasm.joined([wasm.Section(each.id, changed.get(each.id, each.content)) for each in sections])


def _with_more(content: bytes, more: list[bytes]) -> bytes:
    many, at = wasm.number(content, 0)
    return wasm.as_number(many + len(more)) + content[at:] + b"".join(more)


def _noting(body: bytes, variable: int) -> bytes:
    at = _behind_variables(body)
    return body[:at] + SET_TO_ONE + wasm.as_number(variable) + body[at:]
