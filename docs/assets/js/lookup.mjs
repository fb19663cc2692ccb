// Look-up tables: find rows by words, sort by a column. Without this module they are plain tables.

import { partOf, partsOf } from "./parts.mjs";

const FEW = 5; // rows that stay unfolded on a phone

/** Give every look-up table of the page its tools. */
export function equipLookups() {
  partsOf(document, ".rb-lookup:not([data-equipped])", HTMLElement).forEach(equip);
}

/** @param {HTMLElement} section */
function equip(section) {
  section.dataset.equipped = "";
  const rows = partsOf(section, "tbody tr", HTMLTableRowElement);
  addFinding(section, rows);
  if (section.dataset.layout !== "grid") addSorting(section, rows);
}

/**
 * @param {HTMLElement} section
 * @param {HTMLTableRowElement[]} rows
 */
function addFinding(section, rows) {
  const tools = partOf(section, ".rb-lookup-tools", HTMLElement);
  const count = partOf(tools, ".rb-lookup-count", HTMLElement);
  const box = partOf(tools, "input", HTMLInputElement);
  const texts = rows.map(({ cells, dataset }) => [...[...cells].map((cell) => cell.textContent), dataset.words ?? ""].join(" ").toLowerCase());
  const words = texts.map(wordsIn);
  box.addEventListener("input", () => {
    const asked = box.value.toLowerCase().split(/\s+/).filter(Boolean);
    const found = asked.map((word) => rowsWith(word, texts, words));
    const hits = rows.map((_, index) => found.every((rowsFound) => rowsFound[index]));
    rows.forEach((row, index) => (row.hidden = !hits[index]));
    section.toggleAttribute("data-few", asked.length > 0 && hits.filter(Boolean).length <= FEW);
    count.textContent = asked.length ? `${hits.filter(Boolean).length} of ${rows.length} rows` : "";
  });
  tools.hidden = false;
}

/**
 * The words of a row; #7 is also 7, and 10-24 also 10.
 * @param {string} text
 */
function wordsIn(text) {
  const words = text.match(/#?[\p{L}\p{N}]+(?:[./-][\p{L}\p{N}]+)*/gu) ?? [];
  return [...words, ...words.flatMap((word) => word.split(/[#-]/))];
}

/**
 * For each row whether it holds a word. Letters may stand anywhere in a word. A letter or two, and anything
 * with a figure, is taken as a whole word if any row has it, else as the beginning of one: F is a drill,
 * not a fraction, and 1/32 is not 11/32.
 * @param {string} word
 * @param {string[]} texts
 * @param {string[][]} words
 */
function rowsWith(word, texts, words) {
  const anywhere = texts.map((text) => text.includes(word));
  if (word.length > 2 && !/\d/.test(word)) return anywhere;
  const whole = words.map((each) => each.includes(word));
  const begun = words.map((each) => each.some((one) => one.startsWith(word)));
  return [whole, begun].find((hits) => hits.includes(true)) ?? anywhere;
}

/**
 * @param {HTMLElement} section
 * @param {HTMLTableRowElement[]} rows
 */
function addSorting(section, rows) {
  const heads = partsOf(section, "thead th", HTMLTableCellElement);
  const select = orderChoice(section, heads);
  const sort = (/** @type {number} */ column, /** @type {1 | -1} */ direction) => {
    heads.forEach((head, index) => {
      if (index === column) head.ariaSort = direction > 0 ? "ascending" : "descending";
      else head.removeAttribute("aria-sort");
    });
    const sorted = [...rows];
    for (const { cells } of rows) [...cells].forEach((cell, index) => cell.classList.toggle("rb-sorted", index === column));
    if (column >= 0) sorted.sort((one, other) => direction * compare(one.cells[column], other.cells[column]));
    partOf(section, "tbody", HTMLElement).append(...sorted);
    select.value = String(column);
  };
  heads.forEach((head, index) => {
    const button = Object.assign(document.createElement("button"), { type: "button", textContent: head.textContent });
    button.addEventListener("click", () => sort(index, head.ariaSort === "ascending" ? -1 : 1));
    head.replaceChildren(button);
  });
  select.addEventListener("change", () => sort(Number(select.value), 1));
}

/**
 * A choice of columns for phones, where the table's head is out of sight.
 * @param {HTMLElement} section
 * @param {HTMLTableCellElement[]} heads
 */
function orderChoice(section, heads) {
  const label = Object.assign(document.createElement("label"), { className: "rb-lookup-order", textContent: "Sort by " });
  const select = document.createElement("select");
  select.append(new Option("the table's own order", "-1"), ...heads.map((head, index) => new Option(head.textContent, String(index))));
  label.append(select);
  partOf(section, ".rb-lookup-tools", HTMLElement).append(label);
  return select;
}

/**
 * Numbers by size, texts by their letters and the numbers in them; empty cells last.
 * @param {HTMLTableCellElement} one
 * @param {HTMLTableCellElement} other
 */
function compare(one, other) {
  if (one.dataset.sort && other.dataset.sort) return Number(one.dataset.sort) - Number(other.dataset.sort);
  const [a, b] = [one.textContent, other.textContent];
  if (!a || !b) return (a ? 0 : 1) - (b ? 0 : 1);
  return a.localeCompare(b, "en", { numeric: true });
}
