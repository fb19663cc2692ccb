// Where this browser keeps bows: IndexedDB, one row an entry, only ever added to, so that two tabs cannot
// overwrite each other. Where storage is refused, the page's own memory stands in and says so.
// An entry is a text (JSON as Python wrote it) with what it takes to find it; nothing here reads it.

import { openDB } from "idb";

const NAME = "rebrace";
const LAYOUT = 1;
const BIN_DAYS = 30;
const DAY_MS = 86_400_000;
const LETTERS = "0123456789abcdefghjkmnpqrstvwxyz";
const TIME_LETTERS = 10;
const CHANCE_LETTERS = 4;

let forgetful = null; // one for the whole visit, however many pages of it come and go

/**
 * Opens the store; resolves to one that keeps, to one that forgets where the browser refuses, or, where a later
 * release has been here before this page, to one that only reads.
 * onChange gets the id of a bow that another tab changed; onEnd whether the store was cleared (else: is to be renewed).
 */
export async function openStore({ onChange = () => {}, onEnd = () => {} } = {}) {
  const channel = "BroadcastChannel" in self ? new BroadcastChannel(NAME) : null;
  channel?.addEventListener("message", ({ data }) => onChange(String(data)));
  try {
    return new Store(await openDatabase(onEnd), channel);
  } catch (error) {
    channel?.close();
    if (error?.name === "VersionError") return new Outdated(await openDB(NAME), null);
    return (forgetful ??= new Forgetful());
  }
}

function openDatabase(onEnd) {
  return openDB(NAME, LAYOUT, {
    upgrade(database) {
      database.createObjectStore("bows", { keyPath: "id" });
      database.createObjectStore("entries", { keyPath: "id" }).createIndex("bow", ["bow", "id"]);
      database.createObjectStore("drafts", { keyPath: "id" });
      database.createObjectStore("bin", { keyPath: "id" });
      database.createObjectStore("meta", { keyPath: "name" });
    },
    blocking(_current, wanted, event) {
      event.target.close(); // a newer release waits, or somebody clears it: this page writes no more
      onEnd(wanted === null);
    },
    terminated: () => onEnd(true),
  });
}

function rowsOf(bow) {
  return IDBKeyRange.bound([bow, ""], [bow, "~"]);
}

class Store {
  #database;
  #channel;
  forgets = false;
  isOutdated = false;

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

  async head(bow) {
    return this.#database.get("bows", bow);
  }

  /** The entries of a bow as one JSON list, as Python reads it. */
  async record(bow) {
    const rows = await this.#database.getAllFromIndex("entries", "bow", rowsOf(bow));
    return `[${rows.map(({ text }) => text).join(",\n")}]`;
  }

  /**
   * Add entries (texts with their ids) to a bow in one go; those that are there already stay as they are.
   * What the head does not say, that of a bow which is here already goes on saying.
   */
  async add(bow, entries, head) {
    const transaction = this.#database.transaction(["entries", "bows"], "readwrite");
    const rows = transaction.objectStore("entries");
    let added = 0;
    for (const { id, text } of entries) {
      if (await rows.get(id)) continue;
      await rows.add({ id, bow, text });
      added += 1;
    }
    const heads = transaction.objectStore("bows");
    if (head) await heads.put({ begun: Date.now(), ...(await heads.get(bow)), ...head, id: bow, changed: Date.now() });
    await transaction.done;
    this.#tell(bow);
    return added;
  }

  /** Write anew some of what the list shows of a bow. */
  async putHead(bow, head) {
    const transaction = this.#database.transaction("bows", "readwrite");
    await transaction.store.put({ ...(await transaction.store.get(bow)), ...head, id: bow });
    await transaction.done;
  }

  /** How many entries a bow has: a head that says otherwise was written by a tab that knew less. */
  async count(bow) {
    return this.#database.countFromIndex("entries", "bow", rowsOf(bow));
  }

  /** The bow that holds any of these entries, or null. */
  async bowOf(ids) {
    const transaction = this.#database.transaction("entries");
    for (const id of ids) {
      const row = await transaction.store.get(id);
      if (row) return row.bow;
    }
    return null;
  }

  /** Take a bow out of the list; for a month it can be brought back. */
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

  /** Bows that were taken out and can be brought back; those past their month are gone. */
  async bin() {
    const all = await this.#database.getAll("bin");
    const over = all.filter(({ until }) => until < Date.now());
    await Promise.all(over.map(({ id }) => this.#database.delete("bin", id)));
    return all.filter(({ until }) => until >= Date.now());
  }

  /** Take all bows out, those in the bin too, with all drafts: nothing of them is left. */
  async removeAll() {
    const names = ["entries", "bows", "bin", "drafts"];
    const transaction = this.#database.transaction(names, "readwrite");
    await Promise.all(names.map((name) => transaction.objectStore(name).clear()));
    await transaction.done;
    this.#tell("");
  }

  /** Entries that have come in under another bow meanwhile stay there. */
  async bringBack(bow) {
    const transaction = this.#database.transaction(["entries", "bows", "bin"], "readwrite");
    const kept = await transaction.objectStore("bin").get(bow);
    const rows = transaction.objectStore("entries");
    let brought = 0;
    for (const { id, text } of kept?.entries ?? []) {
      if (await rows.get(id)) continue;
      await rows.add({ id, bow, text });
      brought += 1;
    }
    if (brought) await transaction.objectStore("bows").put({ ...kept.head, id: bow, changed: Date.now() });
    await transaction.objectStore("bin").delete(bow);
    await transaction.done;
    this.#tell(bow);
  }

  async draft(id) {
    return (await this.#database.get("drafts", id))?.pairs ?? null;
  }

  async keepDraft(id, pairs) {
    await this.#database.put("drafts", { id, pairs });
  }

  async dropDraft(id) {
    await this.#database.delete("drafts", id);
  }

  async recall(name) {
    return (await this.#database.get("meta", name))?.value ?? null;
  }

  async remember(name, value) {
    await this.#database.put("meta", { name, value });
  }

  #tell(bow) {
    this.#channel?.postMessage(bow);
  }
}

/** What a later release keeps is read and never written. */
class Outdated extends Store {
  isOutdated = true;

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
  keepDraft = this.add;
  dropDraft = this.add;
  remember = this.add;
}

/** The same where a browser keeps nothing: all of it lives as long as the visit. */
class Forgetful {
  #heads = new Map();
  #entries = new Map(); // bow to Map of id to text
  #drafts = new Map();
  #bin = new Map();
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

  async head(bow) {
    return this.#heads.get(bow);
  }

  async record(bow) {
    const texts = [...(this.#entries.get(bow) ?? new Map())].sort(([one], [other]) => (one < other ? -1 : 1));
    return `[${texts.map(([, text]) => text).join(",\n")}]`;
  }

  async add(bow, entries, head) {
    const there = this.#entries.get(bow) ?? new Map();
    const fresh = entries.filter(({ id }) => !there.has(id));
    fresh.forEach(({ id, text }) => there.set(id, text));
    this.#entries.set(bow, there);
    if (head) await this.putHead(bow, { begun: Date.now(), ...this.#heads.get(bow), ...head });
    return fresh.length;
  }

  async putHead(bow, head) {
    this.#heads.set(bow, { ...this.#heads.get(bow), ...head, id: bow, changed: Date.now() });
  }

  async count(bow) {
    return this.#entries.get(bow)?.size ?? 0;
  }

  async bowOf(ids) {
    for (const [bow, texts] of this.#entries) if (ids.some((id) => texts.has(id))) return bow;
    return null;
  }

  async remove(bow) {
    this.#bin.set(bow, { id: bow, head: this.#heads.get(bow), entries: this.#entries.get(bow) });
    this.#heads.delete(bow);
    this.#entries.delete(bow);
  }

  async bin() {
    return [...this.#bin.values()];
  }

  async removeAll() {
    for (const each of [this.#heads, this.#entries, this.#bin, this.#drafts]) each.clear();
  }

  async bringBack(bow) {
    const { head, entries } = this.#bin.get(bow);
    this.#entries.set(bow, entries);
    this.#heads.set(bow, head);
    this.#bin.delete(bow);
  }

  async draft(id) {
    return this.#drafts.get(id) ?? null;
  }

  async keepDraft(id, pairs) {
    this.#drafts.set(id, pairs);
  }

  async dropDraft(id) {
    this.#drafts.delete(id);
  }

  async recall(name) {
    return this.#meta.get(name) ?? null;
  }

  async remember(name, value) {
    this.#meta.set(name, value);
  }
}

/**
 * Write entries (texts with their ids) down, and leave it to the page of bows to work out what they change of a head:
 * one that does not know of all its bow's entries is out of date. Only a bow that is new here gets one first, from
 * askHead; resolves to whether there was one.
 */
export async function writeDown(store, bow, entries, askHead) {
  const isKnown = Boolean(await store.head(bow));
  const head = isKnown ? {} : await askHead({ entries: joined("[]", entries.map(({ text }) => text)) });
  if (!head) return false;
  await store.add(bow, entries, head);
  return true;
}

/** A JSON list with further texts behind its own. */
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
  const two = (number) => String(number).padStart(2, "0");
  const offset = -date.getTimezoneOffset();
  const [hours, minutes] = [Math.trunc(Math.abs(offset) / 60), Math.abs(offset) % 60];
  return (
    `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}T${two(date.getHours())}:` +
    `${two(date.getMinutes())}${offset < 0 ? "-" : "+"}${two(hours)}:${two(minutes)}`
  );
}
