// Points marked on a picture. Their one place are the rows of the calculator's form: what is marked is written there,
// and what is typed there is marked.

import { addRow, controlsIn, countRows, fieldOf, fieldsOf, fillForm, labelOf, limitsOf, nameOf, readForm, removeRow, rowsOf } from "./form.mjs";
import { sourceOf } from "./parts.mjs";

/** @import { CalculatorPage } from "./calculator.mjs" */
/** @import { MarkSet, Spot } from "./marking.d.ts" */
/** @import { Control, Pair } from "./types.d.ts" */

const PLACE = ["x", "y"]; // the columns of a mark's place
const HOW = "how"; // the column that says whether a hand set it or the picture drew it
const SIZE = ["picture_width", "picture_height"];
const MOST_STEPS = 200; // that can be taken back

export class Marks {
  #page;
  /** @type {Pair[][]} */
  #before = [];
  /** @type {Pair[][]} */
  #after = [];
  /** @type {Pair[]} */
  #atFocus = [];

  /** @param {CalculatorPage} page */
  constructor(page) {
    this.#page = page;
    page.form.addEventListener("focusin", () => (this.#atFocus = this.#read()));
    page.form.addEventListener("change", () => this.#typed(this.#atFocus));
    page.form.addEventListener("click", (event) => {
      if (sourceOf(event)?.closest(".rb-remove-row")) this.#typed(this.#read(), true);
    }, { capture: true });
  }

  // What is marked -------------------------------------------------------------------

  /** @returns {MarkSet[]} in the order of the form */
  get sets() {
    return this.#fields.filter((field) => !field.hidden).map((field) => ({
      id: nameOf(field),
      title: labelOf(field).split(",")[0],
      hint: (field.querySelector(".rb-hint")?.textContent ?? "").trim(),
      marks: rowsOf(field).flatMap((line, row) => {
        const spot = spotOf(line);
        return spot ? [{ row, label: nameIn(line) ?? String(row + 1), how: howIn(line)?.value ?? "", ...spot }] : [];
      }),
      draws: howIn(rowsOf(field)[0]) !== null,
    }));
  }

  /**
   * What a row says beside its place, as the controls of its table: to show and to change.
   * @param {string} set
   * @param {number} row
   */
  figuresOf(set, row) {
    return figuresIn(rowsOf(this.#fieldOf(set))[row]);
  }

  /**
   * A row that says something already and waits for its place; none where all have theirs.
   * @param {string} set
   */
  waiting(set) {
    const row = rowsOf(this.#fieldOf(set)).findIndex((line) => isWaiting(line) && figuresIn(line).some(isTyped));
    return row < 0 ? null : row;
  }

  /**
   * Set a mark: in a row that waits for one, else in a row of its own behind another. Returns its row, or null where
   * the table takes no more.
   * @param {string} set
   * @param {Spot} spot
   * @param {{behind: number | null, figures: string[]}} how the texts of its other cells, from the left
   */
  add(set, spot, { behind, figures }) {
    const field = this.#fieldOf(set);
    const lines = rowsOf(field);
    const waiting = lines.find(isWaiting);
    if (!waiting && lines.length >= limitsOf(field).most) return null;
    return this.#change(set, () => {
      const line = waiting ?? addRow(field, lines[behind ?? lines.length - 1]);
      if (!waiting || !figuresIn(line).some(isTyped)) writeFigures(line, figures);
      writePlace(line, spot);
      return rowsOf(field).indexOf(line);
    });
  }

  /**
   * how: what drew the mark there, an answer of the column; by hand where it is left out.
   * @param {string} set
   * @param {number} row
   * @param {Spot} spot
   * @param {string} [how]
   */
  move(set, row, spot, how) {
    this.#change(set, () => writePlace(rowsOf(this.#fieldOf(set))[row], spot, how));
  }

  /**
   * @param {string} set
   * @param {number} row
   * @param {string[]} figures
   */
  say(set, row, figures) {
    this.#change(set, () => writeFigures(rowsOf(this.#fieldOf(set))[row], figures));
  }

  /**
   * @param {string} set
   * @param {number} row
   */
  remove(set, row) {
    const field = this.#fieldOf(set);
    this.#change(set, () => {
      const line = rowsOf(field)[row];
      writePlace(line, null);
      writeFigures(line, figuresIn(line).map(() => ""));
      removeRow(field, line);
    });
  }

  /** Whether marks stand in the form that are the reader's, or a sender's. */
  get areOwn() {
    const { own } = this.#page;
    return this.sets.some(({ id, marks }) => own.includes(id) && marks.length > 0);
  }

  /** The width and the height that the form says of the picture, as typed. */
  get size() {
    return this.#sizeFields.map((field) => controlsIn(field)[0].value);
  }

  /**
   * Begin on a picture of this size: no mark is set, nothing can be taken back.
   * @param {{width: number, height: number}} size
   */
  begin(size) {
    this.#page.empty(this.#fields.map(nameOf));
    sizeInWords(size).forEach((text, index) => (controlsIn(this.#sizeFields[index])[0].value = text));
    this.#page.wrote(SIZE);
    this.#before = [];
    this.#after = [];
  }

  // Back and forth -----------------------------------------------------------------

  get canUndo() {
    return this.#before.length > 0;
  }

  get canRedo() {
    return this.#after.length > 0;
  }

  undo() {
    this.#step(this.#before, this.#after);
  }

  redo() {
    this.#step(this.#after, this.#before);
  }

  /**
   * @param {Pair[][]} from
   * @param {Pair[][]} to
   */
  #step(from, to) {
    const pairs = from.pop();
    if (!pairs) return;
    const now = new Map(this.#read());
    to.push([...now]);
    fillForm(this.#form, pairs);
    this.#page.wrote(pairs.filter(([name, text]) => now.get(name) !== text).map(([name]) => name));
  }

  /**
   * @template Made
   * @param {string} set
   * @param {() => Made} deed
   */
  #change(set, deed) {
    this.#note(this.#read());
    const made = deed();
    countRows(this.#fieldOf(set));
    this.#page.wrote([set]);
    return made;
  }

  /**
   * A number in the tables was changed by hand: that can be taken back like a mark.
   * @param {Pair[]} before
   * @param {boolean} sure
   */
  #typed(before, sure = false) {
    const now = new Map(this.#read());
    if (sure || before.some(([name, text]) => now.get(name) !== text)) this.#note(before);
  }

  /** @param {Pair[]} before */
  #note(before) {
    this.#before = [...this.#before, before].slice(-MOST_STEPS);
    this.#after = [];
  }

  /** @returns {Pair[]} */
  #read() {
    const names = this.#fields.map(nameOf);
    return readForm(this.#form, { all: true }).filter(([name]) => names.includes(name));
  }

  get #form() {
    return this.#page.form;
  }

  get #fields() {
    return fieldsOf(this.#form).filter((field) => PLACE.every((column) => field.querySelector(`[data-column="${column}"]`)));
  }

  get #sizeFields() {
    return SIZE.map((name) => this.#fieldOf(name));
  }

  /** @param {string} name */
  #fieldOf(name) {
    const field = fieldOf(this.#form, name);
    if (!field) throw new Error(`the form has no field ${name}`);
    return field;
  }
}

/**
 * A picture's width and height as the form says them.
 * @param {{width: number, height: number}} size
 */
export function sizeInWords({ width, height }) {
  return [width, height].map((length) => `${length} px`);
}

/** @param {Control} control */
function isPlace({ dataset }) {
  return PLACE.includes(dataset.column ?? "");
}

/** @param {Element} line */
function placeIn(line) {
  return controlsIn(line).filter(isPlace);
}

/** @param {Element} line */
function figuresIn(line) {
  return controlsIn(line).filter((control) => !isPlace(control) && control.dataset.column !== HOW);
}

/**
 * @param {Element} line
 * @returns {HTMLSelectElement | null}
 */
function howIn(line) {
  return line.querySelector(`select[data-column="${HOW}"]`);
}

/**
 * A choice always has a value, so only what is typed counts.
 * @param {Control} control
 */
function isTyped(control) {
  return control instanceof HTMLInputElement && control.value.trim() !== "";
}

/** @param {Element} line */
function isWaiting(line) {
  return !placeIn(line).some(isTyped);
}

/**
 * What a row is called by its figures, where it chooses from names.
 * @param {Element} line
 */
function nameIn(line) {
  const figures = figuresIn(line);
  return figures.some((control) => control instanceof HTMLSelectElement) ? figures.map(({ value }) => value).join("") : null;
}

/**
 * Where a row is marked; null while it is not, or while what is typed is no number.
 * @param {Element} line
 * @returns {Spot | null}
 */
function spotOf(line) {
  const [x, y] = placeIn(line).map(({ value }) => Number.parseFloat(value.trim().replace(",", ".")));
  return Number.isFinite(x) && Number.isFinite(y) ? { x, y } : null;
}

/**
 * @param {Element} line
 * @param {Spot | null} spot
 * @param {string} [drawn]
 */
function writePlace(line, spot, drawn) {
  const [across, down] = placeIn(line);
  across.value = spot ? String(spot.x) : "";
  down.value = spot ? String(spot.y) : "";
  const how = howIn(line);
  if (how) how.value = drawn ?? how.options[0].value; // the first: by hand
}

/**
 * @param {Element} line
 * @param {string[]} figures
 */
function writeFigures(line, figures) {
  figuresIn(line).forEach((control, index) => {
    const text = figures[index] ?? "";
    if (control instanceof HTMLInputElement || text) control.value = text; // a choice has no empty answer
  });
}
