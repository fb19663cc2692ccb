// An answer is kept in a bow's record, with what was typed for it, when the reader says so.
// What of that is new to the record is worked out in Python.

import { node, sayAt } from "./elements.mjs";
import { release } from "./engine.mjs";
import { whyNotKept } from "./not-kept.mjs";
import { joined, newId, now, writeDown } from "./store.mjs";

/** @import { BowBar } from "./bow-bar.mjs" */
/** @import { CalculatorPage } from "./calculator.mjs" */
/** @import { Fresh, Head, KeptEntry } from "./record.d.ts" */

const MOST_SHEETS = 12; // that one answer could write into
const INTO_ANY = "Keep in a bow";
const OF_MARKS = "What the figures were read from";

export class Keeping {
  #bar;
  #page;
  #parts;

  /**
   * first: the link to what is written down before a calculator can answer.
   * @param {BowBar} bar
   * @param {CalculatorPage} page
   * @param {HTMLElement} first
   */
  constructor(bar, page, first) {
    this.#bar = bar;
    this.#page = page;
    this.#parts = parts(first);
    const { open, dialog, into } = this.#parts;
    open.addEventListener("click", () => this.#offer());
    into.addEventListener("change", () => this.#showFresh());
    dialog.addEventListener("close", () => dialog.returnValue === "keep" && this.#keep());
  }

  /** What stands below an answer. */
  get elements() {
    return [this.#parts.footer, this.#parts.dialog];
  }

  /**
   * The bows that an answer could be kept in.
   * @param {Head[]} heads
   */
  showBows(heads) {
    this.#parts.into.replaceChildren(...heads.map(({ id, title }) => new Option(title, id)));
    this.#parts.open.hidden = heads.length === 0;
  }

  /** Name the bow that fills the form, if one does. */
  showBow() {
    const { bow, title } = this.#bar;
    if (bow) this.#parts.into.value = bow;
    this.#parts.open.textContent = bow ? `Keep in ${title}` : `${INTO_ANY}…`;
  }

  /**
   * Say a sentence below the answer, which goes with the next one.
   * @param {string} text
   * @param {() => void} [undo]
   */
  tell(text, undo) {
    sayAt(this.#parts.told, text, undo);
  }

  async #offer() {
    const { bow } = this.#bar;
    if (!this.#page.answer) {
      this.tell("There is no answer to keep yet: mend what is marked above.");
      return;
    }
    if (!bow) await this.#bar.listBows();
    this.#parts.into.hidden = Boolean(bow);
    this.#parts.tied.hidden = !this.#page.picture;
    this.#parts.picture.checked = false;
    await this.#showFresh();
    this.#parts.dialog.showModal();
  }

  async #showFresh() {
    const { heading, list, also, readings, said } = this.#parts;
    const { bow, title } = this.#bar;
    const { fresh } = (await this.#bar.ask("fresh", await this.#request())) ?? { fresh: [] };
    const isTaken = fresh.some(({ refused }) => !refused);
    heading.textContent = bow ? `Keep in ${title}` : INTO_ANY;
    said.textContent = this.#headline();
    list.replaceChildren(...fresh.map((each) => node("li", {}, sentenceOf(each))));
    also.hidden = !isTaken;
    readings.checked = Boolean(bow) && isTaken;
  }

  async #keep() {
    const { readings, picture } = this.#parts;
    const { answer } = this.#page;
    if (!answer) return;
    const bow = this.#target;
    const asked = await this.#request();
    const made = await this.#bar.ask("keep", {
      ...asked,
      said: [["headline", this.#headline()], ["results", levels(answer.kept.results)],
        ["checks", levels(answer.kept.checks)], ["stale", asked.stale]],
      readings: readings.checked,
      ids: Array.from({ length: MOST_SHEETS }, () => newId()),
      at: now(),
      source: `${this.#page.calculator} ${release()}`,
    });
    if (!made || !(await this.#add(bow, made.entries))) return;
    const tied = picture.checked ? await this.#tie(bow, made.entries[0].id) : {};
    if (this.#bar.bow && readings.checked) await this.#bar.fillAnew();
    const ids = [...made.entries.map(({ id }) => id), ...(tied.entry ? [tied.entry] : [])];
    this.tell(`Kept. ${tied.refused ?? tied.said ?? ""} `, () => this.#strike(bow, ids));
  }

  /**
   * Keep the picture that the figures were read from, made smaller, beside their entry.
   * @param {string} bow
   * @param {string} entry
   * @returns {Promise<{entry?: string | null, refused?: string, said?: string}>}
   */
  async #tie(bow, entry) {
    const { picture } = this.#page;
    if (!picture) return {};
    const { keepPicture } = await import("./picture.mjs");
    return keepPicture(this.#bar, bow, picture, [["what", OF_MARKS], ["entry", entry]]);
  }

  /** The bow to keep an answer in. */
  get #target() {
    return this.#bar.bow ?? this.#parts.into.value;
  }

  async #request() {
    const { bow, store } = this.#bar;
    const { pairs, said, own } = this.#page.figures();
    const typed = pairs.filter(([name]) => (bow ? this.#bar.isTyped(name) : own.includes(name)));
    const { results = [] } = this.#page.answer?.kept ?? {};
    return { entries: await store.record(this.#target), pairs, typed, figures: said, results, stale: this.#bar.stale.join(", ") };
  }

  /**
   * Resolves to whether the entries are written down; where not, that was said.
   * @param {string} bow
   * @param {KeptEntry[]} entries
   */
  async #add(bow, entries) {
    const { store } = this.#bar;
    try {
      return await writeDown(store, bow, entries, (more) => this.#bar.ask("head", more));
    } catch (error) {
      this.tell(whyNotKept(store, error));
      return false;
    }
  }

  /**
   * @param {string} bow
   * @param {string[]} ids of entries
   */
  async #strike(bow, ids) {
    let record = await this.#bar.store.record(bow);
    const struck = [];
    for (const id of ids) {
      const made = await this.#bar.ask("strike", { entries: record, entry: id, id: newId(), at: now() });
      if (!made) return;
      struck.push({ id: JSON.parse(made.entry).id, text: made.entry });
      record = joined(record, [made.entry]);
    }
    if (!(await this.#add(bow, struck))) return;
    this.tell("Taken back.");
    if (this.#bar.bow === bow) await this.#bar.fillAgain();
  }

  #headline() {
    return this.#page.outcome.querySelector(".rb-headline")?.textContent ?? "";
  }
}

/** @param {Fresh} fresh */
function sentenceOf({ label, text, error, was, refused }) {
  return refused || `${label}: ${text}${error && `, ± ${error}`}${was && was !== text ? ` (was ${was})` : ""}`;
}

/**
 * Pairs as a fact of a kept answer.
 * @param {[string, string | number][]} [pairs]
 */
function levels(pairs = []) {
  return pairs.map((pair) => pair.join("=")).join(";");
}

/** @param {HTMLElement} first */
function parts(first) {
  const open = node("button", { type: "button", class: "rb-keep-open", hidden: "" }, `${INTO_ANY}…`);
  const told = node("span", { class: "rb-kept-told", role: "status" });
  const footer = node("div", { class: "rb-keep" }, open, first, told);
  const heading = node("h2", {});
  const into = node("select", { "aria-label": "Which bow" });
  const said = node("p", { class: "rb-keep-said" });
  const list = node("ul", {});
  const readings = node("input", { type: "checkbox" });
  const also = node("label", {}, readings, " Also write down, as known now:");
  const picture = node("input", { type: "checkbox" });
  const tied = node("label", {}, picture, " Also keep the picture beside it, made smaller");
  const dialog = node("dialog", { class: "rb-keep-dialog" }, node("form", { method: "dialog" },
    heading, into, node("p", {}, "Keeps the answer, as it was said:"), said, also, list, tied,
    node("p", { class: "rb-actions" }, node("button", { value: "keep", class: "rb-main" }, "Keep"),
      node("button", { value: "cancel" }, "Cancel"))));
  return { open, told, footer, heading, into, said, list, readings, also, picture, tied, dialog };
}
