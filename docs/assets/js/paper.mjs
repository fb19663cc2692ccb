// What a bow's record gives on paper: Python says what stands on it, this shows it and hands it to the printer.
// It stands on the page until the reader goes back, since some browsers print only after a script has ended.

import { partOf } from "./parts.mjs";
import { fitsSquare, squareOf } from "./qr.mjs";
import { grow } from "./tree.mjs";

/** @import { TreeNode } from "./types.d.ts" */

/** What a square on paper leads to. */
export const LEADS = {
  owner: { title: "Page for the owner", words: "How it stands, for its owner" },
  bow: { title: "Page of this bow", words: "Its page, in the browser that keeps it" },
};

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
 * Put the way to a page on a sheet, unless it is too long for a camera to read from paper.
 * @param {HTMLElement} view
 * @param {string} href
 * @param {{title: string, words: string}} said
 */
export function addSquare(view, href, { title, words }) {
  if (!fitsSquare(href)) return;
  const below = Object.assign(document.createElement("p"), { textContent: words });
  partOf(view, ".rb-paper-square", HTMLElement).replaceChildren(squareOf(href, title), below);
}
