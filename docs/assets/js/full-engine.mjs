// Pyodide, a whole CPython, behind the three calls that both engines share.

import { FIND_PACKAGE, writePackage } from "./package-files.mjs";

let answer = null;

/** Load the interpreter and the package; files holds their addresses. */
export async function start(files) {
  const [{ loadPyodide }, sources] = await Promise.all([
    import(`${files.pyodide}pyodide.mjs`),
    fetch(files.calc).then((response) => response.json()),
  ]);
  const python = await loadPyodide({ indexURL: files.pyodide });
  writePackage(python.FS, sources);
  python.runPython(FIND_PACKAGE);
  answer = python.pyimport("calc.answer");
}

/** Begin a request (JSON text); returns a function that goes one step on and returns JSON text. */
export function run(request) {
  answer.begin(request);
  return () => answer.advance();
}

export function stop() {
  answer?.destroy();
  answer = null;
}
