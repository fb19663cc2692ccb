// Fetching WebAssembly from any host: some label it as a plain file, and then
// browsers refuse to compile it while it arrives.

const WASM = "application/wasm";
const original = globalThis.fetch;

/** From now on every .wasm response carries the right label. */
export function labelWasm() {
  globalThis.fetch = (resource, options) => {
    const address = resource instanceof Request ? resource.url : String(resource);
    return address.endsWith(".wasm") ? fetchWasm(address, options) : original(resource, options);
  };
}

/**
 * @param {string} address
 * @param {RequestInit | undefined} options
 */
async function fetchWasm(address, options) {
  const response = await original(address, options);
  const labelled = response.headers.get("Content-Type")?.startsWith(WASM);
  if (labelled || !response.ok) return response;
  return new Response(response.body, { headers: { "Content-Type": WASM } });
}
