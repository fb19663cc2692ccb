// MicroPython behind the calls that both engines share.

import { startInterpreter } from "./interpreter.mjs";
import { fetchPack, packKeeper } from "./packs.mjs";

/** @import { EngineFiles, PythonFunction } from "./types.d.ts" */

const CORE = "core"; // what every calculator needs

/** @type {PythonFunction} */
let begin;
/** @type {PythonFunction} */
let advance;
/** @type {PythonFunction} */
let find;
/** @type {(pack: string) => Promise<void>} */
let keepPack;

/**
 * Load the interpreter and the package; files holds their addresses.
 * @param {EngineFiles} files
 */
export async function start(files) {
  const [python, core] = await Promise.all([
    startInterpreter(fetch(files.wasm)),
    fetchPack(files.calc, CORE),
  ]);
  python.add(core);
  const answer = python.load("calc.answer");
  begin = answer("begin");
  advance = answer("advance");
  find = python.load("calc.catalog")("find");
  keepPack = packKeeper(files.calc, python.add);
}

/**
 * See to it that a calculator can be asked. Its modules run when it is first asked for.
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
  find(calculator);
}

/**
 * Begin a request (JSON text); returns a function that goes one step on and returns JSON text.
 * @param {string} request
 */
export function run(request) {
  begin(request);
  return () => /** @type {string} */ (advance());
}
