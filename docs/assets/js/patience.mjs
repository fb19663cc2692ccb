// When to tell what is wrong: not under the finger of whoever is still typing it.

import { controlFrom, controlOf } from "./form.mjs";

/** @import { Control, Problem } from "./types.d.ts" */

const PAUSE_MS = 900; // then what typing on cannot mend is told
const LONG_PAUSE_MS = 10_000; // then the rest: whoever stops for so long may not know that something is missing
const LEAVING_MS = 250; // by then a press beside the field has found what it aimed at, so that things may move

export class Patience {
  #form;
  #onDue;
  /** @type {Element | null} */
  #at = null; // the box that has the focus
  /** @type {"arrived" | "typing" | "paused" | "done"} */
  #stage = "done"; // of what is typed there
  /** @type {Set<Control | null>} */
  #told = new Set(); // where something wrong is shown
  #pause = 0;
  #longPause = 0;
  #leaving = 0;

  /**
   * @param {HTMLFormElement} form
   * @param {() => void} onDue more may be told now
   */
  constructor(form, onDue) {
    this.#form = form;
    this.#onDue = onDue;
    form.addEventListener("input", (event) => this.#typed(controlFrom(event)));
    for (const type of ["focusin", "focusout"]) {
      form.addEventListener(type, () => {
        clearTimeout(this.#leaving);
        this.#leaving = setTimeout(() => this.#goTo(document.activeElement), LEAVING_MS);
      });
    }
  }

  /**
   * Of what is wrong, what is to be told now. The rest waits, and where it stands is marked quietly.
   * @param {Problem[]} problems
   */
  due(problems) {
    const due = problems.filter((problem) => this.#isDue(problem));
    const waiting = problems.filter((problem) => !due.includes(problem));
    this.#told = new Set(due.map((problem) => controlOf(this.#form, problem)));
    for (const each of this.#form.querySelectorAll("[data-unfinished]")) each.removeAttribute("data-unfinished");
    for (const problem of waiting) controlOf(this.#form, problem)?.setAttribute("data-unfinished", "");
    return due;
  }

  /** The reader asks for an answer: nothing waits any longer. */
  end() {
    this.#rest("done");
  }

  /** @param {Problem} problem */
  #isDue(problem) {
    const control = controlOf(this.#form, problem);
    const isTold = this.#told.has(control);
    if (this.#stage === "done") return true;
    if (control !== this.#at) return isTold || this.#stage === "arrived";
    if (problem.unfinished) return isTold && this.#stage === "arrived";
    return isTold || this.#stage !== "typing";
  }

  /** @param {Control | null} control */
  #typed(control) {
    this.#goTo(control);
    if (!this.#at) return;
    this.#stage = "typing";
    clearTimeout(this.#pause);
    clearTimeout(this.#longPause);
    this.#pause = setTimeout(() => this.#rest("paused"), PAUSE_MS);
    this.#longPause = setTimeout(() => this.#rest("done"), LONG_PAUSE_MS);
  }

  /**
   * Only in a box can something be half typed.
   * @param {Element | null} there
   */
  #goTo(there) {
    clearTimeout(this.#leaving);
    const box = there instanceof HTMLInputElement && there.type === "text" && this.#form.contains(there) ? there : null;
    if (box === this.#at) return;
    this.#at = box;
    clearTimeout(this.#pause);
    this.#rest(box ? "arrived" : "done");
  }

  /** @param {"arrived" | "paused" | "done"} stage */
  #rest(stage) {
    this.#stage = stage;
    if (stage !== "paused") clearTimeout(this.#longPause);
    this.#onDue();
  }
}
