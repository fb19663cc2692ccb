// Bows as files: handed to the share sheet or saved, and taken in. A file is hostile: Python reads it as text,
// and nothing in it is ever shown as anything but text.

const LONGEST_BYTES = 64 * 1024 * 1024;
const TYPE_OF_BOW = "text/html";
const RELEASE_MS = 60_000;
const NOT_KEPT = "This browser did not keep the file's entries. Nothing that was there is changed.";
const NEWER = "The file is from a later release than this page; what this page does not know is kept as it came.";

/** Hand a file to the share sheet where there is one, else save it; resolves to whether it left. */
export async function saveFile({ page, name }) {
  const file = new File([page], name, { type: TYPE_OF_BOW });
  if (navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file] });
      return true;
    } catch (error) {
      if (error?.name === "AbortError") return false;
    }
  }
  download(file);
  return true;
}

export async function openCsv(made) {
  if (made?.text) download(new File([made.text], "readings.csv", { type: "text/csv" }));
}

function download(file) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(file);
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), RELEASE_MS);
}

/** Take a file in; resolves to the id of its (last) bow, or null where nothing was taken in and that was said. */
export async function openFile(bows, file, dialog) {
  if (!file) return null;
  if (file.size > LONGEST_BYTES) {
    bows.notice("This file is larger than 64 MB, so it is no bow's file. Nothing was taken from it.");
    return null;
  }
  const found = await bows.ask("bows", { text: await file.text() });
  if (!found) return null;
  const held = (found.bows ?? []).filter(({ entries }) => entries.length);
  if (!held.length) {
    bows.notice(`${found.refused ?? "The file holds no entry that can be read."} Nothing was taken from it.`);
    return null;
  }
  return mergeAll(bows, held, found.missing, dialog);
}

async function mergeAll(bows, held, missing, dialog) {
  const said = [];
  let taken = null;
  for (const each of held) {
    const { bow, sentence } = await merge(bows, each, dialog);
    taken = bow ?? taken;
    said.push(sentence);
  }
  if (missing) said.push(`The file was cut off: ${missing} more ${missing === 1 ? "bow is" : "bows are"} missing.`);
  bows.notice(said.filter(Boolean).join(" "));
  return taken;
}

async function merge(bows, found, dialog) {
  const entries = found.entries.map((text) => ({ id: JSON.parse(text).id, text }));
  const head = await bows.ask("head", { entries: `[${found.entries.join(",")}]` });
  if (!head) return {};
  const ids = entries.map(({ id }) => id);
  const chosen = (await bows.store.bowOf(ids)) ?? (await namesake(bows, head, dialog, entries));
  if (!chosen) return {};
  return alone(async () => {
    const bow = (await bows.store.bowOf(ids)) ?? chosen; // another tab may have taken it in meanwhile
    return { bow, sentence: `${head.title}: ${await addTo(bows, bow, entries, head, found)}` };
  });
}

/** One file at a time, whatever the tabs: taken in twice at once it would be two bows. */
function alone(work) {
  return navigator.locks ? navigator.locks.request("rebrace-take-in", work) : work();
}

/** Add the entries of a file to a bow; resolves to what that came to, in words. */
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

/** The id for a bow that shares no entry with those here; asks where one of them has the same tag. */
async function namesake(bows, { tag, title }, dialog, entries) {
  const own = entries.map(({ id }) => id).sort()[0];
  const other = tag && (await bows.store.bows()).find((each) => each.tag === tag);
  if (!other) return own;
  dialog.querySelector("p").textContent = `Here: ${other.title}. In the file: ${title}.`;
  dialog.returnValue = "neither";
  dialog.showModal();
  return { other: own, same: other.id }[await answerOf(dialog)] ?? null;
}

/** Which of a dialog's deeds the reader chose. */
export function answerOf(dialog) {
  return new Promise((resolve) => {
    dialog.onclick = ({ target }) => target.dataset.do && dialog.close(target.dataset.do);
    dialog.onclose = () => resolve(dialog.returnValue);
  });
}

function report(added, { entries, missing, unread, newer }) {
  const parts = [`Took in ${added} of ${entries.length} entries; the others were here already.`];
  if (added === entries.length) parts[0] = `Took in ${added} ${added === 1 ? "entry" : "entries"}.`;
  if (newer) parts.push(NEWER);
  if (missing) parts.push(`The file was cut off: ${missing} more are missing.`);
  if (unread.length) parts.push(`${unread.length} could not be read: ${unread.map(({ problem }) => problem).join("; ")}.`);
  return parts.join(" ");
}
