// The page of bows: the list, a bow's page, its entries and files. It carries texts between the store and Python;
// what they mean, and every figure that is worked out, comes from there.

import { drawCharts } from "./charts.mjs";
import { chooseBow, chosenBow, isBowId, takeAskedFor } from "./chosen.mjs";
import { node, sayAt } from "./elements.mjs";
import { answerOf, openCalendar, openCsv, openFile, saveFile } from "./exchange.mjs";
import { release } from "./engine.mjs";
import { forget, recall } from "./memory.mjs";
import { HALTED, NOT_KEPT, RENEWED, whyNotKept } from "./not-kept.mjs";
import { partOf, sourceOf } from "./parts.mjs";
import { QuickEntry } from "./quick.mjs";
import { SheetForms } from "./sheets.mjs";
import { askToKeep, joined, newId, now, openStore, writeDown } from "./store.mjs";
import { grow } from "./tree.mjs";

/** @import { Engine } from "./engine.mjs" */
/** @import { PhotoAlbum } from "./photo.mjs" */
/** @import { Binned, BowStore, Head, Stand, Summary, Task, TaskAnswer, ToldAnswer, ToldEntry } from "./record.d.ts" */
/** @import { Pair, Problem, UnitSystem } from "./types.d.ts" */

const TOAST_MS = 10_000;
const DAY_MS = 86_400_000;
const MANY_ENTRIES = 20;
const LONG_DAYS = 7;
const WORDS = {
  forgets: "This window forgets. Save to a file before you leave.",
  promised: "This browser has promised to keep your bows.",
  mayForget:
    "This browser may clear your bows when space runs short, or if you stay away for a week or more. Save them to " +
    "files, or put this site on the home screen.",
  cleared: "What this browser kept has been cleared. Save to a file what this page still holds, then reload it.",
  saveFirst: "Save to a file what this page holds.",
  notHere: "This bow is not on this device. Take it in from its file.",
  noDates: "There is nothing for a calendar yet: write down the finish and the coats to lay first.",
  removed: "All bows are removed from this browser.",
};

/** @type {Bows | null} */
let current = null; // with instant navigation pages come and go

/**
 * Take up the section of a page.
 * @param {HTMLElement} section
 * @param {Engine} engine
 */
export function visitBows(section, engine) {
  if (section.dataset.live !== undefined) return;
  section.dataset.live = "";
  current?.end();
  current = new Bows(section, engine);
  current.begin();
}

export class Bows {
  #section;
  #engine;
  /** @type {BowStore | null} */
  #store = null;
  /** @type {string | null} */
  #bow = null; // of the page that is open
  #record = "[]"; // its entries, as read last and with all that was added since
  /** @type {Stand | null} */
  #stand = null;
  #shown = 0;
  #drawing = Promise.resolve();
  #toastTimer = 0;
  /** @type {Promise<PhotoAlbum> | null} */
  #albumAsked = null;
  /** @type {Record<string, string>} */
  #titles; // of calculators, by id
  #gone = new AbortController(); // with the page

  /**
   * @param {HTMLElement} section
   * @param {Engine} engine
   */
  constructor(section, engine) {
    this.#section = section;
    this.#engine = engine;
    this.#titles = JSON.parse(section.dataset.titles ?? "{}");
    this.forms = new SheetForms(this, section);
    this.quick = new QuickEntry(this, section);
  }

  async begin() {
    document.documentElement.dataset.units = this.units;
    this.#store = await openStore({
      onChange: () => this.#isHere() && this.#part(".rb-paper").hidden && this.show(),
      onEnd: (cleared) => this.notice(cleared ? WORDS.cleared : RENEWED, true),
    });
    this.#section.addEventListener("click", (event) => this.#click(event));
    this.#section.addEventListener("change", (event) => this.#changed(sourceOf(event)));
    window.addEventListener("hashchange", () => this.#isHere() && this.show(), { signal: this.#gone.signal });
    if (this.#store.forgets) this.notice(WORDS.forgets);
    if (this.#store.isOutdated) this.notice(RENEWED);
    await this.show();
    this.#part(".rb-bows-wait").hidden = true;
    this.#section.dataset.ready = "";
  }

  /** Its page has gone: listen and keep open no more. */
  end() {
    this.#gone.abort();
    this.#store?.close();
    this.#albumAsked?.then((album) => album.end());
  }

  /** @returns {UnitSystem} */
  get units() {
    return recall("units") === "metric" ? "metric" : "imperial";
  }

  get store() {
    if (!this.#store) throw new Error("the store is not open yet");
    return this.#store;
  }

  get bow() {
    return this.#bow;
  }

  /** The entries of the bow whose page is open, as one JSON list. */
  get record() {
    return this.#record;
  }

  /** What the page shows of the bow's photographs; null while it shows no bow. */
  get album() {
    return this.#stand?.album ?? null;
  }

  /** The newest texts of what an entry at the bench asks for, by fact. */
  get last() {
    return new Map(this.#stand?.last ?? []);
  }

  /**
   * Ask Python, one question behind the other; resolves to its answer, or null once that was said to be impossible.
   * @template {Task} Name
   * @param {Name} task
   * @param {object} more
   * @returns {Promise<TaskAnswer<Name> | null>}
   */
  async ask(task, more = {}) {
    const { answer, failed } = await this.#engine.ask({ task, units: this.units, ...more });
    if (failed) this.#engine.again();
    if (!answer) this.notice(failed ?? HALTED);
    return /** @type {TaskAnswer<Name> | undefined} */ (answer) ?? null;
  }

  // Adding ---------------------------------------------------------------------

  /**
   * Make an entry of pairs; resolves to its id and the bow that has it, which is named after its first entry, or to
   * what is wrong. draft: the id of what was kept of it while it was typed.
   * @param {string} sheet
   * @param {Pair[]} pairs
   * @param {{at?: string, note?: string, bow?: string | null, draft?: string}} more
   * @returns {Promise<{bow: string | null, entry?: string, errors: Problem[]}>}
   */
  async add(sheet, pairs, { at = now(), note = "", bow = this.#bow, draft = "" } = {}) {
    const id = newId();
    const taken = await this.ask("take", { sheet, pairs, at, note, id });
    if (!taken?.entry) return { bow: null, errors: taken?.errors ?? [] };
    const target = bow ?? id;
    const refusal = await this.#keep(target, id, taken.entry, draft);
    if (refusal) return { bow: null, errors: [{ message: refusal }] };
    this.toast(`Saved ${at.slice(11, 16)}.`, () => this.strike(target, id));
    return { bow: target, entry: id, errors: [] };
  }

  /**
   * Write an entry down, then draw the page behind it; resolves to why it was not kept, or to null.
   * @param {string} bow
   * @param {string} id
   * @param {string} text
   * @param {string} [draft]
   */
  async #keep(bow, id, text, draft) {
    if (bow === this.#bow) this.#record = joined(this.#record, [text]); // for the file, whatever becomes of it
    try {
      const first = (await this.store.bows()).length === 0;
      const isWritten = await writeDown(this.store, bow, [{ id, text }], (more) => this.ask("head", more), draft);
      if (!isWritten) return HALTED;
      if (first) this.#askToKeep();
    } catch (error) {
      const said = `${whyNotKept(this.store, error)} ${WORDS.saveFirst}`;
      this.notice(said, true);
      return said;
    }
    this.show();
    return null;
  }

  /**
   * Strike an entry out; resolves to the id of what strikes it, or to null where that was not kept.
   * @param {string} bow
   * @param {string} entry
   */
  async strike(bow, entry, why = "") {
    const id = newId();
    const record = await this.store.record(bow);
    const struck = await this.ask("strike", { entries: record, entry, id, at: now(), why });
    if (!struck?.entry || (await this.#keep(bow, id, struck.entry))) return null;
    this.toast("Struck out.", () => this.strike(bow, id));
    return id;
  }

  /** Nothing waits for the answer: some browsers put the question to the reader, who may leave it standing. */
  #askToKeep() {
    askToKeep().then((keeping) => this.store.remember("keeping", keeping)).catch(() => {});
  }

  // Showing --------------------------------------------------------------------

  /** Draw what the address names; what comes in meanwhile waits for the newest drawing with `drawn`. */
  show() {
    this.#shown += 1;
    this.#drawing = this.#draw(this.#shown);
    return this.#drawing;
  }

  /** Resolves once what was written down last is drawn. */
  get drawn() {
    return this.#drawing;
  }

  /** @param {number} turn */
  async #draw(turn) {
    const named = location.hash.slice(1);
    const bow = isBowId(named) ? named : null;
    try {
      if (bow) await this.#showBow(bow, turn);
      else await this.#showList(turn);
    } catch {
      this.notice(`${NOT_KEPT} ${WORDS.saveFirst}`, true);
    }
  }

  /** @param {number} turn */
  async #showList(turn) {
    const heads = await Promise.all((await this.store.bows()).map((head) => this.#fresh(head)));
    const bin = await this.store.bin();
    const keeping = await this.store.recall("keeping");
    if (turn !== this.#shown) return;
    this.#bow = null;
    this.#stand = null;
    const list = this.#part(".rb-bows-list");
    list.replaceChildren(...heads.sort(byWhatPresses).map(row));
    this.#part(".rb-bows-none").hidden = heads.length > 0;
    for (const each of ["save-all", "calendar-all", "week", "remove-all"]) this.#part(`[data-do="${each}"]`).hidden = heads.length === 0;
    this.#part(".rb-bows-backup").textContent = reminder(heads);
    const said = keeping ? WORDS.promised : WORDS.mayForget;
    this.#part(".rb-bows-kept").textContent = heads.length && !this.store.forgets ? said : "";
    this.#part(".rb-bows-bin").hidden = bin.length === 0;
    this.#part(".rb-bows-bin ul").replaceChildren(...bin.map(binned));
    this.#turnTo(".rb-bows-all");
    if (heads.some(({ coats }) => coats)) this.#showAcross(heads, turn);
    else this.#part(".rb-bows-across").replaceChildren();
  }

  /**
   * Say below the list what its bows mean for each other, once Python has told it; the list does not wait.
   * @param {Head[]} heads
   * @param {number} turn
   */
  async #showAcross(heads, turn) {
    const place = this.#part(".rb-bows-across");
    const records = await this.#records(heads);
    const found = await this.ask("across", { records, at: now() });
    if (!found || turn !== this.#shown) return;
    const lines = found.lines.map(({ place: index, level, text }) =>
      node("li", { "data-level": level }, node("strong", {}, heads[index]?.title ?? ""), `: ${text}`));
    place.replaceChildren(...(lines.length ? [node("h3", {}, "Across the bench"), node("ul", {}, ...lines)] : []));
  }

  /**
   * A head as it is; worked out anew where entries came in that its writer did not know.
   * @param {Head} head
   */
  async #fresh(head) {
    if (head.entries === (await this.store.count(head.id))) return head;
    const renewed = await this.ask("head", { entries: await this.store.record(head.id) });
    if (!renewed) return head;
    await this.#renew(head.id, renewed);
    return { ...head, ...renewed };
  }

  /**
   * Tell the list what its head of a bow does not know yet: an entry is written down before it is worked out.
   * @param {string} bow
   * @param {Summary} head
   */
  async #renew(bow, head) {
    if ((await this.store.head(bow))?.entries === head.entries) return;
    await this.store.putHead(bow, head).catch(() => {}); // it is worked out anew with the list
  }

  /**
   * @param {string} bow
   * @param {number} turn
   */
  async #showBow(bow, turn) {
    const record = await this.store.record(bow);
    if (record === "[]") {
      if (turn !== this.#shown) return;
      this.notice(WORDS.notHere);
      await this.#showList(turn);
      return;
    }
    const stand = await this.ask("stand", { entries: record });
    if (!stand || turn !== this.#shown) return;
    const arriving = this.#bow !== bow;
    this.#bow = bow;
    this.#record = record;
    this.#stand = stand;
    this.#part(".rb-bow-title").textContent = stand.title;
    this.#part(".rb-bow-weights").textContent = stand.weights + (stand.due ? ` Ready by ${stand.due}.` : "");
    this.#part(".rb-bow-next").replaceChildren(
      node("strong", {}, "Next: "), stand.next.title ? `${stand.next.title}. ` : "", stand.next.why);
    this.#showCalculators(stand.next.calculators);
    this.#part(".rb-bow-checks").replaceChildren(grow(stand.checks));
    this.#part(".rb-bow-columns tbody").replaceChildren(...stand.columns.map(([label, ...cells]) =>
      node("tr", {}, node("th", { scope: "row" }, label), ...cells.map((cell) => node("td", {}, cell)))));
    this.#part(".rb-bow-returned").replaceChildren(grow(stand.returned));
    this.#showCharts(stand);
    this.#showAnswers(stand.answers);
    this.#showJob(stand.steps);
    this.#part(".rb-timeline").replaceChildren(...stand.timeline.map(told));
    this.#turnTo(".rb-bow");
    this.#showAlbum(turn);
    if (arriving) {
      this.#part(".rb-bow-title").scrollIntoView();
      this.#part(".rb-bow-title").focus({ preventScroll: true });
      await this.#openForm(takeAskedFor());
    }
    await this.#renew(bow, stand.head);
  }

  /**
   * Open a form that a calculator asked for.
   * @param {string | null} name
   */
  async #openForm(name) {
    if (name === "batch") await this.quick.openBatch();
    else if (name && this.#section.querySelector(`dialog[data-sheet="${CSS.escape(name)}"]`)) await this.forms.open(name);
  }

  /** @param {string[]} ids */
  #showCalculators(ids) {
    const links = this.#linksTo(ids);
    this.#part(".rb-bow-calculators").replaceChildren(...(links.length ? ["Calculators for it: ", ...links, "."] : []));
  }

  /** @param {string[]} ids */
  #linksTo(ids) {
    const known = ids.filter((id) => this.#titles[id]);
    return known.flatMap((id, index) =>
      [...(index ? [", "] : []), node("a", { href: `../calculators/${id}/`, class: "rb-of-bow" }, this.#titles[id])]);
  }

  /** @param {Stand} stand */
  #showCharts({ figures, charts }) {
    const place = this.#part(".rb-bow-charts");
    place.replaceChildren(grow(figures));
    drawCharts(place, charts);
  }

  /**
   * Photographs, with a script of their own: behind all that can be read without them.
   * @param {number} turn
   */
  async #showAlbum(turn) {
    const album = await this.#album();
    if (turn === this.#shown) await album.show();
  }

  #album() {
    this.#albumAsked ??= import("./photo.mjs").then(({ PhotoAlbum }) => new PhotoAlbum(this, this.#section));
    return this.#albumAsked;
  }

  /** @param {ToldAnswer[]} answers */
  #showAnswers(answers) {
    this.#part(".rb-bow-answers").hidden = answers.length === 0;
    this.#part(".rb-bow-answers ul").replaceChildren(...answers.map(({ id, calculator, moment, headline }) =>
      node("li", {}, node("p", {}, node("strong", {}, this.#titles[calculator] ?? calculator), ` ${moment}. ${headline}`),
        node("button", { type: "button", "data-compare": id, "aria-label": `What has changed since: ${moment}` },
          "What has changed since"))));
  }

  /** @param {Stand["steps"]} steps */
  #showJob(steps) {
    this.#part(".rb-bow-job ol").replaceChildren(...steps.map(([title, ids]) =>
      node("li", {}, `${title}: `, ...this.#linksTo(ids))));
  }

  /**
   * Say below a kept answer what the record tells otherwise today, and lead back to its figures.
   * @param {HTMLButtonElement} button
   */
  async #compare(button) {
    const found = await this.ask("compare", { entries: this.#record, entry: button.dataset.compare });
    if (!found) return;
    const link = node("a", { href: `../calculators/${found.calculator}/#${found.figures}` }, "Open its figures again");
    const changed = found.changed.map(({ input, was, now: text }) => `${input}: ${was || "not known"} then, ${text} now`);
    const stale = found.stale.length ? [`Read before the last change to the bow: ${found.stale.join(", ")}`] : [];
    const lines = [...changed, ...stale];
    const said = lines.length ? lines : ["Nothing: the record tells the same figures today"];
    button.replaceWith(node("ul", {}, ...said.map((text) => node("li", {}, `${text}.`)), node("li", {}, link, ".")));
  }

  /** @param {string} selector */
  #turnTo(selector) {
    for (const each of [".rb-bows-all", ".rb-bow", ".rb-paper"]) this.#part(each).hidden = each !== selector;
  }

  // Doing ----------------------------------------------------------------------

  /** @param {Event} event */
  async #click(event) {
    const source = sourceOf(event);
    if (source?.closest("a.rb-of-bow")) chooseBow(this.#bow);
    const button = source?.closest("button");
    if (!button || button.closest("dialog")) return;
    const { do: deed, open, strike, back, compare } = button.dataset;
    if (open) await this.forms.open(open);
    else if (strike && this.#bow) await this.strike(this.#bow, strike);
    else if (back) await this.#bringBack(back);
    else if (compare) await this.#compare(button);
    else if (deed === "add") await this.forms.open("new-bow");
    else if (deed === "quick-reading") await this.#drawing.then(() => this.quick.openReading());
    else if (deed === "photo") await (await this.#album()).open();
    else if (deed === "quick-batch") await this.#drawing.then(() => this.quick.openBatch());
    else if (deed === "save-file") await this.#save(true);
    else if (deed === "save-shared") await this.#save(false);
    else if (deed === "save-table") await openCsv(await this.ask("csv", { entries: this.#record }));
    else if (deed === "calendar") await this.#calendar([this.#record]);
    else if (deed === "calendar-all") await this.#calendar(await this.#records(await this.store.bows()));
    else if (deed === "tell") await this.#tell();
    else if (deed === "sheet") await this.#paper(`Record of bow ${this.#stand?.title}`, "sheet", { entries: this.#record });
    else if (deed === "card") await this.#paper(`Card of bow ${this.#stand?.title}`, "card", { entries: this.#record });
    else if (deed === "week") await this.#paper("The week", "week", { records: await this.#records(await this.store.bows()) });
    else if (deed === "back") await this.show();
    else if (deed === "remove") await this.#remove();
    else if (deed === "save-all") await this.#saveAll();
    else if (deed === "remove-all") await this.#removeAll();
  }

  async #tell() {
    const { openTelling } = await import("./tell.mjs");
    await openTelling({
      tell: (more) => this.ask("tell", { ...more, entries: this.record }),
      keep: (facts) => this.add("told", facts),
    }, partOf(this.#section, ".rb-tell", HTMLDialogElement));
  }

  /**
   * Show what goes on paper, in the place of the page.
   * @param {string} title
   * @param {"sheet" | "card" | "week"} task
   * @param {object} more
   */
  async #paper(title, task, more) {
    const [{ showPaper, addSquare, LEADS }, made] = await Promise.all([
      import("./paper.mjs"), this.ask(task, { at: now(), release: release(), ...more }), this.#drawing]);
    if (!made?.tree) return;
    const view = this.#part(".rb-paper");
    this.#turnTo(".rb-paper");
    showPaper(view, title, made.tree);
    if (task === "card") addSquare(view, new URL(`#${this.#bow}`, location.href).href, LEADS.bow);
    if (!("link" in made)) return;
    addSquare(view, new URL(`../bow/#${made.link}`, location.href).href, LEADS.owner);
    await (await this.#album()).putOnSheet(partOf(view, ".rb-paper-pictures", HTMLElement));
  }

  /** @param {{id: string}[]} heads */
  #records(heads) {
    return Promise.all(heads.map(({ id }) => this.store.record(id)));
  }

  /** @param {string[]} records */
  async #calendar(records) {
    const made = await this.ask("calendar", { records, at: now() });
    if (made?.text) openCalendar(made);
    else if (made) this.notice(WORDS.noDates);
  }

  async #saveAll() {
    const heads = await this.store.bows();
    const records = await this.#records(heads);
    const photos = (await Promise.all(heads.map(({ id }) => this.store.photos(id)))).flat();
    const bytes = photos.reduce((sum, { size }) => sum + size, 0);
    const made = await this.ask("all", { records, private: true, pictures: photos.map(({ id }) => id), bytes });
    if (made?.refused) this.notice(made.refused);
    if (!made || made.refused || !(await saveFile(made, photos))) return false;
    const saved = Date.now();
    const marks = heads.map(({ id, entries }) => this.store.putHead(id, { saved: { at: saved, entries } }));
    await Promise.all(marks).catch(() => {}); // the store is gone; the file is not
    await this.show();
    return true;
  }

  /** Nothing is brought back after it, so a file is offered first. */
  async #removeAll() {
    const dialog = this.#dialog(".rb-remove-all");
    dialog.returnValue = "neither";
    dialog.showModal();
    const chosen = await answerOf(dialog);
    if (chosen === "save-first" && !(await this.#saveAll())) return;
    if (chosen !== "save-first" && chosen !== "without") return;
    try {
      await this.store.removeAll();
    } catch {
      this.notice(NOT_KEPT);
      return;
    }
    chooseBow(null);
    forget("timers"); // they name bows
    this.notice(WORDS.removed);
    await this.show();
  }

  /** @param {boolean} everything */
  async #save(everything) {
    const bow = this.#bow;
    const photos = bow && everything ? await this.store.photos(bow).catch(() => []) : [];
    const pictures = photos.map(({ id }) => id);
    const made = await this.ask("file", { entries: this.#record, private: everything, pictures });
    if (!bow || !made || !(await saveFile(made, photos)) || !everything) return;
    try {
      const entries = await this.store.count(bow);
      await this.store.putHead(bow, { saved: { at: Date.now(), entries } });
    } catch {
      // The store is gone; the file is not.
    }
  }

  /** @param {Element | null} source */
  #changed(source) {
    if (source instanceof HTMLInputElement && source.type === "file") this.#takeIn(source);
  }

  /** @param {HTMLInputElement} input */
  async #takeIn(input) {
    const bow = await openFile(this, input.files?.[0], this.#dialog(".rb-which"));
    input.value = "";
    if (bow) location.hash = bow;
    await this.show();
  }

  async #remove() {
    const bow = this.#bow;
    if (!bow) return;
    await this.store.remove(bow);
    if (chosenBow() === bow) chooseBow(null);
    location.hash = "all";
    await this.show();
    this.toast("Removed. It can be brought back for 30 days.", () => this.#bringBack(bow));
  }

  /** @param {string} bow */
  async #bringBack(bow) {
    await this.store.bringBack(bow);
    await this.show();
  }

  // Saying ---------------------------------------------------------------------

  /**
   * Say a sentence above everything; with a way to a file where what is typed might be lost.
   * @param {string} sentence
   */
  notice(sentence, withFile = false) {
    const save = node("button", { type: "button", "data-do": "save-file" }, "Save to a file");
    this.#part(".rb-bows-notice").replaceChildren(sentence, ...(withFile && this.#bow ? [" ", save] : []));
  }

  /**
   * @param {string} sentence
   * @param {() => void} undo
   */
  toast(sentence, undo) {
    const toast = this.#part(".rb-toast");
    sayAt(toast, sentence, undo);
    clearTimeout(this.#toastTimer);
    this.#toastTimer = setTimeout(() => toast.replaceChildren(), TOAST_MS);
  }

  #isHere() {
    return this.#section.isConnected;
  }

  /** @param {string} selector */
  #part(selector) {
    return partOf(this.#section, selector, HTMLElement);
  }

  /** @param {string} selector */
  #dialog(selector) {
    return partOf(this.#section, selector, HTMLDialogElement);
  }
}

/**
 * @param {Head} one
 * @param {Head} other
 */
function byWhatPresses(one, other) {
  const [a, b] = [one, other].map(({ level, due, title }) => [level === "stop" ? "0" : "1", due || "9", title]);
  const place = a.findIndex((part, index) => part !== b[index]);
  return place < 0 ? 0 : a[place].localeCompare(b[place], "en", { numeric: true });
}

/** @param {Head} head */
function row(head) {
  return node("li", { "data-level": head.level },
    node("a", { href: `#${head.id}` }, head.title),
    ...(head.level === "stop" ? [node("strong", { class: "rb-bows-stop" }, "Stop")] : []),
    node("span", {}, head.weights),
    node("span", {}, `Next: ${head.next}`),
    ...(head.due ? [node("span", {}, `Ready by ${head.due}`)] : []));
}

/** @param {Binned} bow */
function binned({ id, head }) {
  return node("li", {}, `${head?.title ?? "A bow"} `,
    node("button", { type: "button", "data-back": id }, "Bring back"));
}

/** @param {ToldEntry} entry */
function told(entry) {
  const facts = entry.facts.flatMap(([label, text]) => [node("dt", {}, label), node("dd", {}, text)]);
  const line = node("li", { "data-entry": entry.id, ...(entry.struck ? { class: "rb-struck" } : {}) },
    node("p", {}, node("strong", {}, entry.title), ` ${entry.moment}`, entry.struck ? " (struck out)" : ""),
    node("dl", {}, ...facts),
    ...[entry.note, ...entry.problems].filter(Boolean).map((text) => node("p", {}, text)));
  if (!entry.struck) {
    const spoken = `Strike out: ${entry.title}, ${entry.moment}`;
    line.append(node("button", { type: "button", "data-strike": entry.id, "aria-label": spoken }, "Strike out"));
  }
  return line;
}

/**
 * A line that reminds of a backup once there is much, or something for long, that no file holds.
 * @param {Head[]} heads
 */
function reminder(heads) {
  const unsaved = heads.filter(({ entries, saved }) => entries > (saved?.entries ?? 0));
  const count = unsaved.reduce((sum, { entries, saved }) => sum + entries - (saved?.entries ?? 0), 0);
  const longAgo = Date.now() - LONG_DAYS * DAY_MS;
  const old = unsaved.some(({ saved, begun, changed }) => (saved?.at ?? begun ?? changed) < longAgo);
  if (count <= MANY_ENTRIES && !old) return "";
  const names = unsaved.map(({ title }) => title).join("; ");
  return `${count} ${count === 1 ? "entry is" : "entries are"} in no file yet. Save to a file: ${names}.`;
}
