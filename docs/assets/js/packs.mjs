// The package as the small engine reads it, pack by pack: what all calculators need, then what the one asked for
// adds. A pack is a line of JSON, {"calc/answer.mpy": bytes, ...}, and behind it the files in that order.

/** @import { Modules } from "./types.d.ts" */

const LINE_END = 10;

/**
 * @param {string} folder
 * @param {string} name
 * @returns {Promise<Modules>}
 */
export async function fetchPack(folder, name) {
  const response = await fetch(`${folder}${encodeURIComponent(name)}.pack`);
  if (!response.ok) throw new Error(`pack ${name}: ${response.status}`);
  return unpacked(new Uint8Array(await response.arrayBuffer()));
}

/**
 * Return a function that sees to it that a pack is where add has put it; each is fetched once.
 * @param {string} folder
 * @param {(modules: Modules) => void} add
 * @returns {(name: string) => Promise<void>}
 */
export function packKeeper(folder, add) {
  const kept = new Map();
  return (name) => {
    if (!kept.has(name)) {
      kept.set(name, fetchPack(folder, name).then(add));
      kept.get(name).catch(() => kept.delete(name));
    }
    return kept.get(name);
  };
}

/**
 * @param {Uint8Array} pack
 * @returns {Modules}
 */
export function unpacked(pack) {
  const head = pack.indexOf(LINE_END);
  /** @type {[string, number][]} */
  const sizes = Object.entries(JSON.parse(new TextDecoder().decode(pack.subarray(0, head))));
  let end = head + 1;
  return sizes.map(([path, size]) => [path, pack.subarray(end, (end += size))]);
}
