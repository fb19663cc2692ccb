// What comes last on a shared link's page. Its fonts, for which all is laid out anew; then what stands below the first
// screens, in pieces: in one go it would keep a phone from hearing what is pressed.

import { partsOf } from "./parts.mjs";

const BELOW = ".rb-behind > *, .rb-cautions, .rb-calculator ~ *, .md-footer"; // as in the style sheet
const PIECE = 150; // elements; for each piece the page is painted once

const { dataset } = document.documentElement;

/** Bring it; what a reader scrolls to meanwhile comes at once by itself. */
export async function bringRest() {
  await Promise.allSettled([...document.fonts].map((font) => font.load())); // all there, they are put in at once
  if ("plain" in dataset) dataset.plain = "rest";
  const parts = partsOf(document, BELOW, HTMLElement);
  let count = PIECE;
  for (const part of parts) {
    if (count >= PIECE) {
      await quiet();
      count = 0;
    }
    part.style.contentVisibility = "visible";
    count += 1 + part.querySelectorAll("*").length;
  }
  delete dataset.plain;
  for (const part of parts) part.style.contentVisibility = "";
}

/** @returns {Promise<void>} */
function quiet() {
  const idle = window.requestIdleCallback ?? ((/** @type {() => void} */ task) => setTimeout(task, 50));
  return new Promise((resolve) => idle(() => resolve()));
}
