// Telling an owner: a link with all that it says in itself, and three messages to change, copy or share.
// What leaves the device the reader hands over here, and it is written down as said.

import { copyText } from "./clipboard.mjs";
import { partOf, partsOf } from "./parts.mjs";
import { now } from "./store.mjs";

/** @import { Pair } from "./types.d.ts" */
/** @import { TaskAnswer } from "./record.d.ts" */

/**
 * @typedef Bench the page of bows, as far as it serves here
 * @property {string} record
 * @property {(task: "tell", more: object) => Promise<TaskAnswer<"tell"> | null>} ask
 * @property {(sheet: string, pairs: Pair[]) => Promise<unknown>} add
 */

const WORDS = {
  copied: "Copied.",
  byHand: "Mark the text and copy it: this browser does not let a page do it.",
  large: "This link is too long for a QR code.",
};

/**
 * Open the dialog for the bow whose page is open.
 * @param {Bench} bows
 * @param {HTMLDialogElement} dialog
 */
export async function openTelling(bows, dialog) {
  if (!("live" in dialog.dataset)) equip(bows, dialog);
  wordOf(dialog).value = "";
  said(dialog).textContent = "";
  if (await renew(bows, dialog, true)) dialog.showModal();
}

/**
 * @param {Bench} bows
 * @param {HTMLDialogElement} dialog
 */
function equip(bows, dialog) {
  dialog.dataset.live = "";
  wordOf(dialog).addEventListener("change", () => renew(bows, dialog, false));
  dialog.addEventListener("change", ({ target }) => {
    if (target instanceof HTMLInputElement && target.name === "message") choose(dialog, target);
  });
  const does = Object.entries({
    "copy-message": () => hand(bows, dialog, copy),
    "share-message": () => hand(bows, dialog, share),
    "show-square": () => showSquare(dialog),
    close: async () => dialog.close(),
  });
  for (const [name, deed] of does) partOf(dialog, `[data-do="${name}"]`, HTMLButtonElement).addEventListener("click", deed);
  partOf(dialog, '[data-do="share-message"]', HTMLButtonElement).hidden = !("share" in navigator);
}

/**
 * Ask for the link and the messages anew; false where Python could not say them, which has been said.
 * @param {Bench} bows
 * @param {HTMLDialogElement} dialog
 * @param {boolean} withMessages
 */
async function renew(bows, dialog, withMessages) {
  const told = await bows.ask("tell", { entries: bows.record, at: now(), word: wordOf(dialog).value });
  if (!told) return false;
  const address = new URL(`../bow/#${told.link}`, location.href).href;
  const link = partOf(dialog, "a", HTMLAnchorElement);
  link.href = address;
  partOf(dialog, ".rb-tell-left", HTMLElement).textContent =
    told.left.length ? `Left out, since a link takes no more: ${told.left.join(", ")}.` : "";
  partOf(dialog, ".rb-tell-square", HTMLElement).replaceChildren();
  if (!withMessages) return true;
  for (const radio of radiosOf(dialog)) {
    const message = told.messages.find(({ id }) => id === radio.value);
    radio.dataset.text = message?.text ?? "";
    radio.dataset.caution = message?.caution ?? "";
  }
  const [first] = radiosOf(dialog);
  first.checked = true;
  choose(dialog, first);
  return true;
}

/**
 * @param {HTMLDialogElement} dialog
 * @param {HTMLInputElement} radio
 */
function choose(dialog, { dataset }) {
  messageOf(dialog).value = dataset.text ?? "";
  partOf(dialog, ".rb-tell-caution", HTMLElement).textContent = dataset.caution ?? "";
}

/**
 * Hand the message with its link over, and write down what was said.
 * @param {Bench} bows
 * @param {HTMLDialogElement} dialog
 * @param {(text: string) => Promise<string>} way
 */
async function hand(bows, dialog, way) {
  const text = messageOf(dialog).value.trim();
  const how = await way(`${text}\n${partOf(dialog, "a", HTMLAnchorElement).href}`);
  said(dialog).textContent = how === "copied" ? WORDS.copied : how === "none" ? WORDS.byHand : "";
  if (text && (how === "copied" || how === "shared")) await bows.add("told", [["text", text.slice(0, 2000)], ["way", how]]);
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
