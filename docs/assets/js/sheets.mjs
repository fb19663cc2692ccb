// The forms of entries, as the record declares them: one dialog a sheet. What is typed is kept as a draft at once.

import { addRow, controlOf, fieldOf, fieldsOf, fillForm, nameUnits, readForm, removeRow, setUnits } from "./form.mjs";
import { now } from "./store.mjs";

const NEW_BOW = "new-bow";
const MOMENT = /^\d{4}-\d\d-\d\dT\d\d:\d\d/;

export class SheetForms {
  #bows;
  #section;
  #bow = null; // whose entry is being typed

  constructor(bows, section) {
    this.#bows = bows;
    this.#section = section;
    for (const dialog of section.querySelectorAll("dialog.rb-sheet")) this.#equip(dialog);
  }

  async open(sheet) {
    const dialog = this.#section.querySelector(`dialog[data-sheet="${sheet}"]`);
    const form = dialog.querySelector("form");
    this.#bow = sheet === NEW_BOW ? null : this.#bows.bow;
    form.reset();
    setUnits(form, this.#bows.units);
    say(form, []);
    if (form.elements.at) form.elements.at.value = now().slice(0, 16);
    const draft = await this.#bows.store.draft(this.#draftName(sheet)).catch(() => null);
    if (draft) fillForm(form, draft);
    dialog.showModal();
  }

  /** Pairs of a sheet as its form would keep them: bare numbers with the unit that they stand for. */
  withUnits(sheet, pairs) {
    const form = this.#section.querySelector(`dialog[data-sheet="${sheet}"] form`);
    form.reset();
    fillForm(form, pairs);
    nameUnits(form, this.#bows.units);
    return readPairs(form);
  }

  #equip(dialog) {
    const form = dialog.querySelector("form");
    const { sheet } = dialog.dataset;
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.#save(dialog, form, sheet);
    });
    form.addEventListener("input", () => this.#keepDraft(form, sheet));
    form.addEventListener("click", ({ target }) => {
      const field = target.closest(".rb-field");
      if (target.dataset.do === "close") dialog.close();
      else if (target.matches(".rb-add-row")) addRow(field);
      else if (target.matches(".rb-remove-row")) removeRow(field, target.closest("tr"));
    });
  }

  #draftName(sheet) {
    return `${this.#bow ?? "new"} ${sheet}`;
  }

  #keepDraft(form, sheet) {
    this.#bows.store.keepDraft(this.#draftName(sheet), readPairs(form)).catch(() => {});
  }

  async #save(dialog, form, sheet) {
    nameUnits(form, this.#bows.units);
    const { at, note } = form.elements;
    const said = { at: momentOf(at?.value), note: note?.value ?? "", bow: this.#bow };
    const kept = await this.#bows.add(sheet === NEW_BOW ? "bow" : sheet, readPairs(form), said);
    say(form, kept.errors ?? []);
    if (!kept.id) return;
    dialog.close();
    await this.#bows.store.dropDraft(this.#draftName(sheet)).catch(() => {});
    if (sheet === NEW_BOW) location.hash = kept.bow;
  }
}

/** What a form says, without what it leaves unsaid. */
function readPairs(form) {
  return readForm(form, { all: true }).filter(([name, text]) => {
    const isTick = form.querySelector(`input[type="checkbox"][name="${CSS.escape(name)}"]`) !== null;
    return name !== "units" && text && !(isTick && text === "no");
  });
}

/** A moment of the clock on the wall with the offset that holds then. */
function momentOf(text) {
  return text && MOMENT.test(text) ? now(new Date(text)) : now();
}

function say(form, errors) {
  const box = form.querySelector(".rb-problems");
  box.hidden = errors.length === 0;
  box.replaceChildren(...errors.map(({ message }) => {
    const line = document.createElement("p");
    line.textContent = message;
    return line;
  }));
  for (const field of fieldsOf(form)) for (const control of field.querySelectorAll("[aria-invalid]")) control.removeAttribute("aria-invalid");
  for (const { field, row = null, column } of errors) {
    if (field && fieldOf(form, field)) controlOf(form, { field, row, column })?.setAttribute("aria-invalid", "true");
  }
  if (errors.length) box.focus();
}
