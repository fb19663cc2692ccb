// Telling an owner: a link with all that it says in itself, and messages to change, copy or share.
// What leaves the device the reader hands over here, and it is written down as said.

import { copyText } from "./clipboard.mjs";
import { partOf, partsOf } from "./parts.mjs";
import { now } from "./store.mjs";

/** @import { Pair } from "./types.d.ts" */
/** @import { TaskAnswer } from "./record.d.ts" */

/**
 * @typedef Bench what tells, and what keeps what was told
 * @property {(more: object) => Promise<TaskAnswer<"tell"> | null>} tell
 * @property {(pairs: Pair[]) => Promise<unknown>} keep
 */

const PAGE = new URL("../../bow/", import.meta.url);
const WORDS = {
  copied: "Copied.",
  byHand: "Mark the text and copy it: this browser does not let a page do it.",
  large: "This link is too long for a QR code.",
};

/** @type {WeakMap<HTMLDialogElement, Bench>} */
const benches = new WeakMap();
/** @type {WeakMap<HTMLDialogElement, TaskAnswer<"tell">["messages"]>} */
const messages = new WeakMap();

/**
 * Open a dialog; what its bench is may have changed since it was opened last.
 * @param {Bench} bench
 * @param {HTMLDialogElement} dialog
 */
export async function openTelling(bench, dialog) {
  if (!benches.has(dialog)) equip(dialog);
  benches.set(dialog, bench);
  wordOf(dialog).value = "";
  for (const tick of ticksOf(dialog)) tick.checked = false; // a price goes along only when it was just said to
  said(dialog).textContent = "";
  if (await renew(dialog, true)) dialog.showModal();
}

/** @param {HTMLDialogElement} dialog */
function equip(dialog) {
  dialog.addEventListener("change", ({ target }) => {
    if (!(target instanceof HTMLInputElement)) return;
    if (target.name === "message") choose(dialog);
    else renew(dialog, target.name !== "word");
  });
  const does = Object.entries({
    "copy-message": () => hand(dialog, copy),
    "share-message": () => hand(dialog, share),
    "show-square": () => showSquare(dialog),
    close: async () => dialog.close(),
  });
  for (const [name, deed] of does) partOf(dialog, `[data-do="${name}"]`, HTMLButtonElement).addEventListener("click", deed);
  partOf(dialog, '[data-do="share-message"]', HTMLButtonElement).hidden = !("share" in navigator);
}

/**
 * Ask for the link and the messages anew; false where Python could not say them, which has been said.
 * @param {HTMLDialogElement} dialog
 * @param {boolean} withMessages
 */
async function renew(dialog, withMessages) {
  const priced = ticksOf(dialog).some(({ checked }) => checked);
  const told = await benches.get(dialog)?.tell({ at: now(), word: wordOf(dialog).value, priced });
  if (!told) return false;
  partOf(dialog, "a", HTMLAnchorElement).href = `${PAGE.href}#${told.link}`;
  partOf(dialog, ".rb-tell-left", HTMLElement).textContent =
    told.left.length ? `Left out, since a link takes no more: ${told.left.join(", ")}.` : "";
  partOf(dialog, ".rb-tell-square", HTMLElement).replaceChildren();
  if (!withMessages) return true;
  messages.set(dialog, told.messages);
  for (const radio of radiosOf(dialog)) radio.checked = radio.value === told.messages[0].id;
  choose(dialog);
  return true;
}

/**
 * Put the chosen message into the box, or the only one.
 * @param {HTMLDialogElement} dialog
 */
function choose(dialog) {
  const chosen = radiosOf(dialog).find(({ checked }) => checked)?.value;
  const told = messages.get(dialog) ?? [];
  const { text, caution } = told.find(({ id }) => id === chosen) ?? told[0];
  messageOf(dialog).value = text;
  partOf(dialog, ".rb-tell-caution", HTMLElement).textContent = caution;
}

/**
 * Hand the message with its link over, and write down what was said.
 * @param {HTMLDialogElement} dialog
 * @param {(text: string) => Promise<string>} way
 */
async function hand(dialog, way) {
  const text = messageOf(dialog).value.trim();
  const how = await way(`${text}\n${partOf(dialog, "a", HTMLAnchorElement).href}`);
  said(dialog).textContent = how === "copied" ? WORDS.copied : how === "none" ? WORDS.byHand : "";
  if (text && (how === "copied" || how === "shared")) await benches.get(dialog)?.keep([["text", text.slice(0, 2000)], ["way", how]]);
}

/** @param {string} text */
async function copy(text) {
  return await copyText(text) ? "copied" : "none";
}

/** @param {string} text */
async function share(text) {
  try {
    await navigator.share({ text });
    return "shared";
  } catch {
    return "left";
  }
}

/** @param {HTMLDialogElement} dialog */
async function showSquare(dialog) {
  const { fitsSquare, squareOf } = await import("./qr.mjs");
  const { href } = partOf(dialog, "a", HTMLAnchorElement);
  const place = partOf(dialog, ".rb-tell-square", HTMLElement);
  place.replaceChildren(fitsSquare(href) ? squareOf(href, "Page for the owner") : WORDS.large);
}

/** @param {HTMLDialogElement} dialog */
function radiosOf(dialog) {
  return partsOf(dialog, '[name="message"]', HTMLInputElement);
}

/** @param {HTMLDialogElement} dialog */
function ticksOf(dialog) {
  return partsOf(dialog, '[name="priced"]', HTMLInputElement);
}

/** @param {HTMLDialogElement} dialog */
function messageOf(dialog) {
  return partOf(dialog, "textarea", HTMLTextAreaElement);
}

/** @param {HTMLDialogElement} dialog */
function wordOf(dialog) {
  return partOf(dialog, '[name="word"]', HTMLInputElement);
}

/** @param {HTMLDialogElement} dialog */
function said(dialog) {
  return partOf(dialog, '[role="status"]', HTMLElement);
}
