// Tables of results. One that is wider than its page becomes a card a row, every figure under its name,
// so that no digit is ever cut off.

import { around, partOf } from "./parts.mjs";

const widths = new WeakMap();

const resized = new ResizeObserver((entries) => {
  const boxes = entries.map(({ target }) => around(target, ".rb-table", HTMLElement))
    .filter((box) => box.clientWidth !== widths.get(box));
  requestAnimationFrame(() => boxes.forEach(fit)); // within the observer's own turn it would call itself
});

/**
 * Let the tables of an outcome follow the width that they have.
 * @param {Element} outcome
 */
export function fitTables(outcome) {
  for (const each of outcome.querySelectorAll(".rb-table, .rb-table > table")) resized.observe(each);
}

/** @param {Element} box */
function fit(box) {
  const table = partOf(box, "table", HTMLTableElement);
  if (table.checkVisibility?.({ contentVisibilityAuto: true }) === false) return; // seen anew once it is laid out
  widths.set(box, box.clientWidth);
  box.classList.remove("rb-table--cards");
  if (box.scrollWidth <= box.clientWidth) return;
  const [heads, ...lines] = table.rows;
  for (const { cells } of lines) {
    [...cells].forEach((cell, column) => (cell.dataset.label = heads.cells[column].textContent));
  }
  box.classList.add("rb-table--cards");
}
