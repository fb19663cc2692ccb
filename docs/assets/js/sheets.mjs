// The forms of entries, as the record declares them: one dialog a sheet. What is typed is kept as a draft at once.

import { node } from "./elements.mjs";
import { addRow, controlOf, fieldsOf, fillForm, nameUnits, readForm, removeRow, setUnits } from "./form.mjs";
import { around, partOf, partsOf, sourceOf } from "./parts.mjs";
import { now } from "./store.mjs";

/** @import { Bows } from "./bows.mjs" */
/** @import { Pair, Problem } from "./types.d.ts" */

const NEW_BOW = "new-bow";
const MOMENT = /^\d{4}-\d\d-\d\dT\d\d:\d\d/;

export class SheetForms {
  #bows;
  #section;
  /** @type {string | null} */
  #bow = null; // whose entry is being typed

  /**
   * @param {Bows} bows
   * @param {HTMLElement} section
   */
  constructor(bows, section) {
    this.#bows = bows;
    this.#section = section;
    for (const dialog of partsOf(section, "dialog.rb-sheet", HTMLDialogElement)) this.#equip(dialog);
  }

  /** @param {string} sheet */
  async open(sheet) {
    const dialog = this.#dialogOf(sheet);
    const form = formIn(dialog);
    this.#bow = sheet === NEW_BOW ? null : this.#bows.bow;
    form.reset();
    setUnits(form, this.#bows.units);
    say(form, []);
    const at = boxOf(form, "at");
    if (at) at.value = now().slice(0, 16);
    const draft = await this.#bows.store.draft(this.#draftName(sheet)).catch(() => null);
    if (draft) fillForm(form, draft);
    dialog.showModal();
  }

  /**
   * Pairs of a sheet as its form would keep them: bare numbers with the unit that they stand for.
   * @param {string} sheet
   * @param {Pair[]} pairs
   */
  withUnits(sheet, pairs) {
    const form = formIn(this.#dialogOf(sheet));
    form.reset();
    fillForm(form, pairs);
    nameUnits(form, this.#bows.units);
    return readPairs(form);
  }

  /** @param {string} sheet */
  #dialogOf(sheet) {
    return partOf(this.#section, `dialog[data-sheet="${sheet}"]`, HTMLDialogElement);
  }

  /** @param {HTMLDialogElement} dialog */
  #equip(dialog) {
    const form = formIn(dialog);
    const { sheet = "" } = dialog.dataset;
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.#save(dialog, form, sheet);
    });
    form.addEventListener("input", () => this.#keepDraft(form, sheet));
    form.addEventListener("click", (event) => {
      const source = sourceOf(event);
      if (source?.matches('[data-do="close"]')) dialog.close();
      else if (source?.matches(".rb-add-row")) addRow(around(source, ".rb-field", HTMLElement));
      else if (source?.matches(".rb-remove-row")) {
        removeRow(around(source, ".rb-field", HTMLElement), around(source, "tr", HTMLElement));
      }
    });
  }

  /** @param {string} sheet */
  #draftName(sheet) {
    return `${this.#bow ?? "new"} ${sheet}`;
  }

  /**
   * @param {HTMLFormElement} form
   * @param {string} sheet
   */
  #keepDraft(form, sheet) {
    this.#bows.store.keepDraft(this.#draftName(sheet), readPairs(form)).catch(() => {});
  }

  /**
   * @param {HTMLDialogElement} dialog
   * @param {HTMLFormElement} form
   * @param {string} sheet
   */
  async #save(dialog, form, sheet) {
    nameUnits(form, this.#bows.units);
    const at = momentOf(boxOf(form, "at")?.value);
    const said = { at, note: boxOf(form, "note")?.value ?? "", bow: this.#bow, draft: this.#draftName(sheet) };
    const { bow, errors } = await this.#bows.add(sheet === NEW_BOW ? "bow" : sheet, readPairs(form), said);
    say(form, errors);
    if (!bow) return;
    dialog.close();
    if (sheet === NEW_BOW) location.hash = bow;
  }
}

/** @param {HTMLDialogElement} dialog */
function formIn(dialog) {
  return partOf(dialog, "form", HTMLFormElement);
}

/**
 * What is typed into that no sheet declares: the moment, or the note; or null.
 * @param {HTMLFormElement} form
 * @param {string} name
 */
function boxOf(form, name) {
  const found = form.elements.namedItem(name);
  return found instanceof HTMLInputElement ? found : null;
}

/**
 * What a form says, without what it leaves unsaid.
 * @param {HTMLFormElement} form
 */
function readPairs(form) {
  return readForm(form, { all: true }).filter(([name, text]) => {
    const isTick = form.querySelector(`input[type="checkbox"][name="${CSS.escape(name)}"]`) !== null;
    return name !== "units" && text && !(isTick && text === "no");
  });
}

/**
 * A moment of the clock on the wall with the offset that holds then.
 * @param {string} [text]
 */
export function momentOf(text) {
  return text && MOMENT.test(text) ? now(new Date(text)) : now();
}

/**
 * @param {HTMLFormElement} form
 * @param {Problem[]} errors
 */
function say(form, errors) {
  const box = partOf(form, ".rb-problems", HTMLElement);
  box.hidden = errors.length === 0;
  box.replaceChildren(...errors.map(({ message }) => node("p", {}, message)));
  for (const field of fieldsOf(form)) for (const control of field.querySelectorAll("[aria-invalid]")) control.removeAttribute("aria-invalid");
  for (const error of errors) controlOf(form, error)?.setAttribute("aria-invalid", "true");
  if (errors.length) box.focus();
}
