// What a bow's record gives on paper: Python says what stands on it, this shows it and hands it to the printer.
// It stands on the page until the reader goes back, since some browsers print only after a script has ended.

import { partOf } from "./parts.mjs";
import { fitsSquare, squareOf } from "./qr.mjs";
import { grow } from "./tree.mjs";

/** @import { TreeNode } from "./types.d.ts" */

const SQUARE_TITLE = "Page for the owner";
const SQUARE_WORDS = "How it stands, for its owner";

/**
 * Show what is to be printed, in the view for it.
 * @param {HTMLElement} view
 * @param {string} title
 * @param {TreeNode[]} tree
 */
export function showPaper(view, title, tree) {
  const heading = partOf(view, "h2", HTMLElement);
  heading.textContent = title;
  partOf(view, ".rb-paper-sheet", HTMLElement).replaceChildren(grow(tree));
  partOf(view, '[data-do="print"]', HTMLElement).onclick = () => window.print();
  heading.scrollIntoView();
  heading.focus({ preventScroll: true });
}

/**
 * Put the way to the owner's page on a sheet, unless it is too long for a camera to read from paper.
 * @param {HTMLElement} view
 * @param {string} link fragment of that page
 */
export function addSquare(view, link) {
  const { href } = new URL(`../bow/#${link}`, location.href);
  if (!fitsSquare(href)) return;
  const words = Object.assign(document.createElement("p"), { textContent: SQUARE_WORDS });
  partOf(view, ".rb-paper-square", HTMLElement).replaceChildren(squareOf(href, SQUARE_TITLE), words);
}
