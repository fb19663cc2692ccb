// "Python at the bench": an editor, a worker that runs what stands in it, and what was printed.
// Nothing is fetched or run unless the reader presses a button, and no link can fill the editor.
// States: idle (not started), loading, ready, running.

import { engineFiles } from "./engine.mjs";
import { forget, recall, remember } from "./memory.mjs";
import { untilKept } from "./offline.mjs";
import { around, partOf, partsOf } from "./parts.mjs";

/** @import { BowStore } from "./record.d.ts" */

/** @typedef {{ready?: string, printed?: string, isError?: boolean, ended?: boolean}} Heard */

const START_LIMIT_MS = 180_000;
const OWN = "own";
const KEPT = "bench"; // what readers have written stays under the name it was first kept by
const SAY = {
  loading: "Fetching and starting Python. On a slow line this takes a while.",
  ready: "Python is ready.",
  notStarted: "Python has not been started yet.",
  running: "Running…",
  ended: "Done.",
  silent: "Done. The program printed nothing.",
  raised: "The program ended with an error. The last line says which, the lines above it say where.",
  stopping: "Stopped. Python starts afresh…",
  readyAgain: "Stopped. Python is ready again.",
  cancelled: "Stopped before Python was ready.",
  crashed: "Python itself came to a halt and starts afresh…",
  readyAfterCrash: "Python itself came to a halt and was started afresh. Your program is still here.",
  failed:
    "Python could not start in this browser. Check the connection and press Start to try again; an up-to-date " +
    "browser with WebAssembly is needed. The programs below and what they print stay readable.",
  restore: "Put the example back",
  bringBack: "Bring my changes back",
};

/** @type {Programs | null} */
let programs = null;

/**
 * Called on every page: takes up the editor that stands there, if any, and leaves the one before.
 * @param {HTMLElement | null} section
 */
export function visitPrograms(section) {
  if (programs?.section === section) return;
  programs?.leave();
  programs = section && new Programs(section);
}

class Programs {
  #editor;
  #log;
  #status;
  #buttons;
  #examples;
  #shown = OWN; // the program in the editor
  /** @type {string | null} */
  #aside = null; // the reader's changes while the example stands in their place
  /** @type {Worker | null} */
  #worker = null;
  #watchdog = 0;
  /** @type {object | null} */
  #attempt = null;
  /** @type {{text: string, isError: boolean}[]} */
  #printed = []; // what the log has still to show
  #frame = 0;
  #bows;
  /** @type {BowStore | null} */
  #store = null; // once there is a bow to give

  /** @param {HTMLElement} section */
  constructor(section) {
    this.section = section;
    this.#editor = partOf(section, "textarea", HTMLTextAreaElement);
    this.#log = partOf(section, ".rb-log", HTMLElement);
    this.#status = partOf(section, ".rb-programs-status", HTMLElement);
    const button = (/** @type {string} */ name) => partOf(section, `[data-do="${name}"]`, HTMLButtonElement);
    this.#buttons = { start: button("start"), run: button("run"), stop: button("stop"), restore: button("restore") };
    this.#examples = new Map(partsOf(document, ".rb-program[data-program]", HTMLElement).map((each) =>
      [each.dataset.program ?? "", partOf(each, "code", HTMLElement).textContent]));
    this.#bows = partOf(section, "select", HTMLSelectElement);
    this.#listen();
    this.#offerBows();
    this.#enter("idle");
    this.#open(recall(KEPT) ?? this.#examples.keys().next().value);
    section.hidden = false;
  }

  /** The reader has gone to another page. */
  leave() {
    this.#endWorker();
    this.#store?.close();
  }

  /** Which bows could be given to a program; none is, before the reader chooses one on this visit. */
  async #offerBows() {
    const { openStore } = await import("./store.mjs");
    const store = await openStore();
    const heads = await store.bows().catch(() => []);
    if (!heads.length || !this.section.isConnected) {
      store.close();
      return;
    }
    this.#store = store;
    this.#bows.append(...heads.map(({ id, title }) => new Option(title, id)));
    around(this.#bows, "[hidden]", HTMLElement).hidden = false;
  }

  #listen() {
    this.#buttons.start.addEventListener("click", () => this.#start(SAY.loading, SAY.ready));
    this.#buttons.run.addEventListener("click", () => this.#run());
    this.#buttons.stop.addEventListener("click", () => this.#stop());
    this.#buttons.restore.addEventListener("click", () => this.#restore());
    this.#editor.addEventListener("input", () => this.#edited());
    this.#editor.addEventListener("keydown", (event) => {
      if (event.key !== "Enter" || !(event.ctrlKey || event.metaKey)) return;
      event.preventDefault();
      if (this.section.dataset.state === "idle") this.#say(SAY.notStarted);
      else this.#run();
    });
    for (const each of partsOf(this.section, "[data-open]", HTMLElement)) {
      each.addEventListener("click", () => this.#open(each.dataset.open));
    }
  }

  // Programs -------------------------------------------------------------------

  /**
   * Show a program, with the reader's changes to it.
   * @param {string | undefined} id
   */
  #open(id) {
    this.#shown = id !== undefined && this.#examples.has(id) ? id : OWN;
    this.#aside = null;
    this.#editor.value = recall(`${KEPT}.${this.#shown}`) ?? this.#example();
    remember(KEPT, this.#shown);
    for (const each of partsOf(this.section, "[data-open]", HTMLElement)) {
      each.ariaPressed = String(each.dataset.open === this.#shown);
    }
    this.#offerRestoring();
  }

  #example() {
    return this.#examples.get(this.#shown) ?? "";
  }

  #edited() {
    this.#aside = null;
    this.#keep();
  }

  #keep() {
    if (this.#editor.value === this.#example()) forget(`${KEPT}.${this.#shown}`);
    else remember(`${KEPT}.${this.#shown}`, this.#editor.value);
    this.#offerRestoring();
  }

  #restore() {
    const changes = this.#aside;
    this.#aside = changes === null ? this.#editor.value : null;
    this.#editor.value = changes ?? this.#example();
    this.#keep();
  }

  #offerRestoring() {
    const changed = this.#editor.value !== this.#example();
    this.#buttons.restore.hidden = this.#shown === OWN || !(changed || this.#aside !== null);
    this.#buttons.restore.textContent = this.#aside === null ? SAY.restore : SAY.bringBack;
  }

  // Python ---------------------------------------------------------------------

  /**
   * @param {string} meanwhile
   * @param {string} atLast
   */
  async #start(meanwhile, atLast) {
    const attempt = (this.#attempt = {});
    this.#enter("loading", meanwhile);
    this.#watchdog = setTimeout(() => this.#breakdown(), START_LIMIT_MS);
    await untilKept(); // a worker made earlier fetches its modules past the offline copy, even when that takes over
    if (attempt !== this.#attempt) return; // stopped meanwhile
    const worker = new Worker(new URL("./programs-worker.mjs", import.meta.url), { type: "module" });
    this.#worker = worker;
    worker.onmessage = ({ data }) => this.#hear(JSON.parse(data), atLast);
    worker.onerror = (event) => {
      event.preventDefault();
      this.#breakdown();
    };
    worker.postMessage(JSON.stringify({ start: engineFiles() }));
  }

  /**
   * @param {Heard} message
   * @param {string} atLast
   */
  #hear(message, atLast) {
    if (message.ready) {
      clearTimeout(this.#watchdog);
      this.#enter("ready", atLast);
    } else if (message.printed !== undefined) {
      this.#print(message.printed, message.isError === true);
    } else if (message.ended !== undefined) {
      this.#showPrinted();
      this.#enter("ready", message.ended ? this.#log.hasChildNodes() ? SAY.ended : SAY.silent : SAY.raised);
    } else {
      this.#breakdown();
    }
  }

  async #run() {
    if (this.section.dataset.state !== "ready") return;
    this.#log.replaceChildren();
    this.#enter("running", SAY.running);
    const worker = this.#worker;
    const bow = this.#bows.value && this.#store ? await this.#store.record(this.#bows.value) : null;
    if (worker === this.#worker) worker?.postMessage(JSON.stringify({ program: this.#editor.value, bow }));
  }

  /** Nothing else stops a program that never ends: its worker goes, and a new one takes its place. */
  #stop() {
    const running = this.section.dataset.state === "running";
    this.#endWorker();
    if (running) this.#start(SAY.stopping, SAY.readyAgain);
    else this.#enter("idle", SAY.cancelled);
  }

  #breakdown() {
    const running = this.section.dataset.state === "running";
    this.#endWorker();
    if (running) this.#start(SAY.crashed, SAY.readyAfterCrash);
    else this.#enter("idle", SAY.failed);
  }

  #endWorker() {
    clearTimeout(this.#watchdog);
    this.#attempt = null;
    if (this.#worker) {
      this.#worker.onmessage = this.#worker.onerror = null; // what was under way must not pass for the next one's
      this.#worker.terminate();
      this.#worker = null;
    }
    this.#showPrinted();
  }

  // Showing --------------------------------------------------------------------

  /**
   * @param {string} state
   * @param {string} sentence
   */
  #enter(state, sentence = "") {
    const { start, run, stop } = this.#buttons;
    const held = document.activeElement;
    this.section.dataset.state = state;
    start.hidden = state !== "idle";
    run.hidden = state === "idle";
    run.disabled = state !== "ready";
    stop.hidden = state !== "loading" && state !== "running";
    this.#say(sentence);
    if (held === start && start.hidden) stop.focus(); // the keyboard stays where the next step is
    if (held === stop && stop.hidden) (state === "ready" ? run : start).focus();
    if (held === run && run.disabled) stop.focus();
  }

  /** @param {string} sentence */
  #say(sentence) {
    this.#status.textContent = sentence;
  }

  /**
   * @param {string} text
   * @param {boolean} isError
   */
  #print(text, isError) {
    const last = this.#printed.at(-1);
    if (last?.isError === isError) last.text += text;
    else this.#printed.push({ text, isError });
    this.#frame ||= requestAnimationFrame(() => this.#showPrinted());
  }

  #showPrinted() {
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
    for (const { text, isError } of this.#printed) {
      const className = isError ? "rb-log-error" : "";
      this.#log.append(Object.assign(document.createElement("span"), { className, textContent: text }));
    }
    this.#printed = [];
  }
}
