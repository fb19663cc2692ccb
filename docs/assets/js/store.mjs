// Where this browser keeps bows: IndexedDB, one row an entry, only ever added to, so that two tabs cannot
// overwrite each other. Where storage is refused, the page's own memory stands in and says so.
// An entry is a text (JSON as Python wrote it) with what it takes to find it; nothing here reads it.

import { openDB } from "idb";

/** @import { IDBPDatabase, IDBPObjectStore, StoreNames } from "idb" */
/** @import { Binned, BowStore, Head, KeptEntry, KeptPhoto, Layout, Summary } from "./record.d.ts" */
/** @import { Pair } from "./types.d.ts" */

const NAME = "rebrace";
const LAYOUT = 2;
const BIN_DAYS = 30;
const DAY_MS = 86_400_000;
const LETTERS = "0123456789abcdefghjkmnpqrstvwxyz";
const TIME_LETTERS = 10;
const CHANCE_LETTERS = 4;

/** @type {Forgetful | null} */
let forgetful = null; // one for the whole visit, however many pages of it come and go

/**
 * Opens the store; resolves to one that keeps, to one that forgets where the browser refuses, or, where a later
 * release has been here before this page, to one that only reads.
 * onChange gets the id of a bow that another tab changed; onEnd whether the store was cleared (else: is to be renewed).
 * @param {{onChange?: (bow: string) => void, onEnd?: (cleared: boolean) => void}} hear
 * @returns {Promise<Store | Forgetful>}
 */
export async function openStore({ onChange = () => {}, onEnd = () => {} } = {}) {
  const channel = "BroadcastChannel" in self ? new BroadcastChannel(NAME) : null;
  channel?.addEventListener("message", ({ data }) => onChange(String(data)));
  try {
    return new Store(await openDatabase(onEnd), channel);
  } catch (error) {
    channel?.close();
    if (error instanceof Error && error.name === "VersionError") return new Outdated(await openDB(NAME), null);
    return (forgetful ??= new Forgetful());
  }
}

/**
 * @param {(cleared: boolean) => void} onEnd
 * @returns {Promise<IDBPDatabase<Layout>>}
 */
function openDatabase(onEnd) {
  return openDB(NAME, LAYOUT, {
    upgrade(database, before) {
      if (before < 1) {
        database.createObjectStore("bows", { keyPath: "id" });
        database.createObjectStore("entries", { keyPath: "id" }).createIndex("bow", ["bow", "id"]);
        database.createObjectStore("drafts", { keyPath: "id" });
        database.createObjectStore("bin", { keyPath: "id" });
        database.createObjectStore("meta", { keyPath: "name" });
      }
      if (before < 2) database.createObjectStore("photos", { keyPath: "id" }).createIndex("bow", "bow");
    },
    blocking(_current, wanted, event) {
      const database = /** @type {IDBDatabase} */ (event.target);
      database.close(); // a newer release waits, or somebody clears it: this page writes no more
      onEnd(wanted === null);
    },
    terminated: () => onEnd(true),
  });
}

/** @param {string} bow */
function rowsOf(bow) {
  return IDBKeyRange.bound([bow, ""], [bow, "~"]);
}

class Store {
  #database;
  #channel;
  forgets = false;
  isOutdated = false;

  /**
   * @param {IDBPDatabase<Layout>} database
   * @param {BroadcastChannel | null} channel
   */
  constructor(database, channel) {
    this.#database = database;
    this.#channel = channel;
  }

  /** This page has gone: let the next one open it anew. */
  close() {
    this.#channel?.close();
    this.#database.close();
  }

  /** The heads of all bows: {id, title, weights, next, level, due, entries, changed}. */
  async bows() {
    return this.#database.getAll("bows");
  }

  /** @param {string} bow */
  async head(bow) {
    return this.#database.get("bows", bow);
  }

  /**
   * The entries of a bow as one JSON list, as Python reads it.
   * @param {string} bow
   */
  async record(bow) {
    const rows = await this.#database.getAllFromIndex("entries", "bow", rowsOf(bow));
    return `[${rows.map(({ text }) => text).join(",\n")}]`;
  }

  /**
   * Add entries (texts with their ids) to a bow in one go; those that are there already stay as they are.
   * What the head does not say, that of a bow which is here already goes on saying. With the entries goes the draft
   * that they were: a page that is killed offers nobody again what is written down.
   * @param {string} bow
   * @param {KeptEntry[]} entries
   * @param {Partial<Summary>} [head]
   * @param {string} [draft] its id
   */
  async add(bow, entries, head, draft) {
    const transaction = this.#database.transaction(["entries", "bows", "drafts"], "readwrite");
    const added = await addMissing(transaction.objectStore("entries"), bow, entries);
    const heads = transaction.objectStore("bows");
    if (head) await heads.put(headOf(bow, { begun: Date.now(), ...(await heads.get(bow)), ...head, changed: Date.now() }));
    if (draft) await transaction.objectStore("drafts").delete(draft);
    await transaction.done;
    this.#tell(bow);
    return added;
  }

  /**
   * Write anew some of what the list shows of a bow.
   * @param {string} bow
   * @param {Partial<Head>} head
   */
  async putHead(bow, head) {
    const transaction = this.#database.transaction("bows", "readwrite");
    await transaction.store.put(headOf(bow, { ...(await transaction.store.get(bow)), ...head }));
    await transaction.done;
  }

  /**
   * How many entries a bow has: a head that says otherwise was written by a tab that knew less.
   * @param {string} bow
   */
  async count(bow) {
    return this.#database.countFromIndex("entries", "bow", rowsOf(bow));
  }

  /**
   * The bow that holds any of these entries, or null.
   * @param {string[]} ids
   */
  async bowOf(ids) {
    const transaction = this.#database.transaction("entries");
    for (const id of ids) {
      const row = await transaction.store.get(id);
      if (row) return row.bow;
    }
    return null;
  }

  /**
   * Take a bow out of the list; for a month it can be brought back.
   * @param {string} bow
   */
  async remove(bow) {
    const transaction = this.#database.transaction(["entries", "bows", "bin"], "readwrite");
    const kept = await transaction.objectStore("entries").index("bow").getAll(rowsOf(bow));
    const entries = kept.map(({ id, text }) => ({ id, text }));
    const head = await transaction.objectStore("bows").get(bow);
    await transaction.objectStore("bin").put({ id: bow, head, entries, until: Date.now() + BIN_DAYS * DAY_MS });
    await transaction.objectStore("bows").delete(bow);
    const rows = transaction.objectStore("entries");
    for (const id of await rows.index("bow").getAllKeys(rowsOf(bow))) await rows.delete(id);
    await transaction.done;
    this.#tell(bow);
  }

  /** Bows that were taken out and can be brought back; those past their month are gone, with their pictures. */
  async bin() {
    const all = await this.#database.getAll("bin");
    const over = all.filter(({ until }) => until < Date.now());
    await Promise.all(over.map(({ id }) => this.#forget(id)));
    return all.filter(({ until }) => until >= Date.now());
  }

  /** @param {string} bow */
  async #forget(bow) {
    const transaction = this.#database.transaction(["bin", "bows", "photos"], "readwrite");
    const isBack = await transaction.objectStore("bows").get(bow); // taken in again from its file
    const pictures = transaction.objectStore("photos");
    if (!isBack) for (const id of await pictures.index("bow").getAllKeys(bow)) await pictures.delete(id);
    await transaction.objectStore("bin").delete(bow);
    await transaction.done;
  }

  /** Take all bows out, those in the bin too, with all drafts and pictures: nothing of them is left. */
  async removeAll() {
    /** @type {StoreNames<Layout>[]} */
    const names = ["entries", "bows", "bin", "drafts", "photos"];
    const transaction = this.#database.transaction(names, "readwrite");
    await Promise.all(names.map((name) => transaction.objectStore(name).clear()));
    await transaction.done;
    this.#tell("");
  }

  /**
   * Entries that have come in under another bow meanwhile stay there.
   * @param {string} bow
   */
  async bringBack(bow) {
    const transaction = this.#database.transaction(["entries", "bows", "bin"], "readwrite");
    const kept = await transaction.objectStore("bin").get(bow);
    const brought = await addMissing(transaction.objectStore("entries"), bow, kept?.entries ?? []);
    if (brought) await transaction.objectStore("bows").put(headOf(bow, { ...kept?.head, changed: Date.now() }));
    await transaction.objectStore("bin").delete(bow);
    await transaction.done;
    this.#tell(bow);
  }

  /**
   * The pictures of a bow, by their ids: in the order in which they were kept.
   * @param {string} bow
   */
  async photos(bow) {
    return this.#database.getAllFromIndex("photos", "bow", bow);
  }

  /** @param {string} id */
  async photo(id) {
    return this.#database.get("photos", id);
  }

  /** @param {KeptPhoto} photo */
  async putPhoto(photo) {
    await this.#database.put("photos", photo);
    this.#tell(photo.bow);
  }

  /**
   * Of a picture that is dropped nothing is left here.
   * @param {KeptPhoto} photo
   */
  async dropPhoto({ id, bow }) {
    await this.#database.delete("photos", id);
    this.#tell(bow);
  }

  /** @param {string} id */
  async draft(id) {
    return (await this.#database.get("drafts", id))?.pairs ?? null;
  }

  /**
   * @param {string} id
   * @param {Pair[]} pairs
   */
  async keepDraft(id, pairs) {
    await this.#atOnce((drafts) => drafts.put({ id, pairs }));
  }

  /** @param {string} id */
  async dropDraft(id) {
    await this.#atOnce((drafts) => drafts.delete(id));
  }

  /**
   * Write to the drafts and commit: a page that is killed right after a tap has given it away already.
   * @param {(drafts: IDBPObjectStore<Layout, ["drafts"], "drafts", "readwrite">) => void} write
   */
  async #atOnce(write) {
    const transaction = this.#database.transaction("drafts", "readwrite");
    write(transaction.store);
    transaction.commit();
    await transaction.done;
  }

  /** @param {string} name */
  async recall(name) {
    return (await this.#database.get("meta", name))?.value ?? null;
  }

  /**
   * @param {string} name
   * @param {boolean | null} value
   */
  async remember(name, value) {
    await this.#database.put("meta", { name, value });
  }

  /** @param {string} bow */
  #tell(bow) {
    this.#channel?.postMessage(bow);
  }
}

/**
 * Add those entries that are not there yet; resolves to how many.
 * @param {IDBPObjectStore<Layout, ArrayLike<StoreNames<Layout>>, "entries", "readwrite">} rows
 * @param {string} bow
 * @param {KeptEntry[]} entries
 */
async function addMissing(rows, bow, entries) {
  let added = 0;
  for (const { id, text } of entries) {
    if (await rows.get(id)) continue;
    await rows.add({ id, bow, text });
    added += 1;
  }
  return added;
}

/**
 * The head of a bow; the first that is told of one is whole.
 * @param {string} bow
 * @param {Partial<Head>} told
 */
function headOf(bow, told) {
  return /** @type {Head} */ ({ ...told, id: bow });
}

/** What a later release keeps is read and never written. */
class Outdated extends Store {
  isOutdated = true;

  /** @returns {Promise<never>} */
  async add() {
    throw new Error("a later release keeps these bows");
  }

  async bin() {
    return [];
  }

  putHead = this.add;
  remove = this.add;
  removeAll = this.add;
  bringBack = this.add;
  putPhoto = this.add;
  dropPhoto = this.add;
  keepDraft = this.add;
  dropDraft = this.add;
  remember = this.add;
}

/** The same where a browser keeps nothing: all of it lives as long as the visit. */
class Forgetful {
  /** @type {Map<string, Head>} */
  #heads = new Map();
  /** @type {Map<string, Map<string, string>>} */
  #entries = new Map(); // of each bow: id to text
  /** @type {Map<string, KeptPhoto>} */
  #photos = new Map();
  /** @type {Map<string, Pair[]>} */
  #drafts = new Map();
  /** @type {Map<string, Binned & {texts?: Map<string, string>}>} */
  #bin = new Map();
  /** @type {Map<string, boolean | null>} */
  #meta = new Map();
  forgets = true;
  isOutdated = false;

  constructor() {
    window.addEventListener("beforeunload", (event) => this.#entries.size && event.preventDefault());
  }

  close() {}

  async bows() {
    return [...this.#heads.values()];
  }

  /** @param {string} bow */
  async head(bow) {
    return this.#heads.get(bow);
  }

  /** @param {string} bow */
  async record(bow) {
    const texts = [...this.#textsOf(bow)].sort(([one], [other]) => (one < other ? -1 : 1));
    return `[${texts.map(([, text]) => text).join(",\n")}]`;
  }

  /**
   * @param {string} bow
   * @param {KeptEntry[]} entries
   * @param {Partial<Summary>} [head]
   * @param {string} [draft]
   */
  async add(bow, entries, head, draft) {
    const there = this.#textsOf(bow);
    const fresh = entries.filter(({ id }) => !there.has(id));
    fresh.forEach(({ id, text }) => there.set(id, text));
    this.#entries.set(bow, there);
    if (head) await this.putHead(bow, { begun: Date.now(), ...this.#heads.get(bow), ...head });
    if (draft) this.#drafts.delete(draft);
    return fresh.length;
  }

  /**
   * @param {string} bow
   * @param {Partial<Head>} head
   */
  async putHead(bow, head) {
    this.#heads.set(bow, headOf(bow, { ...this.#heads.get(bow), ...head, changed: Date.now() }));
  }

  /** @param {string} bow */
  async count(bow) {
    return this.#entries.get(bow)?.size ?? 0;
  }

  /** @param {string[]} ids */
  async bowOf(ids) {
    for (const [bow, texts] of this.#entries) if (ids.some((id) => texts.has(id))) return bow;
    return null;
  }

  /** @param {string} bow */
  async remove(bow) {
    this.#bin.set(bow, { id: bow, head: this.#heads.get(bow), texts: this.#entries.get(bow) });
    this.#heads.delete(bow);
    this.#entries.delete(bow);
  }

  async bin() {
    return [...this.#bin.values()];
  }

  async removeAll() {
    for (const each of [this.#heads, this.#entries, this.#bin, this.#drafts, this.#photos]) each.clear();
  }

  /** @param {string} bow */
  async bringBack(bow) {
    const { head, texts } = this.#bin.get(bow) ?? {};
    if (texts) this.#entries.set(bow, texts);
    if (head) this.#heads.set(bow, head);
    this.#bin.delete(bow);
  }

  /** @param {string} bow */
  async photos(bow) {
    return [...this.#photos.values()].filter((each) => each.bow === bow);
  }

  /** @param {string} id */
  async photo(id) {
    return this.#photos.get(id);
  }

  /** @param {KeptPhoto} photo */
  async putPhoto(photo) {
    this.#photos.set(photo.id, photo);
  }

  /** @param {KeptPhoto} photo */
  async dropPhoto({ id }) {
    this.#photos.delete(id);
  }

  /** @param {string} id */
  async draft(id) {
    return this.#drafts.get(id) ?? null;
  }

  /**
   * @param {string} id
   * @param {Pair[]} pairs
   */
  async keepDraft(id, pairs) {
    this.#drafts.set(id, pairs);
  }

  /** @param {string} id */
  async dropDraft(id) {
    this.#drafts.delete(id);
  }

  /** @param {string} name */
  async recall(name) {
    return this.#meta.get(name) ?? null;
  }

  /**
   * @param {string} name
   * @param {boolean | null} value
   */
  async remember(name, value) {
    this.#meta.set(name, value);
  }

  /**
   * @param {string} bow
   * @returns {Map<string, string>}
   */
  #textsOf(bow) {
    return this.#entries.get(bow) ?? new Map();
  }
}

/**
 * Write entries (texts with their ids) down, and leave it to the page of bows to work out what they change of a head:
 * one that does not know of all its bow's entries is out of date. Only a bow that is new here gets one first, from
 * askHead; resolves to whether there was one. draft: the id of the one that the entries were, which goes with them.
 * @param {BowStore} store
 * @param {string} bow
 * @param {KeptEntry[]} entries
 * @param {(more: {entries: string}) => Promise<Summary | null>} askHead
 * @param {string} [draft]
 */
export async function writeDown(store, bow, entries, askHead, draft) {
  const isKnown = Boolean(await store.head(bow));
  const head = isKnown ? {} : await askHead({ entries: joined("[]", entries.map(({ text }) => text)) });
  if (!head) return false;
  await store.add(bow, entries, head, draft);
  return true;
}

/**
 * A JSON list with further texts behind its own.
 * @param {string} list
 * @param {string[]} texts
 */
export function joined(list, texts) {
  const own = list.slice(1, -1);
  return `[${[...(own ? [own] : []), ...texts].join(",\n")}]`;
}

/** Ask the browser to keep what is stored; true, false, or null where it cannot be asked. */
export async function askToKeep() {
  try {
    return (await navigator.storage?.persist?.()) ?? null;
  } catch {
    return null;
  }
}

/** An id for an entry: it sorts by the time of making. As `calc.record.entries.entry_id` writes it. */
export function newId(now = Date.now()) {
  let time = now;
  let text = "";
  for (let place = 0; place < TIME_LETTERS; place += 1) {
    text = LETTERS[time % 32] + text;
    time = Math.floor(time / 32);
  }
  const chance = crypto.getRandomValues(new Uint8Array(CHANCE_LETTERS));
  return text + [...chance].map((byte) => LETTERS[byte % 32]).join("");
}

/** Now as an entry writes it: local time with its offset. */
export function now(date = new Date()) {
  const two = (/** @type {number} */ number) => String(number).padStart(2, "0");
  const offset = -date.getTimezoneOffset();
  const [hours, minutes] = [Math.trunc(Math.abs(offset) / 60), Math.abs(offset) % 60];
  return (
    `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}T${two(date.getHours())}:` +
    `${two(date.getMinutes())}${offset < 0 ? "-" : "+"}${two(hours)}:${two(minutes)}`
  );
}
