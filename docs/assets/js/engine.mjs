// The page's side of the Python engine: start, run, stop. One worker a visit; the newest request wins.
// States: idle, loading, ready, failed. Failed carries a sentence for the reader and stays until asked again.

/** @import { Asked, Cause, EngineFiles, Told } from "./types.d.ts" */

/**
 * @typedef {{answer?: unknown, error?: string, id?: number, alive?: boolean, ready?: string, failed?: Cause,
 *   fetching?: boolean, lost?: Cause, crash?: string, progress?: number}} Heard what a worker says, see there
 */
/**
 * @typedef Pending
 * @property {number} id
 * @property {Asked} request
 * @property {(progress: number) => void} onProgress
 * @property {(sentence: string) => void} onTrouble
 * @property {(outcome: Told | null) => void} resolve
 * @property {Promise<Told | null>} settled
 */

const SILENCE_MS = 8_000; // without a byte: then the reader is told
const SILENCE_LIMIT_MS = 20_000; // then it is given up
const PROBE_LIMIT_MS = 1_500;
/** @type {("small" | "whole" | "full")[]} */
const ORDER = ["small", "whole", "full"]; // the whole small one for what its slim interpreter lacks

/** @type {Record<Cause, string>} */
const WHY = {
  connection: "the connection broke off, or brought nothing for a while. Try again where the signal is better.",
  missing: "the site does not have a part of it, as happens while a newer release is put in place. Try again in a " +
    "minute. If that does not help, reload the page; its address holds your figures.",
  damaged: "a part of it arrived damaged, or a network put its own page in its place, as one does that asks you to " +
    "sign in. See to that, then try again.",
  policy: "a policy of this device, this network or this site forbids it to run. Try again once that allows " +
    "WebAssembly and workers, or use another browser.",
  old: "this browser is too old for it. It needs one with WebAssembly and workers of modules: bring it up to date, " +
    "or use another.",
  unknown: "a part of it did not work in this browser. Try again; if that does not help, use another browser.",
};
const COULD_NOT_START = "Nothing typed is worked out, for the calculator could not start: ";
const SILENT =
  "Nothing has come over the connection for some seconds. What you typed is kept, and is worked out as soon as the " +
  "rest of the calculator arrives.";
const USUAL = "The usual calculator could not start: ";
const LARGER = " Meanwhile a larger one, of 4 MB, is being fetched in its place.";
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
  #isFetching = false; // a ready engine waits for a part of the package
  /** @type {number | undefined} */
  #watchdog;
  #isAlive = false; // the worker's own script runs
  #isRefused = false; // a policy was heard to refuse something
  #trouble = ""; // what the reader is told while it may still come right
  #newest = 0;
  /** @type {Pending | null} */
  #pending = null;

  state = "idle";
  reason = "";

  /**
   * files: addresses of wasm, whole, calc and pyodide, or null if the page names none.
   * @param {EngineFiles | null} files
   */
  constructor(files) {
    this.#files = files;
    document.addEventListener("securitypolicyviolation", ({ effectiveDirective }) => {
      this.#isRefused ||= /^(worker|script|connect)-src/.test(effectiveDirective);
    });
  }

  start() {
    if (this.state === "idle") this.#boot();
  }

  /**
   * Send a request. Resolves to {answer}, {error: sentence} or {failed: sentence};
   * to null if a newer request took its place.
   * @param {Asked} request
   * @param {(progress: number) => void} onProgress
   * @param {(sentence: string) => void} onTrouble hears what holds it up, and of nothing once it goes on
   * @returns {Promise<Told | null>}
   */
  run(request, onProgress = () => {}, onTrouble = () => {}) {
    this.#pending?.resolve(null);
    /** @type {Pending["resolve"]} */
    let resolve = () => {};
    /** @type {Pending["settled"]} */
    const settled = new Promise((settle) => (resolve = settle));
    this.#newest += 1;
    this.#pending = { id: this.#newest, request, onProgress, onTrouble, resolve, settled };
    if (this.#trouble) onTrouble(this.#trouble);
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

  /** After a failure, or instead of waiting on: begin anew, at the latest with the next request. */
  again() {
    if (this.state === "ready" && !this.#trouble) return;
    this.#endWorker();
    this.#current = 0;
    this.#restarted = false;
    this.state = "idle";
    if (this.#pending) this.#boot();
  }

  stop() {
    this.#endWorker();
    this.#settle(null);
    if (this.state !== "failed") this.state = "idle";
  }

  #boot() {
    if (!this.#files) {
      this.#fail("unknown");
      return;
    }
    this.state = "loading";
    this.#isAlive = false;
    const name = ORDER[this.#current];
    const address = new URL("./worker.mjs", import.meta.url);
    const started = name === "small" ? takeStarted() : null;
    try {
      this.#worker = started?.worker ?? moduleWorker(address);
    } catch {
      this.#fail(this.#isRefused ? "policy" : "old");
      return;
    }
    const worker = this.#worker;
    worker.onmessage = ({ data }) => this.#hear(JSON.parse(data));
    worker.onerror = async (event) => {
      event.preventDefault();
      const cause = this.#isAlive ? "unknown" : await causeOfNone(address);
      if (worker === this.#worker) this.#breakdown(this.#isRefused ? "policy" : cause);
    };
    this.#watchBytes();
    if (started) {
      for (const text of started.heard) this.#hear(JSON.parse(text));
      return;
    }
    const files = name === "whole" ? { ...this.#files, wasm: this.#files.whole } : this.#files;
    worker.postMessage(JSON.stringify({ start: name === "full" ? "full" : "small", files }));
  }

  /** @param {Heard} message */
  #hear(message) {
    if (message.alive) {
      this.#isAlive = true;
      if (this.state === "loading" || this.#isFetching) this.#watchBytes();
    } else if (message.ready) {
      this.state = "ready";
      this.#say("");
      clearTimeout(this.#watchdog);
      if (this.#pending) this.#send();
    } else if (message.failed || message.crash) {
      this.#breakdown(message.failed ?? "unknown");
    } else if (message.id === this.#pending?.id) {
      this.#hearAbout(message);
    }
  }

  /** @param {Heard} message */
  #hearAbout(message) {
    if (message.progress !== undefined) {
      this.#watch(SILENCE_LIMIT_MS);
      this.#pending?.onProgress(message.progress);
    } else if (message.fetching !== undefined) {
      this.#isFetching = message.fetching;
      if (message.fetching) this.#watchBytes();
      else this.#watch(SILENCE_LIMIT_MS);
      if (!message.fetching) this.#say("");
    } else {
      this.#isFetching = false;
      clearTimeout(this.#watchdog);
      this.#settle(message.lost ? { failed: COULD_NOT_START + WHY[message.lost] }
        : message.error ? { error: FAILED_REQUEST } : { answer: message.answer });
    }
  }

  #send() {
    this.#watch(SILENCE_LIMIT_MS);
    if (!this.#pending) return;
    const { id, request } = this.#pending;
    this.#worker?.postMessage(JSON.stringify({ id, request }));
  }

  /**
   * While starting: try the full engine, unless it cannot fare better. While running: restart once, with the request
   * that was open.
   * @param {Cause} cause
   */
  #breakdown(cause) {
    const isStarting = this.state === "loading" || this.#isFetching;
    const mayFareBetter = this.state === "loading" && this.#isAlive && cause !== "old" && cause !== "policy";
    const name = ORDER[this.#current];
    this.#endWorker();
    if (isStarting) {
      this.#current = ORDER.indexOf("full");
      if (name === "full" || !mayFareBetter || !this.#files?.pyodide) {
        this.#fail(cause);
        return;
      }
      this.#say(USUAL + WHY[cause] + LARGER);
      this.#boot();
    } else if (this.#restarted) {
      this.#giveUp(FAILED_TWICE);
    } else {
      this.#restarted = true;
      if (name === "small") this.#current = ORDER.indexOf("whole");
      this.#boot();
    }
  }

  /** @param {Cause} cause */
  #fail(cause) {
    this.#giveUp(COULD_NOT_START + WHY[cause]);
  }

  /** @param {string} sentence */
  #giveUp(sentence) {
    this.#endWorker();
    this.#trouble = "";
    this.state = "failed";
    this.reason = sentence;
    this.#settle({ failed: sentence });
  }

  /** @param {Told | null} outcome */
  #settle(outcome) {
    this.#pending?.resolve(outcome);
    this.#pending = null;
  }

  /** @param {string} sentence */
  #say(sentence) {
    if (sentence === this.#trouble) return;
    this.#trouble = sentence;
    this.#pending?.onTrouble(sentence);
  }

  /** @param {number} limit */
  #watch(limit) {
    clearTimeout(this.#watchdog);
    this.#watchdog = setTimeout(() => this.#breakdown("unknown"), limit);
  }

  /** While bytes come, however slowly, nothing is wrong. */
  #watchBytes() {
    if (this.#trouble === SILENT) this.#say("");
    clearTimeout(this.#watchdog);
    this.#watchdog = setTimeout(() => {
      this.#say(SILENT);
      this.#watchdog = setTimeout(() => this.#breakdown("connection"), SILENCE_LIMIT_MS - SILENCE_MS);
    }, SILENCE_MS);
  }

  #endWorker() {
    this.#isFetching = false;
    clearTimeout(this.#watchdog);
    this.#worker?.terminate();
    this.#worker = null;
  }
}

/** The worker that the page's head has started, once: a shared link's engine loads while its page arrives. */
function takeStarted() {
  const started = window.startedEngine;
  window.startedEngine = null;
  return started;
}

/**
 * Throws where a browser would run the script as one of the older kind, which it is not.
 * @param {URL} address
 */
function moduleWorker(address) {
  let isKnown = false;
  const worker = new Worker(address, {
    get type() {
      isKnown = true;
      return /** @type {const} */ ("module");
    },
  });
  if (!isKnown) throw new Error("this browser has no workers of modules");
  return worker;
}

/**
 * Why a worker's script did not run.
 * @param {URL} address
 * @returns {Promise<Cause>}
 */
async function causeOfNone(address) {
  try {
    const { ok, headers } = await fetch(address, { signal: AbortSignal.timeout(PROBE_LIMIT_MS) });
    if (!ok) return "missing";
    return headers.get("Content-Type")?.includes("javascript") ? "unknown" : "damaged";
  } catch {
    return "connection";
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
