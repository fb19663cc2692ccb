// The theme puts tables of the text into boxes that scroll sideways where they are too wide.

import { partsOf } from "./parts.mjs";

const BOX = ".md-typeset__scrollwrap";

// Tells of what is laid out and no sooner: to ask the page itself would have all of it laid out at once.
const resized = new ResizeObserver((entries) => {
  for (const { target } of entries) {
    const box = target.closest(BOX);
    if (box instanceof HTMLElement) reach(box);
  }
});

/** Let the keyboard reach and scroll those boxes that need it, as long as they stand on the page. */
export function reachWideTables() {
  for (const part of partsOf(document, `${BOX}, ${BOX} table`, HTMLElement)) resized.observe(part);
}

/** @param {HTMLElement} box */
function reach(box) {
  if (box.scrollWidth > box.clientWidth) box.tabIndex = 0;
  else box.removeAttribute("tabindex");
}
