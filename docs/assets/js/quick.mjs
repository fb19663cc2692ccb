// Entries with one finger at the bench: a batch of strokes, and a reading that begins at the last one.
// A draft is kept at every tap, so that a dead battery loses nothing.

import { around, partOf, partsOf, sourceOf } from "./parts.mjs";

/** @import { Bows } from "./bows.mjs" */
/** @import { Pair, Problem } from "./types.d.ts" */

const BUZZ_MS = 15;

export class QuickEntry {
  #bows;
  #batch;
  #reading;
  #facts; // of the reading, in the order of its steppers
  #asked = 0;
  /** @type {Set<string>} */
  #touched = new Set(); // of the reading: what is not the last one's

  /**
   * @param {Bows} bows
   * @param {HTMLElement} section
   */
  constructor(bows, section) {
    this.#bows = bows;
    this.#batch = partOf(section, 'dialog[data-quick="batch"]', HTMLDialogElement);
    this.#reading = partOf(section, 'dialog[data-quick="reading"]', HTMLDialogElement);
    this.#facts = partsOf(this.#reading, ".rb-stepper", HTMLElement).map(factOf);
    this.#equip(this.#batch, () => this.#saveBatch());
    this.#equip(this.#reading, () => this.#saveReading());
    this.#batch.addEventListener("click", (event) => this.#count(buttonOf(event, "[data-add]")));
    this.#batch.addEventListener("input", () => this.#keepDraft("batch", this.#counted()));
    this.#reading.addEventListener("click", (event) => this.#step(buttonOf(event, "[data-step]")));
    for (const type of ["input", "focusin"]) {
      this.#reading.addEventListener(type, (event) => this.#touch(sourceOf(event)));
    }
  }

  async openBatch() {
    const draft = new Map(await this.#draft("batch"));
    for (const tile of this.#tiles()) countOn(tile).value = draft.get(factOf(tile)) ?? "0";
    boxIn(this.#batch, "paper").value = draft.get("paper") ?? this.#bows.last.get("strokes.paper") ?? "";
    say(this.#batch, []);
    this.#batch.showModal();
    partOf(this.#batch, "[data-add]", HTMLElement).focus();
    this.#stayAwake();
  }

  /** The screen stays on while strokes are counted, where the browser lets a page ask for it. */
  async #stayAwake() {
    const lock = await navigator.wakeLock?.request("screen").catch(() => null);
    if (this.#batch.open) this.#batch.addEventListener("close", () => lock?.release(), { once: true });
    else lock?.release();
  }

  async openReading() {
    const draft = new Map(await this.#draft("reading"));
    this.#touched = new Set(this.#facts.filter((fact) => draft.has(fact)));
    for (const fact of [...this.#facts, "at_draw"]) {
      this.#box(fact).value = draft.get(fact) ?? this.#bows.last.get(`reading.${fact}`) ?? "";
    }
    this.#mark();
    say(this.#reading, []);
    this.#reading.showModal();
    partOf(this.#reading, "[data-step]", HTMLElement).focus();
    await this.#foretell();
  }

  /** What the log of strokes foretells for this reading, and what is typed beside it. */
  async #foretell() {
    this.#asked += 1;
    const asked = this.#asked;
    const pairs = this.#bows.forms.withUnits("reading", this.#read());
    const found = await this.#bows.ask("foretold", { entries: this.#bows.record, pairs });
    if (!found || asked !== this.#asked) return;
    const line = partOf(this.#reading, ".rb-foretold", HTMLElement);
    line.textContent = [found.expected, found.read].filter(Boolean).join(" ");
    line.dataset.level = found.level;
  }

  /**
   * @param {HTMLDialogElement} dialog
   * @param {() => Promise<boolean>} save
   */
  #equip(dialog, save) {
    partOf(dialog, "form", HTMLFormElement).addEventListener("submit", (event) => {
      event.preventDefault();
      save();
    });
    dialog.addEventListener("click", async (event) => {
      const source = sourceOf(event);
      if (source?.matches('[data-do="close"]')) dialog.close();
      if (source?.matches('[data-do="save-and-measure"]') && (await save())) {
        await this.#bows.drawn;
        await this.openReading();
      }
    });
  }

  // A batch --------------------------------------------------------------------

  #tiles() {
    return partsOf(this.#batch, ".rb-tile", HTMLElement);
  }

  /** @param {HTMLElement | null} button */
  #count(button) {
    if (!button) return;
    const shown = countOn(around(button, ".rb-tile", HTMLElement));
    shown.value = String(Math.max(0, Number(shown.value) + Number(button.dataset.add)));
    navigator.vibrate?.(BUZZ_MS);
    this.#keepDraft("batch", this.#counted());
  }

  /** @returns {Pair[]} */
  #counted() {
    const counts = this.#tiles().map(/** @returns {Pair} */ (tile) => [factOf(tile), countOn(tile).value]);
    return [...counts.filter(([, text]) => text !== "0"), ["paper", boxIn(this.#batch, "paper").value]];
  }

  async #saveBatch() {
    const pairs = this.#counted();
    if (pairs.length === 1) {
      say(this.#batch, [{ message: "No stroke is counted yet." }]);
      return false;
    }
    return this.#save("strokes", pairs, this.#batch, "batch");
  }

  // A reading ------------------------------------------------------------------

  /** @param {string} fact */
  #box(fact) {
    return boxIn(this.#reading, fact);
  }

  /** @param {HTMLElement | null} button */
  async #step(button) {
    if (!button) return;
    const fact = factOf(around(button, ".rb-stepper", HTMLElement));
    const box = this.#box(fact);
    const changed = await this.#bows.ask("step", { fact: `reading.${fact}`, text: box.value, by: button.dataset.step });
    say(this.#reading, changed?.refused ? [{ message: changed.refused }] : []);
    if (!changed?.text) return;
    box.value = changed.text;
    this.#touch(box);
  }

  /** @param {Element | null} source */
  #touch(source) {
    const name = source instanceof HTMLInputElement ? source.name : "";
    if (!this.#facts.includes(name) && name !== "at_draw") return;
    if (this.#facts.includes(name)) this.#touched.add(name);
    this.#mark();
    this.#keepDraft("reading", this.#read());
    this.#foretell();
  }

  #mark() {
    for (const fact of this.#facts) this.#box(fact).toggleAttribute("data-last", !this.#touched.has(fact));
  }

  /**
   * What was touched; a weight always with its draw.
   * @returns {Pair[]}
   */
  #read() {
    const touched = this.#facts.filter((fact) => this.#touched.has(fact));
    const pairs = touched.map(/** @returns {Pair} */ (fact) => [fact, this.#box(fact).value]);
    return this.#touched.has("weight") ? [...pairs, ["at_draw", this.#box("at_draw").value]] : pairs;
  }

  async #saveReading() {
    return this.#save("reading", this.#read(), this.#reading, "reading");
  }

  // Both -----------------------------------------------------------------------

  /**
   * @param {string} sheet
   * @param {Pair[]} pairs
   * @param {HTMLDialogElement} dialog
   * @param {string} draft
   */
  async #save(sheet, pairs, dialog, draft) {
    const more = { draft: this.#draftName(draft) };
    const { bow, errors } = await this.#bows.add(sheet, this.#bows.forms.withUnits(sheet, pairs), more);
    say(dialog, errors);
    if (!bow) return false;
    dialog.close();
    return true;
  }

  /** @param {string} name */
  #draftName(name) {
    return `${this.#bows.bow} quick-${name}`;
  }

  /** @param {string} name */
  async #draft(name) {
    return (await this.#bows.store.draft(this.#draftName(name)).catch(() => null)) ?? [];
  }

  /**
   * @param {string} name
   * @param {Pair[]} pairs
   */
  #keepDraft(name, pairs) {
    this.#bows.store.keepDraft(this.#draftName(name), pairs).catch(() => {});
  }
}

/**
 * @param {Event} event
 * @param {string} selector
 */
function buttonOf(event, selector) {
  const found = sourceOf(event)?.closest(selector);
  return found instanceof HTMLElement ? found : null;
}

/**
 * @param {HTMLElement} dialog
 * @param {string} name
 */
function boxIn(dialog, name) {
  return partOf(dialog, `[name="${name}"]`, HTMLInputElement);
}

/** @param {HTMLElement} tile */
function countOn(tile) {
  return partOf(tile, "output", HTMLOutputElement);
}

/** @param {HTMLElement} part */
function factOf(part) {
  return part.dataset.fact ?? "";
}

/**
 * @param {HTMLElement} dialog
 * @param {Problem[]} errors
 */
function say(dialog, errors) {
  const box = partOf(dialog, ".rb-problems", HTMLElement);
  box.hidden = errors.length === 0;
  box.textContent = errors.map(({ message }) => message).join(" ");
}
