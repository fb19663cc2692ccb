// Files that come with an outcome, such as a calendar: their texts arrive beside the tree, their
// links stand in it. Nothing leaves the device; the browser saves what it already holds.

import { partsOf } from "./parts.mjs";

/** @import { OutcomeFile } from "./types.d.ts" */

/** @type {string[]} */
let held = [];

/**
 * Give each link to a file its file, and let go of the files of the outcome before.
 * @param {Element} outcome
 * @param {OutcomeFile[]} files
 */
export function offerFiles(outcome, files) {
  held.forEach((address) => URL.revokeObjectURL(address));
  held = [];
  for (const link of partsOf(outcome, "a.rb-file", HTMLAnchorElement)) {
    const file = files.find(({ name }) => name === link.dataset.file);
    if (!file) continue;
    link.href = URL.createObjectURL(new Blob([file.text], { type: `${file.type};charset=utf-8` }));
    link.download = file.name;
    held.push(link.href);
  }
}
