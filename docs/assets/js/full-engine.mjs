// Pyodide, a whole CPython, behind the three calls that both engines share.

import { CORE, FIND_PACKAGE, fetchPack, packKeeper, writePackage } from "./package-files.mjs";
import { importFrom } from "./transfers.mjs";

/** @import { EngineFiles, PythonAnswer, Sources } from "./types.d.ts" */

/** @type {PythonAnswer} */
let answer;
/** @type {(calculator: string) => Promise<void>} */
let keepPack;

/**
 * Return the interpreter, with a package's sources (awaited beside it) ready to import.
 * @param {string} address
 * @param {Promise<Sources>} awaitedSources
 */
export async function loadPython(address, awaitedSources) {
  const [{ loadPyodide }, sources] = await Promise.all([importFrom(`${address}pyodide.mjs`), awaitedSources]);
  const python = await loadPyodide({ indexURL: address });
  writePackage(python.FS, sources);
  python.runPython(FIND_PACKAGE);
  return python;
}

/**
 * Load the interpreter and the package; files holds their addresses.
 * @param {EngineFiles} files
 */
export async function start(files) {
  const python = await loadPython(files.pyodide, fetchPack(files.calc, CORE));
  keepPack = packKeeper(python.FS, files.calc);
  answer = python.pyimport("calc.answer");
}

/**
 * See to it that a calculator can be asked.
 * @param {string} calculator
 */
export function prepare(calculator) {
  return keepPack(calculator);
}

/**
 * Begin a request (JSON text); returns a function that goes one step on and returns JSON text.
 * @param {string} request
 */
export function run(request) {
  answer.begin(request);
  return () => answer.advance();
}

