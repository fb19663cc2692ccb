// Reading and filling the form of one calculator. Every control is found by the name it was built with.

const NOTHING_TYPED = "";
// Cell and row marks of a table in a link; typed inside a cell they would shift the others.
const MARKS = /[:;]/g;
const BARE_NUMBER = /^[\s\d.,/+⁄½¼¾⅛⅜⅝⅞-]*\d[\s\d.,/+⁄½¼¾⅛⅜⅝⅞-]*$|^\s*[½¼¾⅛⅜⅝⅞]\s*$/;

/** The input as pairs [name, text as typed], without those that do not matter now unless asked; units last. */
export function readForm(form, { all = false } = {}) {
  const pairs = fieldsOf(form)
    .filter((field) => all || !field.hidden)
    .map((field) => [field.dataset.field, readField(field)]);
  return [...pairs, ["units", unitsOf(form)]];
}

/** Put pairs into the form; returns those that found no place there, for the engine to report. */
export function fillForm(form, pairs) {
  const strangers = pairs.filter(([name, text]) => {
    if (name === "units") return !setUnits(form, text);
    const field = fieldOf(form, name);
    return !field || !fillField(field, text);
  });
  showWhatMatters(form);
  return strangers;
}

/** Fill in what a link means by leaving it out, where that is not the worked example's figure. */
export function fillWhatLinksMean(form) {
  for (const field of fieldsOf(form)) {
    if (field.dataset.absent !== undefined) fillField(field, field.dataset.absent);
  }
  showWhatMatters(form);
}

/** Put the worked example back. The unit system stays as the reader chose it. */
export function resetForm(form, example) {
  fillForm(form, example.filter(([name]) => name !== "units"));
}

export function fieldOf(form, name) {
  return fieldsOf(form).find((field) => field.dataset.field === name) ?? null;
}

/** The control of an error: {field, row, column}; rows count only those that are not blank. */
export function controlOf(form, { field: name, row, column }) {
  const field = fieldOf(form, name);
  if (!field) return null;
  if (!isTable(field)) return controlsIn(field)[0];
  const lines = row === null ? rowsOf(field) : rowsOf(field).filter(isFilled);
  const line = lines[row ?? 0] ?? rowsOf(field)[0];
  return controlsIn(line).find((control) => control.dataset.column === column) ?? controlsIn(line)[0];
}

/** Fields that depend on a choice show only for the values of it that they matter for. */
export function showWhatMatters(form) {
  for (const field of fieldsOf(form)) {
    const { whenField, whenValues } = field.dataset;
    if (!whenField) continue;
    const on = fieldOf(form, whenField);
    field.hidden = on.hidden || !whenValues.split(" ").includes(readField(on));
  }
  for (const group of form.querySelectorAll(".rb-group")) {
    const fields = [...group.querySelectorAll(".rb-field")];
    group.hidden = fields.length > 0 && fields.every((field) => field.hidden);
  }
}

export function unitsOf(form) {
  return form.querySelector('[name="units"]:checked')?.value ?? "imperial";
}

/** Choose a unit system; returns whether there is one of that name. */
export function setUnits(form, system) {
  const radio = [...form.querySelectorAll('[name="units"]')].find(({ value }) => value === system);
  if (radio) radio.checked = true;
  document.documentElement.dataset.units = unitsOf(form);
  for (const field of fieldsOf(form).filter(isTable)) numberRows(field, unitsOf(form));
  return Boolean(radio);
}

/** Numbers typed without a unit keep the meaning they had in the other system. */
export function nameUnits(form, formerSystem) {
  const attribute = formerSystem === "metric" ? "unitMetric" : "unitImperial";
  for (const control of form.querySelectorAll("input[data-unit-imperial]")) {
    const unit = control.dataset[attribute];
    if (unit && BARE_NUMBER.test(control.value)) control.value = `${control.value.trim()} ${unit}`;
  }
}

/** A share in a link without a sign is a percentage, as it always was; typed by hand it would be asked about. */
export function namePercents(form) {
  for (const control of form.querySelectorAll('input[data-unit-imperial="%"]')) {
    if (BARE_NUMBER.test(control.value)) control.value = `${control.value.trim()} %`;
  }
}

// Tables of rows ---------------------------------------------------------------

export function addRow(field) {
  const lines = rowsOf(field);
  const line = lines.at(-1).cloneNode(true);
  controlsIn(line).forEach((control) => setControl(control, NOTHING_TYPED));
  lines.at(-1).after(line);
  numberRows(field);
  return line;
}

export function removeRow(field, line) {
  if (rowsOf(field).length > 1) line.remove();
  numberRows(field);
}

/** Rows that were added, removed or switched to other units get their numbers and spoken names. */
function numberRows(field, system = unitsOf(field.closest("form"))) {
  const { fewest = 1, most = Infinity } = tableOf(field).dataset;
  const lines = rowsOf(field);
  lines.forEach((line, index) => {
    const number = String(index + 1);
    line.querySelector(".rb-row-number").textContent = number;
    for (const control of controlsIn(line)) {
      const { nameImperial, nameMetric } = control.dataset;
      control.setAttribute("aria-label", `Row ${number}, ${system === "metric" ? nameMetric : nameImperial}`);
    }
    const remove = line.querySelector(".rb-remove-row");
    remove.setAttribute("aria-label", `Remove row ${number}`);
    remove.hidden = lines.length <= Math.max(1, fewest);
  });
  field.querySelector(".rb-add-row").hidden = lines.length >= most;
}

/** How many rows of a table's text are more than the table takes. */
export function rowsBeyond(field, text) {
  const { most = Infinity } = isTable(field) ? tableOf(field).dataset : {};
  return Math.max(0, text.split(";").length - most);
}

/** Returns whether the table can hold every cell. */
function fillTable(field, text) {
  const cells = text.split(";").map((row) => row.split(":"));
  const { most = cells.length } = tableOf(field).dataset;
  const wanted = cells.slice(0, Math.max(1, most));
  while (rowsOf(field).length > wanted.length) rowsOf(field).at(-1).remove();
  while (rowsOf(field).length < wanted.length) addRow(field);
  const held = rowsOf(field).map((line, row) =>
    controlsIn(line).map((control, column) => setControl(control, wanted[row][column] ?? NOTHING_TYPED)),
  );
  numberRows(field);
  return cells.length === wanted.length && held.flat().every(Boolean);
}

function readTable(field) {
  return rowsOf(field)
    .filter(isFilled)
    .map((line) => controlsIn(line).map((control) => readControl(control).replace(MARKS, "|")).join(":"))
    .join(";");
}

/** A choice always has a value, so only what is typed counts. */
function isFilled(line) {
  return controlsIn(line).some((control) => control.localName === "input" && control.value.trim());
}

// Fields and controls ----------------------------------------------------------

export function fieldsOf(form) {
  return [...form.querySelectorAll(".rb-field[data-field]")];
}

function tableOf(field) {
  return field.querySelector("table.rb-rows");
}

function isTable(field) {
  return tableOf(field) !== null;
}

function rowsOf(field) {
  return [...tableOf(field).tBodies[0].rows];
}

function controlsIn(element) {
  return [...element.querySelectorAll("input, select")];
}

function readField(field) {
  return isTable(field) ? readTable(field) : readControl(controlsIn(field)[0]);
}

function fillField(field, text) {
  return isTable(field) ? fillTable(field, text) : setControl(controlsIn(field)[0], text);
}

function readControl(control) {
  if (control.type === "checkbox") return control.checked ? "yes" : "no";
  return control.value;
}

/** Returns whether the control can hold the text. */
function setControl(control, text) {
  if (control.type === "checkbox") {
    control.checked = text === "yes";
    return text === "yes" || text === "no";
  }
  if (control.localName === "select" && ![...control.options].some(({ value }) => value === text)) return false;
  control.value = text;
  return true;
}
