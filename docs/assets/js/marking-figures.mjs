// What a mark says beside its place - which dot of which sheet, how far along a rule - to be typed or chosen beside the
// picture: of the chosen mark, of a row that waits for its place, or of the next one.

import { node } from "./elements.mjs";

/** @import { Mark, MarkSet } from "./marking.d.ts" */
/** @import { Marks } from "./marks.mjs" */
/** @import { Control, UnitSystem } from "./types.d.ts" */

export class NextFigures {
  #place;
  #marks;
  #units;
  #shown = ""; // for which set the controls stand here
  /** @type {MarkSet | null} */
  #set = null;
  /** @type {number | null} */
  #row = null; // whose figures they are; null: of the next mark
  /** @type {Map<string, string[]>} */
  #next = new Map();

  /**
   * @param {HTMLElement} place
   * @param {Marks} marks
   * @param {() => UnitSystem} units
   */
  constructor(place, marks, units) {
    this.#place = place;
    this.#marks = marks;
    this.#units = units;
    place.addEventListener("change", () => this.#said());
  }

  begin() {
    this.#next.clear();
  }

  /**
   * @param {MarkSet} set
   * @param {Mark | null} chosen
   */
  show(set, chosen) {
    const models = this.#marks.figuresOf(set.id, 0);
    const wanted = `${set.id} ${this.#units()}`;
    if (wanted !== this.#shown) this.#place.replaceChildren(...models.map((model) => labelled(model, nameOf(model, this.#units()))));
    this.#shown = wanted;
    this.#set = set;
    this.#row = chosen?.row ?? this.#marks.waiting(set.id);
    const texts = this.#row === null ? this.#nextOf(set) : this.#marks.figuresOf(set.id, this.#row).map(({ value }) => value);
    this.#controls.forEach((control, index) => {
      if (control !== document.activeElement) control.value = texts[index];
    });
  }

  /**
   * The figures of the mark that is set now; those of the one after it follow from them.
   * @param {MarkSet} set
   */
  take(set) {
    const figures = this.#nextOf(set);
    this.#next.set(set.id, following(figures, this.#marks.figuresOf(set.id, 0)));
    return figures;
  }

  /**
   * The next mark has the figures of this row, which goes.
   * @param {string} set
   * @param {number} row
   */
  keep(set, row) {
    this.#next.set(set, this.#marks.figuresOf(set, row).map(({ value }) => value));
  }

  /**
   * A sentence on what the next mark stands for; none where it is just the next.
   * @param {MarkSet} set
   */
  next(set) {
    const waiting = this.#marks.waiting(set.id);
    const models = this.#marks.figuresOf(set.id, waiting ?? 0);
    const texts = waiting === null ? this.#nextOf(set) : models.map(({ value }) => value);
    const said = models.map((model, index) => spoken(model, texts[index], this.#units())).filter(Boolean);
    return said.length ? `Next: ${said.join(", ")}.` : "";
  }

  get #controls() {
    return /** @type {Control[]} */ ([...this.#place.querySelectorAll("input, select")]);
  }

  /** @param {MarkSet} set */
  #nextOf({ id }) {
    const found = this.#next.get(id);
    if (found) return found;
    const made = this.#marks.figuresOf(id, 0).map(firstOf);
    this.#next.set(id, made);
    return made;
  }

  #said() {
    if (!this.#set) return;
    const texts = this.#controls.map(({ value }) => value);
    if (this.#row === null) this.#next.set(this.#set.id, texts);
    else this.#marks.say(this.#set.id, this.#row, texts);
  }
}

/**
 * @param {Control} model
 * @param {string} name
 */
function labelled(model, name) {
  const control = /** @type {Control} */ (model.cloneNode(true));
  for (const attribute of ["name", "aria-label", "aria-invalid"]) control.removeAttribute(attribute);
  return node("label", {}, `${name} `, control);
}

/**
 * @param {Control} control
 * @param {UnitSystem} units
 */
function nameOf({ dataset }, units) {
  return (units === "metric" ? dataset.nameMetric : dataset.nameImperial) ?? "";
}

/** @param {Control} control */
function isNumber(control) {
  return control.inputMode === "numeric";
}

/** @param {Control} control */
function firstOf(control) {
  if (control instanceof HTMLSelectElement) return control.options[0].value;
  return isNumber(control) ? "1" : "";
}

/**
 * The name after this one; behind the last the first, and then the number counts on. What is measured is not guessed.
 * @param {string[]} texts
 * @param {Control[]} models
 */
function following(texts, models) {
  let round = false;
  const next = models.map((model, index) => {
    if (!(model instanceof HTMLSelectElement)) return isNumber(model) ? texts[index] : "";
    const values = [...model.options].map(({ value }) => value);
    const at = values.indexOf(texts[index]) + 1;
    round = at === values.length;
    return values[at % values.length];
  });
  return next.map((text, index) => (round && isNumber(models[index]) ? String(Number(text) + 1) : text));
}

/**
 * @param {Control} model
 * @param {string} text
 * @param {UnitSystem} units
 */
function spoken(model, text, units) {
  if (!text) return "";
  const word = model instanceof HTMLSelectElement ? [...model.options].find(({ value }) => value === text)?.text : text;
  return `${nameOf(model, units).toLowerCase()} ${word}`;
}
