// Pyodide for the programs that a reader writes: the whole package as it is written, and all that is printed.

import { loadPython } from "./full-engine.mjs";

/** @import { EngineFiles } from "./types.d.ts" */

const MOST_PRINTED = 100_000; // characters of one run; a page that shows more only gets slow
const CUT = "\n[More was printed than this page shows.]\n";

// A traceback starts in the reader's program and shows its lines, as CPython's does for a file.
const RUNNER = `
import linecache, pathlib, sys, traceback, types

NAME = "your program"
for stream in (sys.stdout, sys.stderr):
    stream.reconfigure(line_buffering=True)

def give(record):
    """Put a copy of a bow where open_bow() finds it, without its owner; none: take the former one away."""
    from calc.record.entries import entries_json, read_entries
    from calc.record.file import without_private
    from calc.record.opened import BESIDE

    beside = pathlib.Path(BESIDE)
    if record is None:
        beside.unlink(missing_ok=True)
    else:
        beside.write_text(entries_json(without_private(read_entries(record)[0])), "utf-8")

def run(source):
    linecache.cache[NAME] = len(source), None, source.splitlines(True), NAME
    sys.modules["__main__"] = types.ModuleType("__main__")
    try:
        try:
            exec(compile(source, NAME, "exec"), sys.modules["__main__"].__dict__)
        finally:
            for stream in (sys.stdout, sys.stderr):
                stream.flush()
    except SystemExit as leaving:
        if isinstance(leaving.code, str):
            print(leaving.code, file=sys.stderr)
        return leaving.code in (None, 0)
    except BaseException as error:
        traceback.print_exception(error.with_traceback(error.__traceback__.tb_next))
        return False
    return True
`;

/** @type {(program: string) => boolean} */
let runner;
/** @type {(bow: string | undefined) => void} */
let give;
let left = 0;

/**
 * Load the interpreter and the package; whatever a program prints goes to onPrinted(text, isError).
 * @param {EngineFiles} files
 * @param {(text: string, isError: boolean) => void} onPrinted
 */
export async function start(files, onPrinted) {
  const python = await loadPython(files);
  python.setStdout(printer((text) => onPrinted(text, false)));
  python.setStderr(printer((text) => onPrinted(text, true)));
  python.setStdin({ stdin: () => null }); // nobody can type to a program: input() raises EOFError
  const names = python.toPy({ __name__: "runner" });
  python.runPython(RUNNER, { globals: names });
  runner = names.get("run");
  give = names.get("give");
}

/**
 * Run a program, with a copy of a bow (its entries as JSON) or without one; returns whether it ended without an error.
 * @param {string} program
 * @param {string | null} bow
 */
export function run(program, bow) {
  left = MOST_PRINTED;
  give(bow ?? undefined); // of null Python would make an object of its own
  return runner(program);
}

/** @param {(text: string) => void} pass */
function printer(pass) {
  const decoder = new TextDecoder();
  return {
    /** @param {Uint8Array} bytes */
    write(bytes) {
      const text = decoder.decode(bytes, { stream: true });
      if (left > 0) pass(text.length > left ? text.slice(0, left) + CUT : text);
      left -= text.length;
      return bytes.length;
    },
  };
}
