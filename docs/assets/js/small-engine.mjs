// MicroPython behind the three calls that both engines share.

import { CORE, FIND_PACKAGE, fetchPack, packKeeper, writePackage } from "./package-files.mjs";
import { importFrom } from "./transfers.mjs";
import { fetchEarly } from "./wasm-fetch.mjs";

/** @import { EngineFiles, PythonAnswer, PythonCatalog } from "./types.d.ts" */

const HEAP_BYTES = 8 * 1024 * 1024;

/** @type {PythonAnswer} */
let answer;
/** @type {PythonCatalog} */
let catalog;
/** @type {(calculator: string) => Promise<void>} */
let keepPack;

/**
 * Load the interpreter and the package; files holds their addresses.
 * @param {EngineFiles} files
 */
export async function start(files) {
  fetchEarly(files.wasm);
  const [{ loadMicroPython }, sources] = await Promise.all([
    importFrom(files.micropython),
    fetchPack(files.calc, CORE),
  ]);
  const python = await loadMicroPython({ url: files.wasm, heapsize: HEAP_BYTES });
  writePackage(python.FS, sources);
  keepPack = packKeeper(python.FS, files.calc);
  python.runPython(FIND_PACKAGE);
  answer = python.pyimport("calc.answer");
  catalog = python.pyimport("calc.catalog");
}

/**
 * See to it that a calculator can be asked.
 * @param {string} calculator
 */
export function prepare(calculator) {
  return keepPack(calculator);
}

/**
 * Read a calculator's modules, which are there, before it is first asked.
 * @param {string} calculator
 */
export function read(calculator) {
  catalog.find(calculator);
}

/**
 * Begin a request (JSON text); returns a function that goes one step on and returns JSON text.
 * @param {string} request
 */
export function run(request) {
  answer.begin(request);
  return () => answer.advance();
}

