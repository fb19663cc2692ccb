// The bow on the bench, above a calculator: it fills the form from that bow's record, says of each figure where it
// comes from, and keeps an answer there when the reader says so. Typing alone changes no record.
// What is known, stale or new is worked out in Python.

import { askFor, chooseBow, chosenBow } from "./chosen.mjs";
import { joined, newId, now, openStore, writeDown } from "./store.mjs";

const BOWS = new URL("../../bows/", import.meta.url);
const MOST_SHEETS = 12; // that one answer could write into
const NONE = "";
const WORDS = {
  none: "No bow",
  failed: "This browser did not keep that. Nothing that was there is changed.",
  full: "This browser has no room left, so this was not kept. Nothing that was there is changed.",
  halted: "Python could not work that out. Nothing was kept.",
  gone: "That bow is no longer on this device.",
  undone: "Taken back.",
};
/** What is written down first, and read by the calculator: a form of the bow's page, and what leads to it. */
const FIRST = new Map([
  ["strokes", ["batch", "Add a batch"]],
  ["inspection", ["look", "Write the inspection down"]],
  ["spray-air", ["air", "Air read now"]],
]);

export class BowBar {
  #page;
  #engine;
  #store = null;
  #bow = null; // id of the bow that fills the form
  #title = "";
  #told = [];
  #typed = new Set();
  #turn = 0;
  #parts;

  constructor(page, engine) {
    this.#page = page;
    this.#engine = engine;
    this.#parts = parts();
    const { select, first, keep, dialog } = this.#parts;
    select.addEventListener("change", () => this.#choose(select.value));
    first.addEventListener("click", () => askFor(FIRST.get(page.calculator)[0]));
    keep.addEventListener("click", () => this.#offerToKeep());
    dialog.addEventListener("close", () => dialog.returnValue === "keep" && this.#keep());
  }

  async begin() {
    this.#store = await openStore({ onChange: (bow) => this.#changedElsewhere(bow) });
    const bows = await this.#bows();
    if (!this.#isHere()) {
      this.end();
      return;
    }
    const { bar, line, stops, checks, footer, dialog } = this.#parts;
    this.#page.form.before(bar, stops);
    this.#page.outcome.before(line, checks);
    this.#page.outcome.after(footer, dialog);
    const chosen = chosenBow();
    if (chosen && !location.hash.includes("=") && bows.some(({ id }) => id === chosen)) await this.#choose(chosen);
    bar.dataset.ready = "";
  }

  /** Its page has gone: keep no store open. */
  end() {
    this.#store?.close();
  }

  /** A way back from a link to the bow that filled the form before it; returns whether it was one. */
  takesBack() {
    const bow = chosenBow();
    if (location.hash || this.#bow || !bow || !this.#isHere()) return false;
    this.#choose(bow);
    return true;
  }

  // What the page tells -----------------------------------------------------------

  typed(name) {
    this.#typed.add(name);
    this.#mark(name);
    this.#keepDraft();
  }

  answered(answer) {
    const missing = this.#told.filter(({ input, text, shop }) =>
      !text && !shop && !this.#typed.has(input) && answer.errors.some(({ field }) => field === input));
    const labels = missing.map(({ input }) => labelOf(this.#page.fieldOf(input)));
    this.#parts.line.textContent = labels.length
      ? `This answer waits for what no entry tells yet: ${labels.join("; ")}. Measure it, and type it here or write it down.`
      : "";
  }

  /** Drop what was typed over the record. */
  again() {
    const draft = this.#draft();
    this.#typed.clear();
    this.#dropDraft();
    this.#fill([]);
    this.#say("Back at what the record says.", () => this.#fill(draft));
  }

  left() {
    this.#bow = null;
    this.#told = [];
    this.#typed.clear();
    this.#turn += 1;
    for (const mark of this.#page.form.querySelectorAll(".rb-origin")) mark.remove();
    const { select, link, first, line, stops, checks, keep } = this.#parts;
    select.value = NONE;
    link.hidden = true;
    first.hidden = true;
    line.textContent = "";
    stops.replaceChildren();
    checks.replaceChildren();
    keep.textContent = "Keep in a bow…";
  }

  // Choosing --------------------------------------------------------------------

  async #bows() {
    const heads = await this.#store.bows().catch(() => []);
    heads.sort((one, other) => one.title.localeCompare(other.title, "en", { numeric: true }));
    const { select, label, none, keep, into } = this.#parts;
    const options = () => heads.map(({ id, title }) => new Option(title, id));
    select.replaceChildren(new Option(WORDS.none, NONE), ...options());
    into.replaceChildren(...options());
    label.hidden = heads.length === 0;
    none.hidden = heads.length > 0;
    keep.hidden = heads.length === 0;
    return heads;
  }

  async #choose(bow) {
    if (bow === NONE) {
      this.#leave();
      return;
    }
    const pairs = await this.#store.draft(this.#draftName(bow)).catch(() => null);
    chooseBow(bow);
    this.#bow = bow;
    await this.#fill(pairs ?? []);
  }

  #leave() {
    chooseBow(null);
    this.#page.leaveBow();
  }

  async #fill(typed) {
    this.#turn += 1;
    const turn = this.#turn;
    const bow = this.#bow;
    const entries = await this.#store.record(bow).catch(() => "[]");
    if (entries === "[]") {
      this.#leave();
      this.#say(WORDS.gone);
      return;
    }
    const filled = await this.#ask("fill", { entries, pairs: typed });
    if (!filled || turn !== this.#turn || !this.#isHere()) return;
    this.#title = filled.title;
    this.#told = filled.filled;
    this.#typed = new Set(typed.map(([name]) => name).filter((name) => name !== "units"));
    const takeBack = this.#page.takeBow(this, filled.filled, typed);
    this.#showChecks(filled.checks);
    this.#showBow();
    const undo = () => {
      chooseBow(null);
      takeBack();
    };
    if (takeBack) this.#say("Filled.", undo);
    for (const { input } of filled.filled) this.#mark(input);
  }

  /** What the whole record shows: what stops all work above the form, the rest above the answer. */
  #showChecks(tree) {
    const { stops, checks } = this.#parts;
    checks.replaceChildren(this.#page.grow(tree));
    const grave = [...checks.querySelectorAll(".rb-check.rb-stop")];
    stops.replaceChildren(...(grave.length ? [make("ul", { className: "rb-checks" }, ...grave)] : []));
    if (!checks.querySelector(".rb-check")) checks.replaceChildren();
  }

  #showBow() {
    const { select, link, first, keep, into } = this.#parts;
    select.value = this.#bow;
    into.value = this.#bow;
    link.href = `${BOWS.href}#${this.#bow}`;
    link.hidden = false;
    const [, title] = FIRST.get(this.#page.calculator) ?? [];
    first.href = link.href;
    first.textContent = title ?? "";
    first.hidden = !title;
    keep.textContent = `Keep in ${this.#title}`;
  }

  /** Say below a field where its figure comes from, or how it comes to be known. */
  #mark(name) {
    const field = this.#page.fieldOf(name);
    const told = this.#told.find(({ input }) => input === name);
    if (!field || !told || !this.#bow) return;
    field.querySelector(".rb-origin")?.remove();
    const text = originOf(told, this.#typed.has(name));
    field.querySelector(".rb-error").before(make("p", { className: "rb-origin", textContent: text }));
  }

  #changedElsewhere(bow) {
    if (this.#isHere() && bow === this.#bow) this.#fill(this.#draft());
  }

  // What was typed over the record ---------------------------------------------------

  #draft() {
    return this.#page.typed.filter(([name]) => this.#typed.has(name) || name === "units");
  }

  #draftName(bow) {
    return `calculator:${this.#page.calculator}:${bow}`;
  }

  async #keepDraft() {
    if (!this.#bow || !this.#typed.size || !this.#isHere()) return;
    await this.#store.keepDraft(this.#draftName(this.#bow), this.#draft()).catch(() => {});
  }

  #dropDraft() {
    this.#store.dropDraft(this.#draftName(this.#bow)).catch(() => {});
  }

  // Keeping ---------------------------------------------------------------------

  async #offerToKeep() {
    const { into } = this.#parts;
    if (!this.#page.answer) {
      this.#tell("There is no answer to keep yet: mend what is marked above.");
      return;
    }
    if (!this.#bow) await this.#bows();
    into.hidden = Boolean(this.#bow);
    into.onchange = () => this.#showFresh();
    await this.#showFresh();
    this.#parts.dialog.showModal();
  }

  async #showFresh() {
    const { dialog, list, readings, said } = this.#parts;
    const { fresh } = (await this.#ask("fresh", await this.#request())) ?? { fresh: [] };
    const taken = fresh.filter(({ refused }) => !refused);
    dialog.querySelector("h2").textContent = this.#bow ? `Keep in ${this.#title}` : "Keep in a bow";
    said.textContent = this.#headline();
    list.replaceChildren(...fresh.map(({ label, text, was, refused }) => make("li", {
      textContent: refused || `${label}: ${text}${was && was !== text ? ` (was ${was})` : ""}` })));
    readings.parentElement.hidden = taken.length === 0;
    readings.checked = Boolean(this.#bow) && taken.length > 0;
  }

  async #keep() {
    const { readings, into } = this.#parts;
    const bow = this.#bow ?? into.value;
    const { answer } = this.#page;
    if (!answer) return;
    const levels = (pairs) => pairs.map((pair) => pair.join("=")).join(";");
    const asked = await this.#request();
    const made = await this.#ask("keep", {
      ...asked,
      said: [["headline", this.#headline()], ["results", levels(answer.kept.results)],
        ["checks", levels(answer.kept.checks)], ["stale", asked.stale]],
      readings: readings.checked,
      ids: Array.from({ length: MOST_SHEETS }, () => newId()),
      at: now(),
      source: `${this.#page.calculator} ${release()}`,
    });
    if (!made || !(await this.#add(bow, made.entries))) return;
    if (this.#bow && readings.checked) {
      this.#typed.clear();
      this.#dropDraft();
      await this.#fill([]);
    }
    this.#tell("Kept. ", () => this.#strike(bow, made.entries));
  }

  async #request() {
    const bow = this.#bow ?? this.#parts.into.value;
    const { pairs, said, own } = this.#page.figures();
    const typed = pairs.filter(([name]) => (this.#bow ? this.#typed.has(name) : own.includes(name)));
    const stale = this.#told.filter(({ input, stale, text }) => stale && text && !this.#typed.has(input));
    return { entries: await this.#store.record(bow), pairs, typed, figures: said,
      stale: stale.map(({ input }) => input).join(", ") };
  }

  async #add(bow, entries) {
    try {
      return await writeDown(this.#store, bow, entries, (more) => this.#ask("head", more));
    } catch (error) {
      this.#tell(error?.name === "QuotaExceededError" ? WORDS.full : WORDS.failed);
      return false;
    }
  }

  async #strike(bow, entries) {
    let record = await this.#store.record(bow);
    const struck = [];
    for (const { id } of entries) {
      const made = await this.#ask("strike", { entries: record, entry: id, id: newId(), at: now() });
      if (!made) return;
      struck.push({ id: JSON.parse(made.entry).id, text: made.entry });
      record = joined(record, [made.entry]);
    }
    if (!(await this.#add(bow, struck))) return;
    this.#tell(WORDS.undone);
    if (this.#bow === bow) await this.#fill(this.#draft());
  }

  // Asking and saying ------------------------------------------------------------

  async #ask(task, more) {
    const request = { task, units: this.#page.units, calculator: this.#page.calculator, ...more };
    const { answer } = await this.#engine.ask(request);
    if (answer && !answer.refused) return answer;
    this.#tell(answer?.refused ?? WORDS.halted);
    return null;
  }

  #headline() {
    return this.#page.outcome.querySelector(".rb-headline")?.textContent ?? "";
  }

  /** A sentence below the bar, which goes with the next one. */
  #say(text, undo) {
    sayIn(this.#parts.told, text, undo);
  }

  /** The same below the answer. */
  #tell(text, undo) {
    sayIn(this.#parts.kept, text, undo);
  }

  #isHere() {
    return this.#page.form.isConnected;
  }
}

function originOf({ text, since, said, stale, shop, sheet, how }, typed) {
  if (typed) return text ? `Typed now. The record says ${text}${since ? `, ${since}` : ""}.` : "Typed now.";
  if (!text) return shop ? "Assumed: the usual figure." : `Not written down yet. ${how}`;
  const from = said || (since ? `${sheet === "agreed" ? "Agreed" : "Of"} ${since}` : "From the record");
  return stale ? `${from}, before the last change to the bow: read it again.` : `${from}.`;
}

function labelOf(field) {
  return (field?.querySelector("label, caption")?.firstChild?.textContent ?? "").trim();
}

/** Which state of the calculators answered: the page names their files by content. */
function release() {
  const meta = document.querySelector('meta[name="rebrace-engine"]');
  return meta ? JSON.parse(meta.content).calc.replace(/\W+$/, "").replace(/^calc-/, "") : "";
}

function sayIn(place, text, undo) {
  place.replaceChildren(text);
  if (!undo) return;
  const button = make("button", { type: "button", className: "rb-undo", textContent: "Undo" });
  button.addEventListener("click", () => {
    place.replaceChildren();
    undo();
  });
  place.append(" ", button);
}

function parts() {
  const select = make("select", { name: "", className: "rb-which-bow" });
  const label = make("label", { hidden: true }, "Bow ", select);
  const link = make("a", { hidden: true, textContent: "Its page" });
  const first = make("a", { className: "rb-first", hidden: true });
  const none = make("p", { className: "rb-bar-none", hidden: true }, "A bow on your bench? ",
    make("a", { href: BOWS.href, textContent: "Write it down once" }), ".");
  const told = make("span", { className: "rb-bar-told", role: "status" });
  const bar = make("div", { className: "rb-bar" }, label, link, none, told);
  const line = make("p", { className: "rb-bar-missing", role: "status" });
  const stops = make("div", { className: "rb-bar-stops" });
  const checks = make("div", { className: "rb-bar-checks" });
  const keep = make("button", { type: "button", className: "rb-keep-open", textContent: "Keep in a bow…", hidden: true });
  const kept = make("span", { className: "rb-kept-told", role: "status" });
  const footer = make("div", { className: "rb-keep" }, keep, first, kept);
  const into = make("select", { ariaLabel: "Which bow" });
  const said = make("p", { className: "rb-keep-said" });
  const list = make("ul", {});
  const readings = make("input", { type: "checkbox" });
  const dialog = make("dialog", { className: "rb-keep-dialog" }, make("form", { method: "dialog" },
    make("h2", {}), into, make("p", { textContent: "Keeps the answer, as it was said:" }), said,
    make("label", {}, readings, " Also write down, as known now:"), list,
    make("p", { className: "rb-actions" }, make("button", { value: "keep", className: "rb-main", textContent: "Keep" }),
      make("button", { value: "cancel", textContent: "Cancel" }))));
  return { bar, line, stops, checks, footer, dialog, select, label, link, first, none, told, keep, kept, into, said, list,
    readings };
}

function make(tag, more, ...children) {
  const made = Object.assign(document.createElement(tag), more);
  made.append(...children);
  return made;
}
