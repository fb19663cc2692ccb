// What a worker fetches: that bytes come, and why they do not.

/** @import { Cause } from "./types.d.ts" */

const SMALLEST_WASM = new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0]);
const TELL_AGAIN_MS = 500;

/** @type {Cause | null} */
let noted = null; // the first thing that went wrong
/** @type {() => void} */
let onBroken = () => {};

/**
 * From now on tell of bytes that any fetch brings, and note what goes wrong.
 * @param {() => void} onBytes
 */
export function watchTransfers(onBytes) {
  const plain = globalThis.fetch;
  let toldAt = -Infinity;
  const came = () => {
    if (performance.now() - toldAt < TELL_AGAIN_MS) return;
    toldAt = performance.now();
    onBytes();
  };
  self.addEventListener("securitypolicyviolation", () => note("policy", { surely: true }));
  globalThis.fetch = async (resource, options) => {
    const response = await plain(resource, options).catch((error) => {
      note("connection");
      throw error;
    });
    came();
    if (response.ok) count(response.clone(), came);
    else note("missing");
    return response;
  };
}

/**
 * Do what needs files; as soon as one of them is lost it fails, even where what waits for it would wait for ever.
 * @template Outcome
 * @param {() => Promise<Outcome>} work
 * @returns {Promise<Outcome>}
 */
export function withFiles(work) {
  noted = null;
  /** @type {Promise<never>} */
  const broken = new Promise((_, reject) => (onBroken = () => reject(new Error("a file is lost"))));
  return Promise.race([work(), broken]);
}

/**
 * Import a module; why it cannot be is found out by fetching it.
 * @param {string} address
 */
export async function importFrom(address) {
  try {
    return await import(address);
  } catch (error) {
    await fetch(address);
    note("damaged");
    throw error;
  }
}

/** Throws where this browser has no WebAssembly, or may not use it: some loaders never say so. */
export function tryWebAssembly() {
  if (typeof WebAssembly !== "object") note("old");
  else if (!compiles(SMALLEST_WASM)) note("policy");
  if (noted) throw new Error(noted);
}

/** @param {Uint8Array<ArrayBuffer>} wasm */
function compiles(wasm) {
  try {
    return Boolean(new WebAssembly.Module(wasm));
  } catch {
    return false;
  }
}

/**
 * Why something failed, as far as that is known.
 * @param {unknown} error
 * @returns {Promise<Cause>}
 */
export async function causeOf(error) {
  await new Promise((resolve) => setTimeout(resolve)); // a policy speaks up after the error that it makes
  if (noted) return noted;
  const isUnreadable = error instanceof SyntaxError || (error instanceof Error && /WebAssembly|CompileError/.test(String(error)));
  return isUnreadable ? "damaged" : "unknown";
}

/**
 * @param {Cause} cause
 * @param {{surely?: boolean}} how
 */
function note(cause, { surely = false } = {}) {
  noted = surely ? cause : noted ?? cause;
  onBroken();
}

/**
 * @param {Response} response
 * @param {() => void} came
 */
async function count({ body }, came) {
  const reader = body?.getReader();
  try {
    while (reader && !(await reader.read()).done) came();
  } catch {
    note("connection");
  }
}
