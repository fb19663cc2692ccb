// Puts the Python package into the file system of an interpreter, pack by pack:
// what all calculators need, then what the one asked for adds.
// Nothing is executed here: a calculator's module runs when it is first asked for.

/** @import { PythonFiles, Sources } from "./types.d.ts" */

const HOME = "/home/rebrace";

export const CORE = "core";

/**
 * Fetch a pack of sources: the core, or the one under a calculator's id.
 * @param {string} folder
 * @param {string} name
 * @returns {Promise<Sources>}
 */
export async function fetchPack(folder, name) {
  const response = await fetch(`${folder}${encodeURIComponent(name)}.json`);
  if (!response.ok) throw new Error(`pack ${name}: ${response.status}`);
  return response.json();
}

/**
 * Return a function that sees to it that a calculator's pack is in place; each is fetched once.
 * @param {PythonFiles} fileSystem
 * @param {string} folder
 * @returns {(calculator: string) => Promise<void>}
 */
export function packKeeper(fileSystem, folder) {
  const kept = new Map();
  return (calculator) => {
    if (!kept.has(calculator)) {
      kept.set(calculator, fetchPack(folder, calculator).then((sources) => writePackage(fileSystem, sources)));
      kept.get(calculator).catch(() => kept.delete(calculator));
    }
    return kept.get(calculator);
  };
}

/** Python statements that make the written package importable. */
export const FIND_PACKAGE = `import sys\nsys.path.insert(0, "${HOME}")`;

/**
 * Write {"calc/answer.py": "source", ...} into an Emscripten file system.
 * @param {PythonFiles} fileSystem
 * @param {Sources} sources
 */
export function writePackage(fileSystem, sources) {
  for (const [path, source] of Object.entries(sources)) {
    const whole = `${HOME}/${path}`;
    makeFolders(fileSystem, whole.split("/").slice(1, -1));
    fileSystem.writeFile(whole, source);
  }
}

/**
 * @param {PythonFiles} fileSystem
 * @param {string[]} names
 */
function makeFolders(fileSystem, names) {
  let folder = "";
  for (const name of names) {
    folder += `/${name}`;
    if (!fileSystem.analyzePath(folder).exists) fileSystem.mkdir(folder);
  }
}
