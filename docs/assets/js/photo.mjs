// The photographs on a bow's page: taken or chosen, tied to an entry, shown beside it and in a row, opened large.
// What is said of each comes from Python; the pictures come from the store.

import { download } from "./exchange.mjs";
import { node } from "./elements.mjs";
import { fillForm, readForm } from "./form.mjs";
import { NOT_KEPT, whyNotKept } from "./not-kept.mjs";
import { partOf, partsOf, sourceOf } from "./parts.mjs";
import { counted, fileOf, isWhole, keepPicture, preview, putBack, UNREADABLE } from "./picture.mjs";
import { momentOf } from "./sheets.mjs";
import { now } from "./store.mjs";

/** @import { Bows } from "./bows.mjs" */
/** @import { Album, KeptPhoto, ToldPhoto } from "./record.d.ts" */
/** @import { Pair } from "./types.d.ts" */

const PUT_RIGHT = "put right";
const WORDS = {
  none: "Choose a picture first.",
  missing: "This picture is not on this device. Put it in from its file, or take the bow's file in again.",
  damaged: "This picture is damaged: it is no longer what was kept. Put it in from its file, or take the bow's file in again.",
  other: "That is another picture. Nothing was changed.",
  removed: "The picture is removed.",
  right: "Put right.",
  begun: "The work has begun. A picture taken now does not show how the bow came.",
};

export class PhotoAlbum {
  #bows;
  #section;
  #taking;
  #large;
  /** @type {Map<string, KeptPhoto>} */
  #kept = new Map();
  /** @type {Set<string>} */
  #sound = new Set(); // pictures that were found whole, which is not asked again with each entry
  /** @type {string[]} */
  #addresses = []; // of what is shown
  /** @type {Blob | null} */
  #picked = null;
  /** @type {ToldPhoto | null} */
  #righted = null; // whose words are put right
  /** @type {ToldPhoto | null} */
  #opened = null;
  #saving = false; // one press, one picture
  #turn = 0;

  /**
   * @param {Bows} bows
   * @param {HTMLElement} section
   */
  constructor(bows, section) {
    this.#bows = bows;
    this.#section = section;
    this.#taking = partOf(section, "dialog.rb-photo", HTMLDialogElement);
    this.#large = partOf(section, "dialog.rb-photo-large", HTMLDialogElement);
    section.addEventListener("click", (event) => this.#click(sourceOf(event)));
    this.#equipTaking();
    this.#equipLarge();
  }

  /** Its page has gone: hold no picture any more. */
  end() {
    this.#letGo();
  }

  // Showing --------------------------------------------------------------------

  /** Draw the photographs of the bow whose page is open. */
  async show() {
    const { album, bow } = this.#bows;
    this.#turn += 1;
    const turn = this.#turn;
    if (!album || !bow) return;
    const kept = await this.#bows.store.photos(bow).catch(() => []); // a store that is gone has been told of
    if (turn !== this.#turn) return;
    this.#kept = new Map(kept.map((photo) => [photo.id, photo]));
    this.#letGo();
    const standing = album.photos.filter(({ counts }) => counts);
    this.#part(".rb-photo-count").textContent = kept.length ? `${counted(kept)}.` : "There is no photo yet.";
    this.#part(".rb-photo-row").replaceChildren(...standing.map((photo) => node("li", {}, this.#thumb(photo))));
    this.#showIntake(album);
    this.#showInTimeline(album);
    await this.#markDamaged(kept, turn);
  }

  /** @param {ToldPhoto} photo */
  #thumb({ id, file, caption }) {
    const thumb = this.#kept.get(file)?.thumb;
    const shown = thumb ? node("img", { src: this.#addressOf(thumb), alt: "" }) : this.#kept.has(file) ? "Damaged" : "Not here";
    return node("button", { type: "button", class: "rb-photo-thumb", "data-photo": id, "data-file": file,
      "aria-label": `Photo: ${caption}` }, shown);
  }

  /** @param {Album} album */
  #showIntake({ intake, photos, begun }) {
    const taken = intake.filter(({ photo }) => photo).length;
    this.#part(".rb-photo-intake summary").textContent = `Photos of the bow as it came: ${taken} of ${intake.length}`;
    this.#part(".rb-photo-begun").textContent = begun && taken < intake.length ? WORDS.begun : "";
    this.#part(".rb-photo-intake ol").replaceChildren(...intake.map(({ id, label, photo }) => {
      const found = photos.find((each) => each.id === photo);
      if (found) return node("li", { "data-taken": "" }, `${label}: taken `, this.#thumb(found));
      return node("li", {}, `${label} `, node("button", { type: "button", "data-shows": id, "aria-label": `Take: ${label}` }, "Take"));
    }));
  }

  /**
   * Beside each entry its photographs, and a way to another; a photograph that stands there has no line of its own.
   * @param {Album} album
   */
  #showInTimeline({ photos, ties }) {
    const tied = new Set(ties.map(({ id }) => id));
    for (const line of partsOf(this.#section, ".rb-timeline > li[data-entry]", HTMLLIElement)) {
      const { entry = "" } = line.dataset;
      const own = photos.filter(({ id, beside, counts }) => (beside === entry && counts) || id === entry);
      const isElsewhere = own.some(({ id, beside, counts }) => id === entry && counts && beside);
      line.hidden = isElsewhere;
      if (isElsewhere) continue;
      if (own.length) line.append(node("div", { class: "rb-photo-beside" }, ...own.map((photo) => this.#thumb(photo))));
      if (!tied.has(entry)) continue;
      const of = `Photo of it: ${line.querySelector("p")?.textContent ?? ""}`;
      line.append(node("button", { type: "button", "data-photo-of": entry, "aria-label": of }, "Photo of it"));
    }
  }

  /**
   * @param {KeptPhoto[]} kept
   * @param {number} turn
   */
  async #markDamaged(kept, turn) {
    for (const photo of kept) {
      if (this.#sound.has(photo.id)) continue;
      if (await isWhole(photo)) {
        this.#sound.add(photo.id);
        continue;
      }
      if (turn !== this.#turn) return;
      const shown = partsOf(this.#section, `[data-file="${photo.id}"]`, HTMLElement);
      for (const each of shown) each.replaceChildren("Damaged");
    }
  }

  /** @param {Blob} blob */
  #addressOf(blob) {
    const address = URL.createObjectURL(blob);
    this.#addresses.push(address);
    return address;
  }

  #letGo() {
    this.#addresses.forEach((address) => URL.revokeObjectURL(address));
    this.#addresses = [];
  }

  /** @param {Element | null} source */
  #click(source) {
    const button = source?.closest("button");
    const { photo, photoOf, shows } = button?.dataset ?? {};
    if (photo) this.#openLarge(photo);
    else if (photoOf) this.open([["entry", photoOf]]);
    else if (shows) this.open([["shows", shows]]);
  }

  /**
   * Put the photographs that were chosen for the record sheet on it; resolves once they can be printed.
   * @param {Element} place
   */
  async putOnSheet(place) {
    const { album, store } = this.#bows;
    for (const photo of album?.photos.filter(({ id }) => album.sheet.includes(id)) ?? []) {
      const kept = await store.photo(photo.file);
      if (!kept || !(await isWhole(kept))) continue;
      const image = node("img", { src: this.#addressOf(kept.blob), alt: photo.caption });
      place.append(node("figure", { class: "rb-paper-photo" }, image, node("figcaption", {}, photo.caption)));
      await image.decode();
    }
  }

  // Taking one -----------------------------------------------------------------

  /**
   * Open the form of a photograph, with what is known of it already.
   * @param {Pair[]} facts
   * @param {ToldPhoto | null} righted whose words are put right; its picture stays
   */
  async open(facts = [], righted = null) {
    const { album } = this.#bows;
    if (!album) return;
    const form = partOf(this.#taking, "form", HTMLFormElement);
    form.reset();
    this.#picked = null;
    this.#righted = righted;
    this.#showPicked(null);
    this.#say("");
    const known = new Map(facts);
    const entry = this.#box("entry", HTMLSelectElement);
    entry.replaceChildren(new Option("Nothing written down", ""), ...album.ties.map(({ id, words }) => new Option(words, id)));
    entry.value = known.get("entry") ?? "";
    fillForm(form, facts.filter(([name]) => name !== "entry"));
    this.#box("at", HTMLInputElement).value = (righted?.at ?? now()).slice(0, 16);
    this.#box("note", HTMLInputElement).value = righted?.note ?? "";
    for (const part of partsOf(this.#taking, ".rb-photo-pick", HTMLElement)) part.hidden = righted !== null;
    this.#proposeFine();
    this.#proposeNext();
    if (!this.#taking.open) this.#taking.showModal();
  }

  #equipTaking() {
    const form = partOf(this.#taking, "form", HTMLFormElement);
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.#save(event.submitter?.dataset.do === "save-and-next");
    });
    form.addEventListener("change", ({ target }) => {
      if (target instanceof HTMLInputElement && target.type === "file") this.#pick(target);
      else if (target instanceof HTMLSelectElement) {
        this.#proposeFine();
        this.#proposeNext();
      }
    });
    partOf(form, '[data-do="close"]', HTMLButtonElement).addEventListener("click", () => this.#taking.close());
  }

  /** @param {HTMLInputElement} input */
  async #pick(input) {
    const file = input.files?.[0] ?? null;
    input.value = "";
    if (!file) return;
    const shown = await preview(file);
    this.#picked = shown && file;
    this.#showPicked(shown);
    this.#say(shown ? "" : UNREADABLE);
  }

  /** @param {Blob | null} shown */
  #showPicked(shown) {
    const place = partOf(this.#taking, ".rb-photo-picked", HTMLElement);
    place.replaceChildren(...(shown ? [node("img", { src: this.#addressOf(shown), alt: "The picture to be kept" })] : []));
  }

  /** What is small is kept finer, unless the reader says otherwise. */
  #proposeFine() {
    const [shows, entry] = [this.#box("shows", HTMLSelectElement).value, this.#box("entry", HTMLSelectElement).value];
    const { intake = [], ties = [] } = this.#bows.album ?? {};
    this.#box("fine", HTMLInputElement).checked = [...intake.filter(({ id }) => id === shows), ...ties.filter(({ id }) => id === entry)]
      .some(({ fine }) => fine);
  }

  /** The next picture of the intake that is missing once this one is there; or undefined. */
  #next() {
    const shows = this.#box("shows", HTMLSelectElement).value;
    const { intake = [] } = this.#bows.album ?? {};
    const from = intake.findIndex(({ id }) => id === shows);
    const others = from < 0 ? [] : [...intake.slice(from + 1), ...intake.slice(0, from)];
    return others.find(({ photo }) => !photo);
  }

  #proposeNext() {
    const next = this.#righted ? undefined : this.#next();
    const button = partOf(this.#taking, '[data-do="save-and-next"]', HTMLButtonElement);
    button.hidden = !next;
    button.textContent = next ? `Save, then: ${next.label}` : "";
  }

  /** @param {boolean} goesOn */
  async #save(goesOn) {
    const next = goesOn ? this.#next() : undefined;
    const bow = this.#bows.bow;
    if (!bow || this.#saving) return;
    const at = momentOf(this.#box("at", HTMLInputElement).value);
    const note = this.#box("note", HTMLInputElement).value;
    this.#saving = true;
    const saved = this.#righted ? this.#putRight(bow, this.#righted, at, note) : this.#keep(bow, at, note);
    const refusal = await saved.finally(() => { this.#saving = false; });
    this.#say(refusal);
    if (refusal) return;
    if (!next) this.#taking.close();
    await this.#bows.show();
    if (next && this.#taking.open) await this.open([["shows", next.id]]);
  }

  /** What is typed, by the names of its facts. */
  #facts() {
    const pairs = readForm(partOf(this.#taking, "form", HTMLFormElement), { all: true }).filter(([name]) => name !== "units");
    return [...pairs, /** @type {Pair} */ (["entry", this.#box("entry", HTMLSelectElement).value])].filter(([, text]) => text);
  }

  /**
   * Keep the picture that was picked; resolves to why not, or to nothing.
   * @param {string} bow
   * @param {string} at
   * @param {string} note
   */
  async #keep(bow, at, note) {
    if (!this.#picked) return WORDS.none;
    const fine = this.#box("fine", HTMLInputElement).checked;
    const { entry, refused, unkept, said } = await keepPicture(this.#bows, bow, this.#picked, this.#facts(), { fine, at, note });
    if (refused || !entry) return refused ?? NOT_KEPT;
    if (unkept) this.#offer(said ?? "", unkept);
    else this.#bows.toast(`Saved ${at.slice(11, 16)}.`, () => this.#bows.strike(bow, entry));
    return "";
  }

  /**
   * Say above everything that a picture found no room, and hand it over.
   * @param {string} said
   * @param {File} picture
   */
  #offer(said, picture) {
    const button = node("button", { type: "button" }, "Save the picture");
    button.addEventListener("click", () => download(picture));
    this.#bows.notice(said, false);
    this.#part(".rb-bows-notice").append(" ", button);
  }

  /**
   * Other words in place of a photograph's own; its picture stays what it is.
   * @param {string} bow
   * @param {ToldPhoto} photo
   * @param {string} at
   * @param {string} note
   */
  async #putRight(bow, { id, file, sum }, at, note) {
    /** @type {Pair[]} */
    const facts = [...this.#facts(), ["file", file], ...(sum ? [/** @type {Pair} */ (["sum", sum])] : [])];
    const { entry, errors } = await this.#bows.add("photo", facts, { at, note, bow });
    if (!entry) return errors[0]?.message ?? NOT_KEPT;
    const struck = await this.#bows.strike(bow, id, PUT_RIGHT);
    this.#bows.toast(WORDS.right, async () => {
      await this.#bows.strike(bow, entry);
      if (struck) await this.#bows.strike(bow, struck);
    });
    return "";
  }

  /** @param {string} sentence */
  #say(sentence) {
    const box = partOf(this.#taking, ".rb-problems", HTMLElement);
    box.hidden = !sentence;
    box.textContent = sentence;
    if (sentence) box.focus();
  }

  /**
   * @template {HTMLElement} Kind
   * @param {string} name
   * @param {new () => Kind} kind
   */
  #box(name, kind) {
    return partOf(this.#taking, `[name="${name}"]`, kind);
  }

  // One, large -----------------------------------------------------------------

  /** @param {string} id */
  async #openLarge(id) {
    const photo = this.#bows.album?.photos.find((each) => each.id === id);
    if (!photo) return;
    this.#opened = photo;
    await this.#showLarge(photo);
    if (!this.#large.open) this.#large.showModal();
  }

  /** @param {ToldPhoto} photo */
  async #showLarge(photo) {
    const kept = await this.#bows.store.photo(photo.file).catch(() => undefined);
    const isSound = kept ? await isWhole(kept) : false;
    const shown = kept?.thumb ? [node("img", { src: this.#addressOf(kept.blob), alt: photo.caption })] : [];
    partOf(this.#large, "figure", HTMLElement).replaceChildren(...shown, node("figcaption", {}, photo.caption));
    this.#tellLarge(isSound ? "" : kept ? WORDS.damaged : WORDS.missing);
    partOf(this.#large, ".rb-bows-take", HTMLElement).hidden = isSound;
    this.#deed("save-picture").hidden = !kept;
    for (const name of ["put-right", "strike-photo", "remove-picture"]) this.#deed(name).hidden = !photo.counts;
  }

  /** @param {string} sentence */
  #tellLarge(sentence) {
    partOf(this.#large, ".rb-photo-told", HTMLElement).textContent = sentence;
  }

  /** @param {string} name */
  #deed(name) {
    return partOf(this.#large, `[data-do="${name}"]`, HTMLButtonElement);
  }

  #equipLarge() {
    /** @type {Record<string, (photo: ToldPhoto, bow: string) => Promise<unknown>>} */
    const does = {
      "put-right": async (photo) => this.open(photo.facts, photo),
      "strike-photo": (photo, bow) => this.#bows.strike(bow, photo.id),
      "remove-picture": (photo, bow) => this.#remove(photo, bow),
    };
    for (const [name, deed] of Object.entries(does)) {
      this.#deed(name).addEventListener("click", async () => {
        this.#large.close();
        if (this.#opened && this.#bows.bow) await deed(this.#opened, this.#bows.bow);
      });
    }
    this.#deed("save-picture").addEventListener("click", () => this.#hand());
    this.#deed("close").addEventListener("click", () => this.#large.close());
    const input = partOf(this.#large, 'input[type="file"]', HTMLInputElement);
    input.addEventListener("change", () => this.#putIn(input));
  }

  async #hand() {
    const kept = this.#opened && (await this.#bows.store.photo(this.#opened.file));
    if (kept) download(fileOf(kept.blob, kept.id));
  }

  /** @param {HTMLInputElement} input */
  async #putIn(input) {
    const file = input.files?.[0];
    input.value = "";
    if (!file || !this.#opened || !this.#bows.bow) return;
    try {
      const isOne = await putBack(this.#bows.store, this.#bows.bow, this.#opened, file);
      if (isOne) await this.#showLarge(this.#opened);
      else this.#tellLarge(WORDS.other);
    } catch (error) {
      this.#tellLarge(whyNotKept(this.#bows.store, error));
    }
    await this.#bows.show();
  }

  /**
   * Remove a picture with all its bytes; while the page is open it can be brought back.
   * @param {ToldPhoto} photo
   * @param {string} bow
   */
  async #remove({ id, file }, bow) {
    const { album, store } = this.#bows;
    const kept = await store.photo(file);
    const struck = await this.#bows.strike(bow, id, album?.removed);
    if (!struck) return;
    const isShared = album?.photos.some((each) => each.file === file && each.id !== id && each.counts);
    if (kept && !isShared) await store.dropPhoto(kept);
    this.#bows.toast(WORDS.removed, async () => {
      if (kept) await store.putPhoto(kept);
      await this.#bows.strike(bow, struck);
    });
    await this.#bows.show();
  }

  /** @param {string} selector */
  #part(selector) {
    return partOf(this.#section, selector, HTMLElement);
  }
}
