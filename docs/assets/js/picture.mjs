// Pictures of a bow: made smaller, kept beside its record with the entry that tells of them, and carried by its file.
// What is kept is drawn anew, so that nothing else of a photograph comes with it: no place, no device, no name.

import { isBowId } from "./chosen.mjs";
import { HALTED, whyNotKept } from "./not-kept.mjs";
import { newId, now, writeDown } from "./store.mjs";

/** @import { Album, BowStore, KeptPhoto, Task, TaskAnswer } from "./record.d.ts" */
/** @import { Pair } from "./types.d.ts" */

/**
 * @typedef Bench where a record is at hand: the page of bows, or the bar of bows above a calculator
 * @property {BowStore} store
 * @property {<Name extends Task>(task: Name, more: object) => Promise<TaskAnswer<Name> | null>} ask
 */

const TYPE = "image/jpeg";
const LONGEST = 1600;
const LONGEST_FINE = 2400;
const LONGEST_THUMB = 320;
const QUALITY = 0.8;
const ADDRESS = `data:${TYPE};base64,`;
const PLACE = /(?<=<img data-photo="[0-9a-z]{14}" src=")picture:([0-9a-z]{14})(?=")/;
const PICTURE = /(<img data-photo="([0-9a-z]{14})" src=")(data:[^"]*)"/g;
const KB = 1000;
const MB = 1_000_000;
const NO_ROOM = "The entry is kept, but this browser had no room for its picture. Save the picture to a file.";
export const UNREADABLE = "This browser cannot read that picture. Nothing was changed; choose it as a JPEG or PNG file.";

// Bytes --------------------------------------------------------------------------

/**
 * A picture as a JPEG that is at most so long and wide; throws where the browser cannot read it.
 * @param {Blob} picture
 * @param {number} longest
 */
async function drawnAnew(picture, longest) {
  const bitmap = await createImageBitmap(picture, { imageOrientation: "from-image" });
  const scale = Math.min(1, longest / Math.max(bitmap.width, bitmap.height));
  const [width, height] = [bitmap.width, bitmap.height].map((side) => Math.max(1, Math.round(side * scale)));
  const canvas = new OffscreenCanvas(width, height);
  const pen = canvas.getContext("2d");
  if (!pen) throw new Error("the browser draws no picture");
  pen.imageSmoothingQuality = "high";
  pen.drawImage(bitmap, 0, 0, width, height);
  bitmap.close();
  return canvas.convertToBlob({ type: TYPE, quality: QUALITY });
}

/**
 * A small picture of a picture; null where the browser cannot read it.
 * @param {Blob} picture
 */
export function preview(picture) {
  return drawnAnew(picture, LONGEST_THUMB).catch(() => null);
}

/**
 * The SHA-256 of bytes in hexadecimal; empty on a page that may not ask for it, which did not come by https.
 * @param {Blob} picture
 */
async function sumOf(picture) {
  if (!crypto.subtle) return "";
  const sum = await crypto.subtle.digest("SHA-256", await picture.arrayBuffer());
  return [...new Uint8Array(sum)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/**
 * Whether a kept picture is one, and still what was kept.
 * @param {KeptPhoto} photo
 */
export async function isWhole({ blob, thumb, sum }) {
  const found = await sumOf(blob).catch(() => "none");
  return thumb !== null && (!found || !sum || found === sum);
}

/**
 * How many pictures there are and what room they take, in words.
 * @param {KeptPhoto[]} photos
 */
export function counted(photos) {
  const bytes = bytesOf(photos);
  const room = bytes < MB ? `${Math.ceil(bytes / KB)} kB` : `${(bytes / MB).toFixed(1)} MB`;
  return `${photosOf(photos.length)}, ${room}`;
}

/** @param {number} count */
function photosOf(count) {
  return `${count} ${count === 1 ? "photo" : "photos"}`;
}

/** @param {KeptPhoto[]} photos */
function bytesOf(photos) {
  return photos.reduce((sum, { size }) => sum + size, 0);
}

// Keeping ------------------------------------------------------------------------

/**
 * Keep a picture in a bow's record, tied to an entry: first the entry that tells of it, then the picture.
 * `refused` says why there is no entry; `unkept` is a picture that found no room beside its entry, to be saved to a
 * file, and `said` the sentence for it.
 * @param {Bench} bench
 * @param {string} bow
 * @param {Blob} source from a camera, a file or a canvas; what is kept of it is drawn anew
 * @param {Pair[]} facts of the sheet "photo": "what" in words, "entry" the id of the entry that it belongs to, ...
 * @param {{fine?: boolean, at?: string, note?: string}} [more] fine: what it shows is small; at: when it was so
 * @returns {Promise<{entry: string | null, refused?: string, unkept?: File, said?: string}>}
 */
export async function keepPicture(bench, bow, source, facts, { fine = false, at = now(), note = "" } = {}) {
  const blob = await drawnAnew(source, fine ? LONGEST_FINE : LONGEST).catch(() => null);
  if (!blob) return { entry: null, refused: UNREADABLE };
  const full = await whyFull(bench, bow, blob.size);
  if (full) return { entry: null, refused: full };
  const sum = await sumOf(blob);
  const [id, file] = [newId(), newId()];
  /** @type {Pair[]} */
  const pairs = [...facts, ["file", file], ...(sum ? [/** @type {Pair} */ (["sum", sum])] : [])];
  const taken = await bench.ask("take", { sheet: "photo", pairs, id, at, note });
  if (!taken?.entry) return { entry: null, refused: taken?.errors?.[0]?.message ?? HALTED };
  try {
    const isWritten = await writeDown(bench.store, bow, [{ id, text: taken.entry }], (rest) => bench.ask("head", rest));
    if (!isWritten) return { entry: null, refused: HALTED };
  } catch (error) {
    return { entry: null, refused: whyNotKept(bench.store, error) };
  }
  try {
    const thumb = await preview(blob);
    await bench.store.putPhoto({ id: file, bow, blob, thumb, type: blob.type, size: blob.size, sum });
    return { entry: id };
  } catch {
    return { entry: id, unkept: fileOf(blob, file), said: NO_ROOM };
  }
}

/**
 * Why a bow takes no further picture, in a sentence; empty where it does.
 * @param {Bench} bench
 * @param {string} bow
 * @param {number} size
 */
async function whyFull(bench, bow, size) {
  const album = await albumOf(bench, bow);
  if (!album) return HALTED;
  const kept = await bench.store.photos(bow);
  if (hasRoom(album, kept, size)) return "";
  return `This bow has ${counted(kept)}; a bow's file has room for ${album.most} photos and ${album.room / MB} MB. ` +
    "Remove one first.";
}

/**
 * Whether a bow may have another picture, so that its file can be read again.
 * @param {Album} album
 * @param {KeptPhoto[]} kept
 * @param {number} size
 */
function hasRoom({ most, room }, kept, size) {
  return kept.length < most && bytesOf(kept) + size <= room;
}

/**
 * @param {Bench} bench
 * @param {string} bow
 * @returns {Promise<Album | null>}
 */
async function albumOf(bench, bow) {
  const found = await bench.ask("photos", { entries: await bench.store.record(bow) });
  return found?.album ?? null;
}

/**
 * A picture as a file to be saved.
 * @param {Blob} blob
 * @param {string} id
 */
export function fileOf(blob, id) {
  return new File([blob], `photo-${id}.jpg`, { type: TYPE });
}

/**
 * Put a picture back that was kept elsewhere meanwhile; resolves to whether it is the one that its entry tells of.
 * @param {BowStore} store
 * @param {string} bow
 * @param {{file: string, sum: string}} told
 * @param {Blob} blob
 */
export async function putBack(store, bow, { file, sum }, blob) {
  const photo = { id: file, bow, blob: blob.slice(0, blob.size, TYPE), thumb: await preview(blob), type: TYPE, size: blob.size, sum };
  if (!(await isWhole(photo))) return false;
  await store.putPhoto(photo);
  return true;
}

// Files --------------------------------------------------------------------------

/**
 * A bow's file with its pictures, where Python left room for them.
 * @param {string} page
 * @param {KeptPhoto[]} photos
 * @returns {Promise<string[]>}
 */
export async function withPictures(page, photos) {
  const parts = page.split(PLACE); // every second one names a picture
  return Promise.all(parts.map(async (part, index) => {
    if (index % 2 === 0) return part;
    const photo = photos.find(({ id }) => id === part);
    return photo ? addressOf(photo.blob) : "";
  }));
}

/**
 * @param {Blob} blob
 * @returns {Promise<string>}
 */
function addressOf(blob) {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blob);
  });
}

/**
 * Take the pictures out of a file's text: Python reads the rest. Nothing of it is shown before it is a picture.
 * @param {string} text
 */
export function takenOut(text) {
  /** @type {Map<string, string>} */
  const pictures = new Map();
  const rest = text.replace(PICTURE, (_all, head, id, address) => {
    if (isBowId(id) && address.startsWith(ADDRESS)) pictures.set(id, address);
    return `${head}"`;
  });
  return { rest, pictures };
}

/**
 * Keep those pictures of a file that a bow's record tells of and that are not here yet; resolves to what that came to.
 * @param {Bench} bench
 * @param {string} bow
 * @param {Map<string, string>} pictures
 */
export async function takePictures(bench, bow, pictures) {
  const album = pictures.size ? await albumOf(bench, bow) : null;
  const done = { taken: 0, damaged: 0, unkept: 0 };
  const told = new Map(album?.photos.map(({ file, sum }) => [file, sum]));
  const kept = await bench.store.photos(bow);
  for (const [file, sum] of told) {
    const address = pictures.get(file);
    const known = await bench.store.photo(file);
    if (!address || (known && (known.bow !== bow || (await isWhole(known))))) continue;
    const blob = blobOf(address);
    const photo = { id: file, bow, blob, thumb: await preview(blob), type: TYPE, size: blob.size, sum };
    const isOne = await isWhole(photo);
    if (known && !isOne) continue;
    try {
      if (album && !known && !hasRoom(album, kept, blob.size)) throw new Error("a bow has no more pictures than that");
      await bench.store.putPhoto(photo);
      if (!known) kept.push(photo);
      done[isOne ? "taken" : "damaged"] += 1;
    } catch {
      done.unkept += 1;
    }
  }
  return [
    done.taken && `${photosOf(done.taken)} came with it.`,
    done.damaged && `${photosOf(done.damaged)} came damaged.`,
    done.unkept && `${photosOf(done.unkept)} found no room here, and can still be had from the file.`,
  ].filter(Boolean).join(" ");
}

/**
 * The bytes behind a `data:` address; none where it is damaged.
 * @param {string} address
 */
function blobOf(address) {
  try {
    const letters = atob(address.slice(ADDRESS.length));
    return new Blob([Uint8Array.from(letters, (letter) => letter.charCodeAt(0))], { type: TYPE });
  } catch {
    return new Blob([], { type: TYPE });
  }
}
