// For node: the engine modules fetch, and here what they fetch lies on the disk.

import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";

globalThis.fetch = async (address) => new Response(await readFile(new URL(address)), {
  headers: { "Content-Type": address.endsWith(".wasm") ? "application/wasm" : "application/octet-stream" },
});

/** The engines' files as a built site on the disk names them; outside a browser Pyodide wants a path. */
export function onDisk(files) {
  return { ...files, pyodide: fileURLToPath(files.pyodide) };
}
