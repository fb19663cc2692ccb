// Reading and filling the form of one calculator. Every control is found by the name it was built with.

import { around, partOf, partsOf, sourceOf } from "./parts.mjs";

/** @import { Control, Pair, Problem, UnitSystem } from "./types.d.ts" */

const NOTHING_TYPED = "";
// Cell and row marks of a table in a link; typed inside a cell they would shift the others.
const MARKS = /[:;]/g;
const BARE_NUMBER = /^[\s\d.,/+⁄½¼¾⅛⅜⅝⅞-]*\d[\s\d.,/+⁄½¼¾⅛⅜⅝⅞-]*$|^\s*[½¼¾⅛⅜⅝⅞]\s*$/;

/**
 * The input as pairs [name, text as typed], without those that do not matter now unless asked; units last.
 * @param {HTMLFormElement} form
 * @param {{all?: boolean}} options
 * @returns {Pair[]}
 */
export function readForm(form, { all = false } = {}) {
  const pairs = fieldsOf(form)
    .filter((field) => all || !field.hidden)
    .map((field) => pairOf(nameOf(field), readField(field)));
  return [...pairs, pairOf("units", unitsOf(form))];
}

/**
 * Put pairs into the form; returns those that found no place there, for the engine to report.
 * @param {HTMLFormElement} form
 * @param {Pair[]} pairs
 */
export function fillForm(form, pairs) {
  const strangers = pairs.filter(([name, text]) => {
    if (name === "units") return !setUnits(form, text);
    const field = fieldOf(form, name);
    return !field || !fillField(field, text);
  });
  showWhatMatters(form);
  return strangers;
}

/**
 * Fill in what a link means by leaving it out, where that is not the worked example's figure; what it says comes next.
 * @param {HTMLFormElement} form
 */
export function fillWhatLinksMean(form) {
  for (const field of fieldsOf(form)) {
    if (field.dataset.absent !== undefined) fillField(field, field.dataset.absent);
  }
}

/**
 * Put the worked example back. The unit system stays as the reader chose it.
 * @param {HTMLFormElement} form
 * @param {Pair[]} example
 */
export function resetForm(form, example) {
  fillForm(form, example.filter(([name]) => name !== "units"));
}

/**
 * @param {HTMLFormElement} form
 * @param {string} name
 */
export function fieldOf(form, name) {
  /** @type {HTMLElement | null} */
  const field = form.querySelector(`.rb-field[data-field="${CSS.escape(name)}"]`);
  return field;
}

/**
 * The control of an error: {field, row, column}; rows count only those that are not blank.
 * @param {HTMLFormElement} form
 * @param {Omit<Problem, "message">} place
 * @returns {Control | null}
 */
export function controlOf(form, { field: name, row = null, column }) {
  const field = name ? fieldOf(form, name) : null;
  if (!field) return null;
  if (!isTable(field)) return controlsIn(field)[0];
  const lines = row === null ? rowsOf(field) : rowsOf(field).filter(isFilled);
  const line = lines[row ?? 0] ?? rowsOf(field)[0];
  return controlsIn(line).find((control) => control.dataset.column === column) ?? controlsIn(line)[0];
}

/**
 * Fields that depend on a choice show only for the values of it that they matter for.
 * @param {HTMLFormElement} form
 */
export function showWhatMatters(form) {
  const fields = new Map(fieldsOf(form).map((field) => [nameOf(field), field]));
  for (const field of fields.values()) {
    const { whenField, whenValues } = field.dataset;
    if (!whenField) continue;
    const on = fields.get(whenField);
    if (!on) throw new Error(`the form has no field ${whenField}`);
    field.hidden = on.hidden || !whenValues?.split(" ").includes(readField(on));
  }
  for (const group of partsOf(form, ".rb-group, .rb-fold", HTMLElement)) {
    group.hidden = group.querySelector(".rb-field") !== null && group.querySelector(".rb-field:not([hidden])") === null;
  }
}

/**
 * @param {HTMLFormElement} form
 * @returns {UnitSystem}
 */
export function unitsOf(form) {
  return radiosOf(form).find(({ checked }) => checked)?.value === "metric" ? "metric" : "imperial";
}

/** @param {HTMLFormElement} form */
function radiosOf(form) {
  return partsOf(form, '[name="units"]', HTMLInputElement);
}

/**
 * Choose a unit system; returns whether there is one of that name.
 * @param {HTMLFormElement} form
 * @param {string} system
 */
export function setUnits(form, system) {
  const radio = radiosOf(form).find(({ value }) => value === system);
  if (radio) radio.checked = true;
  document.documentElement.dataset.units = unitsOf(form);
  for (const field of fieldsOf(form).filter(isTable)) numberRows(field, unitsOf(form));
  return Boolean(radio);
}

/**
 * Numbers typed without a unit keep the meaning they had in the other system.
 * @param {HTMLFormElement} form
 * @param {UnitSystem} formerSystem
 */
export function nameUnits(form, formerSystem) {
  const attribute = formerSystem === "metric" ? "unitMetric" : "unitImperial";
  for (const control of partsOf(form, "input[data-unit-imperial]", HTMLInputElement)) {
    const unit = control.dataset[attribute];
    if (unit && BARE_NUMBER.test(control.value)) control.value = `${control.value.trim()} ${unit}`;
  }
}

/**
 * A share in a link without a sign is a percentage, as it always was; typed by hand it would be asked about.
 * @param {HTMLFormElement} form
 */
export function namePercents(form) {
  for (const control of partsOf(form, 'input[data-unit-imperial="%"]', HTMLInputElement)) {
    if (BARE_NUMBER.test(control.value)) control.value = `${control.value.trim()} %`;
  }
}

// Tables of rows ---------------------------------------------------------------

/**
 * An empty row behind another, or behind the last.
 * @param {HTMLElement} field
 */
export function addRow(field, behind = lastRowOf(field)) {
  const line = emptyRow(behind);
  numberRows(field);
  return line;
}

/**
 * An empty row behind another, without a number.
 * @param {HTMLTableRowElement} behind
 */
function emptyRow(behind) {
  const line = /** @type {HTMLTableRowElement} */ (behind.cloneNode(true));
  controlsIn(line).forEach((control) => setControl(control, NOTHING_TYPED));
  behind.after(line);
  return line;
}

/**
 * @param {HTMLElement} field
 * @param {Element} line
 */
export function removeRow(field, line) {
  if (rowsOf(field).length > 1) line.remove();
  numberRows(field);
}

/**
 * Rows that were added, removed or switched to other units get their numbers and spoken names.
 * @param {HTMLElement} field
 * @param {UnitSystem} [system]
 */
function numberRows(field, system = unitsOf(around(field, "form", HTMLFormElement))) {
  const { fewest, most } = limitsOf(field);
  const lines = rowsOf(field);
  lines.forEach((line, index) => {
    const number = String(index + 1);
    partOf(line, ".rb-row-number", HTMLElement).textContent = number;
    for (const control of controlsIn(line)) {
      const { nameImperial, nameMetric } = control.dataset;
      control.setAttribute("aria-label", `Row ${number}, ${system === "metric" ? nameMetric : nameImperial}`);
    }
    const remove = partOf(line, ".rb-remove-row", HTMLElement);
    remove.setAttribute("aria-label", `Remove row ${number}`);
    remove.hidden = lines.length <= Math.max(1, fewest);
  });
  partOf(field, ".rb-add-row", HTMLElement).hidden = lines.length >= most;
  countRows(field);
}

/**
 * A folded list says how many rows it holds.
 * @param {HTMLElement} field
 */
export function countRows(field) {
  const place = field.querySelector(".rb-list-count");
  if (place) place.textContent = String(rowsOf(field).filter(isFilled).length);
}

/**
 * How many rows of a table's text are more than the table takes.
 * @param {HTMLElement} field
 * @param {string} text
 */
export function rowsBeyond(field, text) {
  return isTable(field) ? Math.max(0, text.split(";").length - limitsOf(field).most) : 0;
}

/**
 * Returns whether the table can hold every cell.
 * @param {HTMLElement} field
 * @param {string} text
 */
function fillTable(field, text) {
  const cells = text ? text.split(";").map((row) => row.split(":")) : [[]];
  const wanted = cells.slice(0, Math.max(1, limitsOf(field).most));
  while (rowsOf(field).length > wanted.length) lastRowOf(field).remove();
  while (rowsOf(field).length < wanted.length) emptyRow(lastRowOf(field));
  const held = rowsOf(field).map((line, row) =>
    controlsIn(line).map((control, column) => setControl(control, wanted[row][column] ?? absentIn(control))),
  );
  numberRows(field);
  return cells.length === wanted.length && held.flat().every(Boolean);
}

/**
 * What a cell means that a row leaves out: nothing typed, and of a choice the first.
 * @param {Control} control
 */
function absentIn(control) {
  return control instanceof HTMLSelectElement ? control.options[0].value : NOTHING_TYPED;
}

/** @param {HTMLElement} field */
function readTable(field) {
  return rowsOf(field)
    .filter(isFilled)
    .map((line) => controlsIn(line).map((control) => readControl(control).replace(MARKS, "|")).join(":"))
    .join(";");
}

/**
 * A choice always has a value, so only what is typed counts.
 * @param {HTMLTableRowElement} line
 */
function isFilled(line) {
  return controlsIn(line).some((control) => control.localName === "input" && control.value.trim());
}

// Fields and controls ----------------------------------------------------------

/** @param {Element} form */
export function fieldsOf(form) {
  return partsOf(form, ".rb-field[data-field]", HTMLElement);
}

/**
 * The id of a field's input.
 * @param {HTMLElement} field
 */
export function nameOf(field) {
  return field.dataset.field ?? "";
}

/**
 * A field's label as its reader sees it.
 * @param {HTMLElement} field
 */
export function labelOf(field) {
  return (field.querySelector("label, caption")?.firstChild?.textContent ?? nameOf(field)).trim();
}

/**
 * @param {string} name
 * @param {string} text
 * @returns {Pair}
 */
function pairOf(name, text) {
  return [name, text];
}

/** @param {HTMLElement} field */
function tableOf(field) {
  return partOf(field, "table.rb-rows", HTMLTableElement);
}

/**
 * The fewest and the most rows that a table takes.
 * @param {HTMLElement} field
 */
export function limitsOf(field) {
  const { fewest, most } = tableOf(field).dataset;
  return { fewest: fewest === undefined ? 1 : Number(fewest), most: most === undefined ? Infinity : Number(most) };
}

/**
 * Whether a table has fewer filled rows than it needs.
 * @param {HTMLElement} field
 */
export function isUnfinished(field) {
  return isTable(field) && rowsOf(field).filter(isFilled).length < limitsOf(field).fewest;
}

/** @param {HTMLElement} field */
function isTable(field) {
  return field.querySelector("table.rb-rows") !== null;
}

/** @param {HTMLElement} field */
export function rowsOf(field) {
  return [...tableOf(field).tBodies[0].rows];
}

/** @param {HTMLElement} field */
function lastRowOf(field) {
  const rows = rowsOf(field);
  return rows[rows.length - 1];
}

/**
 * @param {Element} element
 * @returns {Control[]}
 */
export function controlsIn(element) {
  return /** @type {Control[]} */ (partsOf(element, "input, select", HTMLElement));
}

/**
 * The control that an event came from, or null.
 * @param {Event} event
 * @returns {Control | null}
 */
export function controlFrom(event) {
  const source = sourceOf(event);
  return source instanceof HTMLInputElement || source instanceof HTMLSelectElement ? source : null;
}

/** @param {HTMLElement} field */
function readField(field) {
  return isTable(field) ? readTable(field) : readControl(controlsIn(field)[0]);
}

/**
 * @param {HTMLElement} field
 * @param {string} text
 */
function fillField(field, text) {
  return isTable(field) ? fillTable(field, text) : setControl(controlsIn(field)[0], text);
}

/**
 * @param {Control} control
 * @returns {control is HTMLInputElement}
 */
function isTick(control) {
  return control.type === "checkbox";
}

/** @param {Control} control */
function readControl(control) {
  if (isTick(control)) return control.checked ? "yes" : "no";
  return control.value;
}

/**
 * Returns whether the control can hold the text.
 * @param {Control} control
 * @param {string} text
 */
function setControl(control, text) {
  if (isTick(control)) {
    control.checked = text === "yes";
    return text === "yes" || text === "no";
  }
  if (control instanceof HTMLSelectElement && ![...control.options].some(({ value }) => value === text)) return false;
  control.value = text;
  return true;
}
