// Bows as files: handed to the share sheet or saved, and taken in. A file is hostile: Python reads it as text,
// and nothing in it is ever shown as anything but text.

import { partOf, sourceOf } from "./parts.mjs";

/** @import { Bows } from "./bows.mjs" */
/** @import { BowFile, FoundBow, KeptEntry, KeptPhoto, Summary } from "./record.d.ts" */

const LONGEST_BYTES = 64 * 1024 * 1024;
const TYPE_OF_BOW = "text/html";
const RELEASE_MS = 60_000;
const NOT_KEPT = "This browser did not keep the file's entries. Nothing that was there is changed.";
const NEWER = "The file is from a later release than this page; what this page does not know is kept as it came.";

/**
 * Hand a file to the share sheet where there is one, else save it; resolves to whether it left.
 * @param {BowFile} made
 * @param {KeptPhoto[]} photos that go with it
 */
export async function saveFile({ page, name }, photos) {
  const parts = photos.length ? await (await import("./picture.mjs")).withPictures(page, photos) : [page];
  const file = new File(parts, name, { type: TYPE_OF_BOW });
  if (navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file] });
      return true;
    } catch (error) {
      if (error instanceof Error && error.name === "AbortError") return false;
    }
  }
  download(file);
  return true;
}

/** @param {{text: string} | null} made */
export async function openCsv(made) {
  if (made?.text) download(new File([made.text], "readings.csv", { type: "text/csv" }));
}

/** @param {{text: string, name: string}} made */
export function openCalendar({ text, name }) {
  download(new File([text], name, { type: "text/calendar" }));
}

/** @param {File} file */
export function download(file) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(file);
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), RELEASE_MS);
}

/**
 * Take a file in; resolves to the id of its (last) bow, or null where nothing was taken in and that was said.
 * @param {Bows} bows
 * @param {File | undefined} file
 * @param {HTMLDialogElement} dialog
 */
export async function openFile(bows, file, dialog) {
  if (!file) return null;
  if (file.size > LONGEST_BYTES) {
    bows.notice("This file is larger than 64 MB, so it is no bow's file. Nothing was taken from it.");
    return null;
  }
  const { takenOut, takePictures } = await import("./picture.mjs");
  const { rest, pictures } = takenOut(await file.text());
  const found = await bows.ask("bows", { text: rest });
  if (!found) return null;
  const held = (found.bows ?? []).filter(({ entries }) => entries.length);
  if (!held.length) {
    bows.notice(`${found.refused ?? "The file holds no entry that can be read."} Nothing was taken from it.`);
    return null;
  }
  return mergeAll(bows, held, found.missing, dialog, (bow) => takePictures(bows, bow, pictures));
}

/**
 * @param {Bows} bows
 * @param {FoundBow[]} held
 * @param {number} missing
 * @param {HTMLDialogElement} dialog
 * @param {(bow: string) => Promise<string>} takePictures
 */
async function mergeAll(bows, held, missing, dialog, takePictures) {
  const said = [];
  /** @type {string | null} */
  let taken = null;
  for (const each of held) {
    const { bow, sentence } = await merge(bows, each, dialog);
    taken = bow ?? taken;
    said.push(sentence, bow && (await takePictures(bow)));
  }
  if (missing) said.push(`The file was cut off: ${missing} more ${missing === 1 ? "bow is" : "bows are"} missing.`);
  bows.notice(said.filter(Boolean).join(" "));
  return taken;
}

/**
 * @param {Bows} bows
 * @param {FoundBow} found
 * @param {HTMLDialogElement} dialog
 * @returns {Promise<{bow?: string, sentence?: string}>}
 */
async function merge(bows, found, dialog) {
  /** @type {KeptEntry[]} */
  const entries = found.entries.map((text) => ({ id: JSON.parse(text).id, text }));
  const head = await bows.ask("head", { entries: `[${found.entries.join(",")}]` });
  if (!head) return {};
  const ids = entries.map(({ id }) => id);
  const chosen = await bowFor(bows, head, dialog, ids);
  if (!chosen) return {};
  return alone(async () => {
    const bow = (await bows.store.bowOf(ids)) ?? chosen; // another tab may have taken it in meanwhile
    return { bow, sentence: `${head.title}: ${await addTo(bows, bow, entries, head, found)}` };
  });
}

/**
 * One file at a time, whatever the tabs: taken in twice at once it would be two bows.
 * @template Outcome
 * @param {() => Promise<Outcome>} work
 */
function alone(work) {
  return navigator.locks ? navigator.locks.request("rebrace-take-in", work) : work();
}

/**
 * Add the entries of a file to a bow; resolves to what that came to, in words.
 * @param {Bows} bows
 * @param {string} bow
 * @param {KeptEntry[]} entries
 * @param {Summary} head
 * @param {FoundBow} found
 */
async function addTo(bows, bow, entries, head, found) {
  try {
    const isKnown = Boolean(await bows.store.head(bow));
    const added = await bows.store.add(bow, entries, isKnown ? {} : head);
    const renewed = isKnown && (await bows.ask("head", { entries: await bows.store.record(bow) }));
    if (renewed) await bows.store.putHead(bow, renewed);
    return report(added, found);
  } catch {
    return NOT_KEPT;
  }
}

/**
 * The id of the bow that holds one of these entries, else one of its own; asks where a bow here has the same tag.
 * @param {Bows} bows
 * @param {Summary} head
 * @param {HTMLDialogElement} dialog
 * @param {string[]} ids
 */
async function bowFor(bows, { tag, title }, dialog, ids) {
  const heads = await bows.store.bows(); // first: another tab that takes it in meanwhile is no namesake
  const known = await bows.store.bowOf(ids);
  if (known) return known;
  const own = [...ids].sort()[0];
  const other = tag && heads.find((each) => each.tag === tag);
  if (!other) return own;
  partOf(dialog, "p", HTMLElement).textContent = `Here: ${other.title}. In the file: ${title}.`;
  dialog.returnValue = "neither";
  dialog.showModal();
  const chosen = await answerOf(dialog);
  if (chosen === "other") return own;
  return chosen === "same" ? other.id : null;
}

/**
 * Which of a dialog's deeds the reader chose.
 * @param {HTMLDialogElement} dialog
 * @returns {Promise<string>}
 */
export function answerOf(dialog) {
  return new Promise((resolve) => {
    dialog.onclick = (event) => {
      const source = sourceOf(event);
      if (source instanceof HTMLElement && source.dataset.do) dialog.close(source.dataset.do);
    };
    dialog.onclose = () => resolve(dialog.returnValue);
  });
}

/**
 * @param {number} added
 * @param {FoundBow} found
 */
function report(added, { entries, missing, unread, newer }) {
  const parts = [`Took in ${added} of ${entries.length} entries; the others were here already.`];
  if (added === entries.length) parts[0] = `Took in ${added} ${added === 1 ? "entry" : "entries"}.`;
  if (newer) parts.push(NEWER);
  if (missing) parts.push(`The file was cut off: ${missing} more are missing.`);
  if (unread.length) parts.push(`${unread.length} could not be read: ${unread.map(({ problem }) => problem).join("; ")}.`);
  return parts.join(" ");
}
