// Tables of results. One that is wider than its page becomes a card a row, every figure under its name,
// so that no digit is ever cut off.

import { around, partOf } from "./parts.mjs";

const widths = new WeakMap();

const resized = new ResizeObserver((entries) => {
  const boxes = entries.map(({ target }) => around(target, ".rb-table", HTMLElement))
    .filter((box) => box.clientWidth !== widths.get(box));
  requestAnimationFrame(() => fit(new Set(boxes))); // within the observer's own turn it would call itself
});

/**
 * Let the tables of an outcome follow the width that they have.
 * @param {Element} outcome
 */
export function fitTables(outcome) {
  for (const each of outcome.querySelectorAll(".rb-table, .rb-table > table")) resized.observe(each);
}

/**
 * All are written to, then all are read, then all are written to: the page is laid out once for them, and not for each.
 * @param {Iterable<HTMLElement>} boxes
 */
function fit(boxes) {
  const seen = [...boxes].filter(isLaidOut);
  for (const box of seen) box.classList.remove("rb-table--cards");
  const wide = seen.filter((box) => {
    widths.set(box, box.clientWidth);
    return box.scrollWidth > box.clientWidth;
  });
  wide.forEach(layOutAsCards);
}

/**
 * Whether it can be measured; what stands below comes later, and is seen anew once it is laid out.
 * @param {Element} box
 */
function isLaidOut(box) {
  const table = partOf(box, "table", HTMLTableElement);
  return table.checkVisibility?.({ contentVisibilityAuto: true }) !== false;
}

/** @param {Element} box */
function layOutAsCards(box) {
  const [heads, ...lines] = partOf(box, "table", HTMLTableElement).rows;
  for (const { cells } of lines) {
    [...cells].forEach((cell, column) => (cell.dataset.label = heads.cells[column].textContent));
  }
  box.classList.add("rb-table--cards");
}
