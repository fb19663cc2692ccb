// Jumps inside a page are the browser's own. The theme would fetch the page again for the first of them,
// and with it everything typed would be gone.

import { carriesInputs } from "./link.mjs";
import { partsOf, sourceOf } from "./parts.mjs";
import { noteOwnLink } from "./sent.mjs";

const DIALOGS = ["__drawer", "__search"]; // the theme closes them once it has fetched a page
const CLOSING_MS = 250;

const root = document.documentElement;

/**
 * Keep jumps from the theme; then is called after each, with the fragment already in the address.
 * @param {() => void} then
 */
export function keepJumps(then) {
  root.dataset.landed = location.pathname; // the template's script, which is there before the theme's, keeps ways back in it
  window.addEventListener("click", catchJump, true);
  window.addEventListener("hashchange", then);
}

/** Once the theme runs: it follows a way back between pages, and within those it has fetched itself. */
export function noteMoves() {
  window.location$?.subscribe(() => delete root.dataset.landed);
}

/** @param {MouseEvent} event */
function catchJump(event) {
  const link = sourceOf(event)?.closest("a[href]");
  if (!(link instanceof HTMLAnchorElement) || link.origin !== location.origin) return;
  if (carriesInputs(link.hash)) noteOwnLink(link.hash); // nobody sent it: the reader is here
  if (event.button || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
  if (link.pathname !== location.pathname || link.download) return;
  if (root.dataset.plain !== "answer") delete root.dataset.plain; // what is jumped over has its own height
  link.target = "_self"; // the theme leaves links with a target alone
  link.search = location.search; // another one would load the page anew
  const toggles = DIALOGS.flatMap((id) => partsOf(document, `input#${id}`, HTMLInputElement));
  const open = toggles.filter(({ checked }) => checked);
  if (link.hash && !open.length) return;
  event.preventDefault();
  open.forEach((toggle) => toggle.click());
  setTimeout(() => (link.hash ? location.assign(link.hash) : window.scrollTo(0, 0)), open.length ? CLOSING_MS : 0);
}
