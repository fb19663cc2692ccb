// Pyodide, a whole CPython, behind the calls that both engines share: with the whole package as it is written.

import { importFrom } from "./transfers.mjs";

/** @import { EngineFiles, PythonAnswer } from "./types.d.ts" */

const HOME = "/home/rebrace";

/** @type {PythonAnswer} */
let answer;

/**
 * Return the interpreter, with the package ready to import; files holds their addresses.
 * @param {EngineFiles} files
 */
export async function loadPython(files) {
  const [{ loadPyodide }, sources] = await Promise.all([
    importFrom(`${files.pyodide}pyodide.mjs`),
    fetchSources(files.sources),
  ]);
  const python = await loadPyodide({ indexURL: files.pyodide });
  for (const [path, source] of Object.entries(sources)) {
    python.FS.mkdirTree(`${HOME}/${path.slice(0, path.lastIndexOf("/"))}`);
    python.FS.writeFile(`${HOME}/${path}`, source);
  }
  python.runPython(`import sys\nsys.path.insert(0, "${HOME}")`);
  return python;
}

/**
 * @param {string} address
 * @returns {Promise<Record<string, string>>}
 */
async function fetchSources(address) {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`sources: ${response.status}`);
  return response.json();
}

/**
 * Load the interpreter and the package; files holds their addresses.
 * @param {EngineFiles} files
 */
export async function start(files) {
  const python = await loadPython(files);
  answer = python.pyimport("calc.answer");
}

/** All calculators can be asked. */
export async function prepare() {}

/**
 * Begin a request (JSON text); returns a function that goes one step on and returns JSON text.
 * @param {string} request
 */
export function run(request) {
  answer.begin(request);
  return () => answer.advance();
}
