// The bow on the bench, above a calculator: it fills the form from that bow's record, says of each figure where it
// comes from, and keeps an answer there when the reader says so. Typing alone changes no record.
// What is known or stale is worked out in Python.

import { askFor, chooseBow, chosenBow } from "./chosen.mjs";
import { node, sayAt } from "./elements.mjs";
import { labelOf } from "./form.mjs";
import { Keeping } from "./keeping.mjs";
import { HALTED } from "./not-kept.mjs";
import { partOf } from "./parts.mjs";
import { openStore } from "./store.mjs";

/** @import { CalculatorPage } from "./calculator.mjs" */
/** @import { Engine } from "./engine.mjs" */
/** @import { BowStore, Filled, Task, TaskAnswer } from "./record.d.ts" */
/** @import { Answer, Pair, TreeNode } from "./types.d.ts" */

const BOWS = new URL("../../bows/", import.meta.url);
const NONE = "";
/**
 * What is written down first, and read by the calculator: a form of the bow's page, and what leads to it.
 * @type {Map<string, {form: string, title: string}>}
 */
const FIRST = new Map([
  ["strokes", { form: "batch", title: "Add a batch" }],
  ["inspection", { form: "look", title: "Write the inspection down" }],
  ["spray-air", { form: "air", title: "Air read now" }],
]);

export class BowBar {
  #page;
  #engine;
  /** @type {BowStore | null} */
  #store = null;
  /** @type {string | null} */
  #bow = null;
  #title = "";
  /** @type {Filled[]} */
  #told = [];
  /** @type {Set<string>} */
  #typed = new Set();
  #turn = 0;
  #first; // what is written down before this calculator can answer, if anything
  #parts = parts();
  #keeping;

  /**
   * @param {CalculatorPage} page
   * @param {Engine} engine
   */
  constructor(page, engine) {
    this.#page = page;
    this.#engine = engine;
    this.#first = FIRST.get(page.calculator);
    const { select, first } = this.#parts;
    this.#keeping = new Keeping(this, page, first);
    select.addEventListener("change", () => this.#choose(select.value));
    first.addEventListener("click", () => this.#first && askFor(this.#first.form));
    first.textContent = this.#first?.title ?? "";
  }

  async begin() {
    this.#store = await openStore({ onChange: (bow) => this.#changedElsewhere(bow) });
    const bows = await this.listBows();
    if (!this.#isHere()) {
      this.end();
      return;
    }
    const { bar, line, stops, checks } = this.#parts;
    this.#page.form.before(bar, stops);
    this.#page.outcome.before(line, checks);
    this.#page.outcome.after(...this.#keeping.elements);
    const chosen = chosenBow();
    if (chosen && !location.hash.includes("=") && bows.some(({ id }) => id === chosen)) await this.#choose(chosen);
    bar.dataset.ready = "";
  }

  /** Its page has gone: keep no store open. */
  end() {
    this.#store?.close();
  }

  /** A way back from a link to the bow that filled the form before it; returns whether it was one. */
  takesBack() {
    const bow = chosenBow();
    if (location.hash || this.#bow || !bow || !this.#isHere()) return false;
    this.#choose(bow);
    return true;
  }

  // What keeps an answer asks ------------------------------------------------------

  get store() {
    if (!this.#store) throw new Error("the store is not open yet");
    return this.#store;
  }

  /** The id of the bow that fills the form, or null. */
  get bow() {
    return this.#bow;
  }

  get title() {
    return this.#title;
  }

  /** @param {string} name */
  isTyped(name) {
    return this.#typed.has(name);
  }

  /** Inputs whose figures in the form were read before the last change to the bow. */
  get stale() {
    return this.#told.filter(({ input, stale, text }) => stale && text && !this.isTyped(input)).map(({ input }) => input);
  }

  /**
   * Ask Python; resolves to its answer, or null once it was said below the answer why there is none.
   * @template {Task} Name
   * @param {Name} task
   * @param {object} more
   * @returns {Promise<TaskAnswer<Name> | null>}
   */
  async ask(task, more) {
    const request = { task, units: this.#page.units, calculator: this.#page.calculator, ...more };
    const outcome = await this.#engine.ask(request);
    const answer = /** @type {TaskAnswer<Name> | undefined} */ (outcome.answer);
    if (answer && !answer.refused) return answer;
    this.#keeping.tell(answer?.refused ?? HALTED);
    return null;
  }

  // What the page tells -----------------------------------------------------------

  /** @param {string} name */
  typed(name) {
    this.#typed.add(name);
    this.#mark(name);
    this.#keepDraft();
  }

  /** @param {Answer} answer */
  answered(answer) {
    const missing = this.#told.filter(({ input, text, shop }) =>
      !text && !shop && !this.isTyped(input) && answer.errors.some(({ field }) => field === input));
    const labels = missing.flatMap(({ input }) => this.#page.fieldOf(input) ?? []).map(labelOf);
    this.#parts.line.textContent = labels.length
      ? `This answer waits for what no entry tells yet: ${labels.join("; ")}. Measure it, and type it here or write it down.`
      : "";
  }

  /** Drop what was typed over the record. */
  again() {
    const draft = this.#draft();
    this.fillAnew();
    this.#say("Back at what the record says.", () => this.#fill(draft));
  }

  /** No bow fills the form any longer. */
  left() {
    this.#bow = null;
    this.#told = [];
    this.#typed.clear();
    this.#turn += 1;
    for (const mark of this.#page.form.querySelectorAll(".rb-origin")) mark.remove();
    const { select, link, first, line, stops, checks } = this.#parts;
    select.value = NONE;
    link.hidden = true;
    first.hidden = true;
    line.textContent = "";
    stops.replaceChildren();
    checks.replaceChildren();
    this.#keeping.showBow();
  }

  // Choosing --------------------------------------------------------------------

  /** Show all bows to choose from. */
  async listBows() {
    const heads = await this.store.bows().catch(() => []);
    heads.sort((one, other) => one.title.localeCompare(other.title, "en", { numeric: true }));
    const { select, label, none } = this.#parts;
    select.replaceChildren(new Option("No bow", NONE), ...heads.map(({ id, title }) => new Option(title, id)));
    label.hidden = heads.length === 0;
    none.hidden = heads.length > 0;
    this.#keeping.showBows(heads);
    return heads;
  }

  /** @param {string} bow */
  async #choose(bow) {
    if (bow === NONE) {
      this.#leave();
      return;
    }
    const pairs = await this.store.draft(this.#draftName(bow)).catch(() => null);
    chooseBow(bow);
    this.#bow = bow;
    await this.#fill(pairs ?? []);
  }

  #leave() {
    chooseBow(null);
    this.#page.leaveBow();
  }

  /** Fill the form with what the record says alone. */
  async fillAnew() {
    this.#typed.clear();
    this.#dropDraft();
    await this.#fill([]);
  }

  /** The record has changed: fill the form from it, with what is typed over it. */
  async fillAgain() {
    await this.#fill(this.#draft());
  }

  /** @param {Pair[]} typed */
  async #fill(typed) {
    this.#turn += 1;
    const turn = this.#turn;
    const bow = this.#bow;
    const entries = bow ? await this.store.record(bow).catch(() => "[]") : "[]";
    if (!bow || entries === "[]") {
      this.#leave();
      this.#say("That bow is no longer on this device.");
      return;
    }
    const filled = await this.ask("fill", { entries, pairs: typed });
    if (!filled || turn !== this.#turn || !this.#isHere()) return;
    this.#title = filled.title;
    this.#told = filled.filled;
    this.#typed = new Set(typed.map(([name]) => name).filter((name) => name !== "units"));
    const takeBack = this.#page.takeBow(this, filled.filled, typed);
    this.#showChecks(filled.checks);
    this.#showBow(bow);
    if (takeBack) {
      this.#say("Filled.", () => {
        chooseBow(null);
        takeBack();
      });
    }
    for (const { input } of filled.filled) this.#mark(input);
  }

  /**
   * What the whole record shows: what stops all work above the form, the rest above the answer.
   * @param {TreeNode[]} tree
   */
  #showChecks(tree) {
    const { stops, checks } = this.#parts;
    checks.replaceChildren(this.#page.grow(tree));
    const grave = [...checks.querySelectorAll(".rb-check.rb-stop")];
    stops.replaceChildren(...(grave.length ? [node("ul", { class: "rb-checks" }, ...grave)] : []));
    if (!checks.querySelector(".rb-check")) checks.replaceChildren();
  }

  /** @param {string} bow */
  #showBow(bow) {
    const { select, link, first } = this.#parts;
    select.value = bow;
    link.href = `${BOWS.href}#${bow}`;
    link.hidden = false;
    first.href = link.href;
    first.hidden = !this.#first;
    this.#keeping.showBow();
  }

  /**
   * Say below a field where its figure comes from, or how it comes to be known.
   * @param {string} name
   */
  #mark(name) {
    const field = this.#page.fieldOf(name);
    const told = this.#told.find(({ input }) => input === name);
    if (!field || !told || !this.#bow) return;
    field.querySelector(".rb-origin")?.remove();
    const text = originOf(told, this.isTyped(name));
    partOf(field, ".rb-error", Element).before(node("p", { class: "rb-origin" }, text));
  }

  /** @param {string} bow */
  #changedElsewhere(bow) {
    if (this.#isHere() && bow === this.#bow) this.fillAgain();
  }

  // What was typed over the record ---------------------------------------------------

  #draft() {
    return this.#page.typed.filter(([name]) => this.isTyped(name) || name === "units");
  }

  /** @param {string} bow */
  #draftName(bow) {
    return `calculator:${this.#page.calculator}:${bow}`;
  }

  async #keepDraft() {
    if (!this.#bow || !this.#typed.size || !this.#isHere()) return;
    await this.store.keepDraft(this.#draftName(this.#bow), this.#draft()).catch(() => {});
  }

  #dropDraft() {
    if (this.#bow) this.store.dropDraft(this.#draftName(this.#bow)).catch(() => {});
  }

  /**
   * Say a sentence below the bar, which goes with the next one.
   * @param {string} text
   * @param {() => void} [undo]
   */
  #say(text, undo) {
    sayAt(this.#parts.told, text, undo);
  }

  #isHere() {
    return this.#page.form.isConnected;
  }
}

/**
 * @param {Filled} told
 * @param {boolean} typed
 */
function originOf({ text, since, said, stale, shop, sheet, how }, typed) {
  if (typed) return text ? `Typed now. The record says ${text}${since ? `, ${since}` : ""}.` : "Typed now.";
  if (!text) return shop ? "Assumed: the usual figure." : `Not written down yet. ${how}`;
  const from = said || (since ? `${sheet === "agreed" ? "Agreed" : "Of"} ${since}` : "From the record");
  return stale ? `${from}, before the last change to the bow: read it again.` : `${from}.`;
}

function parts() {
  const select = node("select", { class: "rb-which-bow" });
  const label = node("label", { hidden: "" }, "Bow ", select);
  const link = node("a", { hidden: "" }, "Its page");
  const first = node("a", { class: "rb-first", hidden: "" });
  const none = node("p", { class: "rb-bar-none", hidden: "" }, "A bow on your bench? ",
    node("a", { href: BOWS.href }, "Write it down once"), ".");
  const told = node("span", { class: "rb-bar-told", role: "status" });
  const bar = node("div", { class: "rb-bar" }, label, link, none, told);
  const line = node("p", { class: "rb-bar-missing", role: "status" });
  const stops = node("div", { class: "rb-bar-stops" });
  const checks = node("div", { class: "rb-bar-checks" });
  return { bar, line, stops, checks, select, label, link, first, none, told };
}
