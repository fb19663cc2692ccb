// The page's side of the Python engine: start, run, stop. One worker a visit; the newest request wins.
// States: idle, loading, ready, failed. Failed carries a sentence for the reader and stays until asked again.

/** @import { Asked, EngineFiles, Told } from "./types.d.ts" */

/** @typedef {Told & {id?: number, ready?: string, crash?: string, progress?: number}} Heard */
/**
 * @typedef Pending
 * @property {number} id
 * @property {Asked} request
 * @property {(progress: number) => void} onProgress
 * @property {(outcome: Told | null) => void} resolve
 * @property {Promise<Told | null>} settled
 */

const START_LIMIT_MS = { small: 20_000, whole: 20_000, full: 60_000 };
const SILENCE_LIMIT_MS = 20_000;
/** @type {("small" | "whole" | "full")[]} */
const ORDER = ["small", "whole", "full"]; // the whole small one for what its slim interpreter lacks

export const FAILED_TO_START =
  "The calculator could not start, so nothing that you type is worked out. It needs an up-to-date browser with " +
  "WebAssembly, and a connection until it has started.";
const FAILED_TWICE =
  "The calculator stopped twice and was switched off. Your figures are still in the form and in the link.";
const FAILED_REQUEST =
  "This calculation came to a halt, which is a fault in our software and not in your figures. They are kept; " +
  "please change one of them or start again from the example.";

export class Engine {
  #files;
  /** @type {Worker | null} */
  #worker = null;
  #current = 0; // place in ORDER
  #restarted = false;
  /** @type {number | undefined} */
  #watchdog;
  #newest = 0;
  /** @type {Pending | null} */
  #pending = null;

  state = "idle";
  reason = "";

  /**
   * files: addresses of micropython, wasm, whole, calc and pyodide, or null if the page names none.
   * @param {EngineFiles | null} files
   */
  constructor(files) {
    this.#files = files;
  }

  start() {
    if (this.state === "idle") this.#boot();
  }

  /**
   * Send a request. Resolves to {answer}, {error: sentence} or {failed: sentence};
   * to null if a newer request took its place.
   * @param {Asked} request
   * @param {(progress: number) => void} onProgress
   * @returns {Promise<Told | null>}
   */
  run(request, onProgress = () => {}) {
    this.#pending?.resolve(null);
    /** @type {Pending["resolve"]} */
    let resolve = () => {};
    /** @type {Pending["settled"]} */
    const settled = new Promise((settle) => (resolve = settle));
    this.#newest += 1;
    this.#pending = { id: this.#newest, request, onProgress, resolve, settled };
    if (this.state === "failed") this.#settle({ failed: this.reason });
    else if (this.state === "ready") this.#send();
    else this.start();
    return settled;
  }

  /**
   * The same for what can wait: it takes no other request's place, and gives way to any that comes.
   * @param {Asked} request
   */
  async ask(request) {
    for (;;) {
      while (this.#pending) await this.#pending.settled;
      const outcome = await this.run(request);
      if (outcome) return outcome;
    }
  }

  /** After a failure: begin anew with the next request. */
  again() {
    this.#current = 0;
    this.#restarted = false;
    this.state = "idle";
  }

  stop() {
    this.#endWorker();
    this.#settle(null);
    if (this.state !== "failed") this.state = "idle";
  }

  #boot() {
    if (!this.#files) {
      this.#fail(FAILED_TO_START);
      return;
    }
    this.state = "loading";
    const name = ORDER[this.#current];
    try {
      this.#worker = new Worker(new URL("./worker.mjs", import.meta.url), { type: "module" });
    } catch {
      this.#fail(FAILED_TO_START);
      return;
    }
    this.#worker.onmessage = ({ data }) => this.#hear(JSON.parse(data));
    this.#worker.onerror = (event) => {
      event.preventDefault();
      this.#breakdown();
    };
    this.#watch(START_LIMIT_MS[name]);
    const files = name === "whole" ? { ...this.#files, wasm: this.#files.whole } : this.#files;
    this.#worker.postMessage(JSON.stringify({ start: name === "full" ? "full" : "small", files }));
  }

  /** @param {Heard} message */
  #hear(message) {
    if (message.ready) {
      this.state = "ready";
      clearTimeout(this.#watchdog);
      if (this.#pending) this.#send();
    } else if (message.failed || message.crash) {
      this.#breakdown();
    } else if (message.id === this.#pending?.id) {
      this.#hearAbout(message);
    }
  }

  /** @param {Heard} message */
  #hearAbout(message) {
    if (message.progress !== undefined) {
      this.#watch(SILENCE_LIMIT_MS);
      this.#pending?.onProgress(message.progress);
    } else {
      clearTimeout(this.#watchdog);
      this.#settle(message.error ? { error: FAILED_REQUEST } : { answer: message.answer });
    }
  }

  #send() {
    this.#watch(SILENCE_LIMIT_MS);
    if (!this.#pending) return;
    const { id, request } = this.#pending;
    this.#worker?.postMessage(JSON.stringify({ id, request }));
  }

  /** While starting: try the full engine. While running: restart once, with the request that was open. */
  #breakdown() {
    this.#endWorker();
    const name = ORDER[this.#current];
    if (this.state === "loading") {
      this.#current = ORDER.indexOf("full");
      if (name !== "full" && this.#files?.pyodide) this.#boot();
      else this.#fail(FAILED_TO_START);
    } else if (this.#restarted) {
      this.#fail(FAILED_TWICE);
    } else {
      this.#restarted = true;
      if (name === "small") this.#current = ORDER.indexOf("whole");
      this.#boot();
    }
  }

  /** @param {string} sentence */
  #fail(sentence) {
    this.#endWorker();
    this.state = "failed";
    this.reason = sentence;
    this.#settle({ failed: sentence });
  }

  /** @param {Told | null} outcome */
  #settle(outcome) {
    this.#pending?.resolve(outcome);
    this.#pending = null;
  }

  /** @param {number} limit */
  #watch(limit) {
    clearTimeout(this.#watchdog);
    this.#watchdog = setTimeout(() => this.#breakdown(), limit);
  }

  #endWorker() {
    clearTimeout(this.#watchdog);
    this.#worker?.terminate();
    this.#worker = null;
  }
}

/**
 * Addresses of the engine's files as the page names them, or null.
 * @param {HTMLMetaElement | null} [meta]
 * @returns {EngineFiles | null}
 */
export function engineFiles(meta = document.querySelector('meta[name="rebrace-engine"]')) {
  if (!meta) return null;
  const folder = new URL("../engine/", import.meta.url);
  /** @type {EngineFiles} */
  const names = JSON.parse(meta.content);
  const address = (/** @type {string} */ name) => new URL(name, folder).href;
  return {
    micropython: address(names.micropython),
    wasm: address(names.wasm),
    whole: address(names.whole),
    calc: address(names.calc),
    pyodide: address(names.pyodide),
    sources: address(names.sources),
  };
}

/** Which state of the calculators answers here: the page names their files by content. */
export function release() {
  const calc = engineFiles()?.calc ?? "";
  return calc.slice(calc.lastIndexOf("/calc-") + 1).replace(/\W+$/, "").replace(/^calc-/, "");
}
