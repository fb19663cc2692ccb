// Owns the Python that runs a reader's programs. JSON text in, JSON text out:
//   in   {"start": {...}}     once, with the files' addresses
//        {"program": "...", "bow": "[...]"}, the entries of the bow that the reader gives to it, or null
//   out  {"ready": true} or {"failed": "why"}
//        {"printed": "text", "isError": false}, then {"ended": true}, or {"ended": false} after an error in the
//        program, or {"crash": "why"} if Python itself came to a halt

import { run, start } from "./programs-engine.mjs";
import { labelWasm } from "./wasm-fetch.mjs";

/** @import { EngineFiles } from "./types.d.ts" */

// A program may be anybody's. What leads to the bows that this browser keeps, to the offline copy, or to
// another worker that still has both, is gone before the first one runs.
const CLOSED = ["indexedDB", "caches", "Worker", "SharedWorker", "BroadcastChannel", "importScripts", "cookieStore"];
const CLOSED_OF_NAVIGATOR = ["storage", "locks", "storageBuckets", "serviceWorker"];

self.onmessage = ({ data }) => {
  const message = JSON.parse(data);
  if (message.start) begin(message.start);
  else execute(message);
};

/** @param {EngineFiles} files */
async function begin(files) {
  labelWasm();
  try {
    await start(files, (printed, isError) => tell({ printed, isError }));
    closeTheStore();
    tell({ ready: true });
  } catch (error) {
    tell({ failed: String(error) });
  }
}

function closeTheStore() {
  CLOSED.forEach((name) => remove(self, name));
  CLOSED_OF_NAVIGATOR.forEach((name) => remove(navigator, name));
}

/**
 * Take a name off an object and off all that it inherits from.
 * @param {object} object
 * @param {string} name
 */
function remove(object, name) {
  for (let holder = object; holder; holder = Object.getPrototypeOf(holder)) Reflect.deleteProperty(holder, name);
}

/** @param {{program: string, bow: string | null}} asked */
function execute({ program, bow }) {
  try {
    tell({ ended: run(program, bow) });
  } catch (error) {
    tell({ crash: String(error) });
  }
}

/** @param {Record<string, unknown>} message */
function tell(message) {
  postMessage(JSON.stringify(message));
}
