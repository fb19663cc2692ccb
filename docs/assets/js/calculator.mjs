// One calculator on a page: form to engine to outcome, with its link and its memory.

import { fitTables } from "./figures.mjs";
import { offerFiles } from "./files.mjs";
import { addRow, fieldOf, fillForm, fillWhatLinksMean, namePercents, nameUnits, readForm, removeRow, resetForm, rowsBeyond, setUnits, showWhatMatters, unitsOf } from "./form.mjs";
import { KeptJobs } from "./kept.mjs";
import { carriesInputs, readLink, splitRepeated, writeLink } from "./link.mjs";
import { recall, remember } from "./memory.mjs";
import { FloatingAnswer } from "./floating.mjs";
import { focusSummary, showProblems } from "./problems.mjs";
import { Standing } from "./standing.mjs";
import { grow } from "./tree.mjs";

/** @import { Answer } from "./types.d.ts" */

const SAVE_AFTER_MS = 300; // browsers refuse an address that changes more often
const PAUSE_MS = 900; // a half-typed number is not yet a mistake
const WORDS = {
  waiting: "Working it out…",
  stale: "The result below belongs to the figures before your last change.",
  example: "What stands below is the worked example's answer, not yours.",
  empty: "No answer of yours yet: some figures are empty. What each is stands below it.",
  copied: "Link copied. It holds all figures of this page.",
  byHand: "Copy the link from the address bar: this browser does not let a page do it.",
  tooLong: "These figures are too long for a link.",
};

export class CalculatorPage {
  #section;
  #engine;
  #form;
  #outcome;
  #state;
  #notes;
  #progress;
  #peek;
  #back;
  #again;
  #offers;
  #kept;
  #standing;
  #changed = false; // since the example or the link was put in
  #lastTyped = null;
  #example;
  #hasResult = true; // the worked example stands in the page
  #problems = [];
  #shown = new Set(); // fields whose problem is on the page
  #typing = null; // field that is being typed in; its problems wait
  #link = null; // the figures as an address; none while the example stands untouched
  #written = new Set(); // addresses of this page's own, to tell a way back from a pasted link
  #linkNotes = [];
  #strangers = [];
  #bow = null; // whose record the form is filled from; its bar, which is told what happens
  #unknown = new Set(); // to that record or emptied, and not typed yet: no mistake of anybody's
  #aside = null; // what stood in the form before a bow filled it
  /** @type {Answer | null} */
  #answer = null;
  #saveTimer = 0;
  #pauseTimer = 0;
  #sayTimer = 0;
  #settle;

  /** Resolves once something typed or linked has been answered. */
  answered = new Promise((resolve) => (this.#settle = resolve));

  constructor(section, engine) {
    this.#section = section;
    this.#engine = engine;
    this.#form = section.querySelector(".rb-form");
    this.#outcome = section.querySelector(".rb-outcome");
    this.#example = readExample(this.#form);
    const typed = "typed" in this.#form.dataset; // before this script arrived
    if (!typed) this.#form.reset(); // browsers keep what was typed across a reload; the link decides instead
    this.#kept = new KeptJobs(section.dataset.calculator);
    this.#standing = new Standing(this.#form, {
      onConfirm: () => this.#update(),
      onEmpty: (names) => this.#empty(names),
      onOwn: () => this.#typeOwn(),
    });
    this.#addParts();
    this.#listen();
    section.dataset.live = "";
    this.#begin(typed);
  }

  /** The address changed under the page: a jump, a way back, or a pasted link. Only that brings figures. */
  followAddress() {
    if (!this.#section.isConnected) return;
    if (carriesInputs(location.hash) && !this.#written.has(location.hash)) this.#takeLink();
    else if (this.#link) this.#writeAddress();
  }

  // For the bar of bows ---------------------------------------------------------

  get calculator() {
    return this.#section.dataset.calculator;
  }

  get form() {
    return this.#form;
  }

  get outcome() {
    return this.#outcome;
  }

  get units() {
    return unitsOf(this.#form);
  }

  /** The answer that stands for what the form holds, or null. */
  get answer() {
    return this.#outcome.dataset.state === "current" ? this.#answer : null;
  }

  /** What the form holds, as typed. */
  get typed() {
    return readForm(this.#form);
  }

  /** The same, each number with its unit; as a link says each, and the names that are nobody else's. */
  figures() {
    nameUnits(this.#form, this.units);
    const pairs = readForm(this.#form);
    return { pairs, said: pairs.map((pair) => writeLink([pair]).slice(1)), own: [...this.#standing.own] };
  }

  fieldOf(name) {
    return fieldOf(this.#form, name);
  }

  grow(tree) {
    return grow(tree);
  }

  /**
   * Fill the form from a bow's record: told, [{input, text, shop, stale, since}, …], and typed over it, pairs
   * with their units last.
   * bar hears of what happens from now on: typed(name), answered(answer), again(), left().
   * @returns {(() => void) | null}
   */
  takeBow(bar, told, typed) {
    const before = this.#bow ? null : this.#snapshot();
    if (before) this.#aside = before;
    const system = this.units;
    clearTimeout(this.#saveTimer);
    this.#bow = bar;
    this.#link = null;
    history.replaceState(history.state, "", location.pathname + location.search);
    resetForm(this.#form, this.#example);
    const known = told.filter(({ text, shop }) => text || !shop).map(({ input, text }) => [input, text]);
    const refused = new Set([...fillForm(this.#form, known), ...fillForm(this.#form, typed)].map(([name]) => name));
    this.#kept.goOn(null);
    this.#own([...known, ...typed].map(([name]) => name).filter((name) => !refused.has(name)), { ofBow: true });
    const over = new Set(typed.map(([name]) => name));
    const { units = system } = Object.fromEntries(typed);
    if (units !== system) nameUnits(this.#form, units);
    setUnits(this.#form, system);
    const stale = told.filter(({ input, text, stale }) => text && stale && !over.has(input));
    this.#standing.stale = new Map(stale.map(({ input, since }) => [input, since]));
    this.#unknown = new Set(told.filter(({ input, text }) => !text && !over.has(input)).map(({ input }) => input));
    this.#offers.hidden = true;
    this.#hasResult = false;
    this.#setState("waiting");
    this.#update({ save: false });
    return before && (() => this.#leaveBow(() => this.#restore(before)));
  }

  /** Back to what stood in the form before, or to the example. */
  leaveBow() {
    const before = this.#aside;
    this.#leaveBow(() => {
      if (before) {
        this.#restore(before);
        return;
      }
      resetForm(this.#form, this.#example);
      this.#own([]);
      this.#offerJobs();
      this.#update();
    });
  }

  #leaveBow(goOn) {
    const bar = this.#bow;
    this.#bow = null;
    this.#aside = null;
    bar?.left();
    goOn();
  }

  // Starting -------------------------------------------------------------------

  #addParts() {
    const make = (tag, className, more = {}) =>
      Object.assign(document.createElement(tag), { className, ...more });
    this.#state = make("p", "rb-state", { role: "status" });
    this.#notes = make("ul", "rb-notes", { hidden: true });
    this.#progress = make("progress", "rb-progress", { hidden: true, max: 1, ariaLabel: "Working it out" });
    this.#peek = new FloatingAnswer(this.#form, this.#outcome, () => this.#goToOutcome());
    this.#back = make("button", "rb-back", { type: "button", textContent: "Back to the last figure you typed", hidden: true });
    this.#again = make("button", "rb-again", { type: "button", textContent: "Try again", hidden: true });
    this.#offers = make("div", "rb-kept", { hidden: true });
    this.#form.append(this.#offers);
    this.#outcome.before(this.#peek.button, this.#notes, this.#progress, this.#state, this.#again, this.#back);
  }

  #begin(typed) {
    setUnits(this.#form, recall("units") ?? unitsOf(this.#form));
    if (carriesInputs(location.hash)) {
      this.#takeLink();
      return;
    }
    fitTables(this.#outcome);
    showWhatMatters(this.#form);
    this.#offerJobs();
    if (typed) this.#ownWhatDiffers();
    if (typed || unitsOf(this.#form) === "metric") {
      this.#update({ save: typed });
    } else {
      const { charts, files } = JSON.parse(this.#outcome.dataset.example);
      offerFiles(this.#outcome, files);
      drawCharts(this.#outcome, charts);
      this.#warmUp();
    }
  }

  #takeLink() {
    const { pairs, notes } = readLink(location.hash);
    this.#leaveBow(() => {});
    resetForm(this.#form, this.#example);
    if (pairs.some(([name]) => name !== "units")) fillWhatLinksMean(this.#form);
    setUnits(this.#form, "imperial"); // what a link means must not depend on who opens it
    const { first, again } = splitRepeated(pairs);
    const strangers = fillForm(this.#form, first);
    namePercents(this.#form);
    const job = this.#kept.find(location.hash); // of one's own: it knows what was the example's
    this.#kept.goOn(job);
    this.#own(job?.own ?? first.map(([name]) => name), { fromLink: !job });
    const idle = first.filter(([name]) => fieldOf(this.#form, name)?.hidden);
    this.#strangers = [...strangers.filter(([name]) => !fieldOf(this.#form, name)), ...idle, ...again];
    this.#linkNotes = [...notes, ...strangers.map(([name, text]) => offList(this.#form, name, text)).filter(Boolean)];
    this.#hasResult = false;
    this.#link = location.hash;
    this.#writeAddress();
    this.#setState("waiting");
    this.#update({ save: false });
  }

  /** From now on the figures of these names are the reader's or a sender's, and those of no others. */
  #own(names, { fromLink = false, ofBow = false } = {}) {
    this.#changed = false;
    this.#unknown.clear();
    this.#standing.stale = new Map();
    this.#standing.ofBow = ofBow;
    this.#standing.own = new Set(names.filter((name) => fieldOf(this.#form, name)));
    this.#standing.fromLink = fromLink;
    this.#standing.show([]);
  }

  #ownWhatDiffers() {
    const example = new Map(this.#example);
    this.#own(readForm(this.#form).filter(([name, text]) => example.get(name) !== text).map(([name]) => name));
  }

  #offerJobs() {
    const example = writeLink(this.#example);
    const jobs = this.#kept.list().filter(({ link }) => link !== example);
    const list = document.createElement("ul");
    list.append(...jobs.map((job) => this.#offerOf(job)));
    this.#offers.replaceChildren(...(jobs.length ? ["Your last trials, kept in this browser only:", list] : []));
    this.#offers.hidden = jobs.length === 0;
  }

  #offerOf(job) {
    const when = job.moment ? new Date(job.moment).toLocaleString([], { dateStyle: "medium", timeStyle: "short" }) : "";
    const button = Object.assign(document.createElement("button"), {
      type: "button",
      className: "rb-last",
      textContent: `Take up ${when || "an earlier trial"}`,
    });
    button.addEventListener("click", () => this.#takeUp(job));
    const item = document.createElement("li");
    item.append(button, ` ${job.headline}`);
    return item;
  }

  #takeUp(job) {
    const before = this.#snapshot();
    const { pairs } = readLink(job.link);
    resetForm(this.#form, this.#example);
    fillWhatLinksMean(this.#form);
    fillForm(this.#form, pairs);
    namePercents(this.#form);
    this.#kept.goOn(job);
    this.#own(job.own ?? pairs.map(([name]) => name));
    this.#offerUndo("Taken up.", this.#saved(), () => this.#restore(before));
    this.#update();
  }

  #snapshot() {
    const job = this.#link && this.#kept.find(this.#link);
    const { own, fromLink } = this.#standing;
    return { pairs: readForm(this.#form, { all: true }), own: [...own], fromLink, job };
  }

  #restore({ pairs, own, fromLink, job }) {
    fillForm(this.#form, pairs);
    this.#kept.goOn(job);
    this.#own(own, { fromLink });
    this.#update();
  }

  #empty(names) {
    const before = this.#snapshot();
    const texts = names.filter((name) => fillForm(this.#form, [[name, ""]]).length === 0);
    texts.forEach((name) => this.#standing.own.add(name));
    this.#unknown = new Set([...this.#unknown, ...texts]);
    this.#offerUndo("Emptied.", this.#saved(), () => this.#restore(before));
    this.#toFirstOf(texts);
    this.#update();
  }

  /** Empty every fact of the example, so that none of them can answer for the reader's bow. */
  async #typeOwn() {
    const facts = await this.#facts();
    this.#empty(facts);
  }

  /** The facts that the example's answer leans on; where the engine cannot say, what the form shows first. */
  async #facts() {
    const request = { calculator: this.calculator, pairs: readForm(this.#form), standing: this.#standing.asked() };
    const outcome = await this.#engine.ask(request);
    const shown = [...this.#form.querySelectorAll(".rb-field[data-field]:not([hidden])")];
    const facts = Object.keys(outcome.answer?.standing ?? {});
    return shown.map(({ dataset }) => dataset.field).filter((name) => !outcome.answer || facts.includes(name));
  }

  #toFirstOf(names) {
    fieldOf(this.#form, names[0])?.querySelector("input, select").focus();
  }

  /** Say what was done, at a place, and how to take it back. */
  #offerUndo(text, place, takeBack) {
    const button = Object.assign(document.createElement("button"), { type: "button", className: "rb-undo", textContent: "Undo" });
    button.addEventListener("click", () => {
      place.textContent = "Brought back.";
      takeBack();
    });
    place.replaceChildren(`${text} `, button);
  }

  #saved() {
    return this.#form.querySelector(".rb-saved");
  }

  /** Have the engine ready by the first key, without holding up the page. */
  #warmUp() {
    const idle = window.requestIdleCallback ?? ((task) => setTimeout(task, 1500));
    idle(() => this.#section.isConnected && this.#engine.start(), { timeout: 4000 });
  }

  // Listening ------------------------------------------------------------------

  #listen() {
    const form = this.#form;
    form.addEventListener("submit", (event) => event.preventDefault());
    form.addEventListener("input", ({ target }) => this.#typed(target));
    form.addEventListener("focusout", () => this.#pause());
    form.addEventListener("keydown", (event) => {
      if (event.key === "Enter" && event.target.localName === "input") this.#enter(event);
    });
    form.addEventListener("click", ({ target }) => this.#clicked(target));
    this.#back.addEventListener("click", () => this.#goBack());
    this.#again.addEventListener("click", () => this.#tryAgain());
  }

  #typed(control) {
    if (control.name === "units") {
      this.#switchUnits();
      return;
    }
    this.#typing = control.closest(".rb-field")?.dataset.field ?? null;
    if (this.#typing) this.#isOwn(this.#typing);
    this.#standing.show();
    this.#lastTyped = control;
    this.#back.hidden = false;
    clearTimeout(this.#pauseTimer);
    this.#pauseTimer = setTimeout(() => this.#pause(), PAUSE_MS);
    this.#update();
  }

  #isOwn(name) {
    this.#standing.own.add(name);
    this.#standing.stale.delete(name);
    this.#unknown.delete(name);
    this.#bow?.typed(name);
  }

  #pause() {
    clearTimeout(this.#pauseTimer);
    this.#typing = null;
    this.#showProblems();
  }

  async #enter(event) {
    event.preventDefault();
    this.#unknown.clear();
    this.#pause();
    await this.#update();
    if (this.#problems.length) focusSummary(this.#form);
    else this.#goToOutcome();
  }

  #clicked(target) {
    const button = target.closest("button");
    const field = button?.closest(".rb-field");
    if (!button) return;
    if (button.matches(".rb-add-row")) {
      addRow(field).querySelector("input, select").focus();
    } else if (button.matches(".rb-remove-row")) {
      this.#removeRow(field, button.closest("tr"));
    } else if (button.matches(".rb-copy")) {
      this.#copyLink();
    } else if (button.matches(".rb-reset")) {
      this.#startAgain();
    }
  }

  #removeRow(field, line) {
    const name = field.dataset.field;
    const [, before] = readForm(this.#form).find(([each]) => each === name);
    removeRow(field, line);
    field.querySelector(".rb-removed")?.remove();
    const place = Object.assign(document.createElement("span"), { className: "rb-removed", role: "status" });
    field.querySelector(".rb-add-row").after(place);
    field.querySelector(".rb-add-row").focus();
    this.#isOwn(name);
    this.#offerUndo("Row removed.", place, () => {
      fillForm(this.#form, [[name, before]]);
      this.#toFirstOf([name]);
      this.#update();
    });
    this.#update();
  }

  #startAgain() {
    if (this.#bow) {
      this.#bow.again();
      return;
    }
    const before = this.#snapshot();
    resetForm(this.#form, this.#example);
    this.#kept.goOn(null);
    this.#own([]);
    this.#offerUndo("Back at the example.", this.#saved(), () => this.#restore(before));
    this.#offerJobs();
    this.#update();
  }

  #switchUnits() {
    const system = unitsOf(this.#form);
    nameUnits(this.#form, system === "metric" ? "imperial" : "metric");
    setUnits(this.#form, system);
    remember("units", system);
    this.#update();
  }

  #goToOutcome() {
    document.activeElement?.blur(); // puts a phone's keyboard away
    this.#outcome.scrollIntoView({ block: "start" });
  }

  #goBack() {
    const there = this.#lastTyped.offsetParent; // its row or its field may be gone
    const control = there ? this.#lastTyped : this.#form.querySelector("input, select");
    control.focus({ preventScroll: true });
    control.scrollIntoView({ block: "center" });
  }

  #tryAgain() {
    if (this.#engine.state === "failed") this.#engine.again();
    this.#update({ save: false });
  }

  // Answering ------------------------------------------------------------------

  async #update({ save = true } = {}) {
    showWhatMatters(this.#form);
    const request = {
      calculator: this.#section.dataset.calculator,
      pairs: [...readForm(this.#form), ...this.#strangers],
      standing: this.#standing.asked(),
    };
    if (save) {
      this.#changed = this.#standing.own.size > 0;
      this.#saveSoon();
    }
    this.#section.dataset.state = "busy";
    if (this.#engine.state !== "ready") this.#setState("waiting"); // a start takes longer than a breath
    const linkNotes = this.#linkNotes;
    this.#strangers = [];
    this.#linkNotes = [];
    const result = await this.#engine.run(request, (progress) => this.#showProgress(progress));
    if (!result || !this.#section.isConnected) return;
    this.#progress.hidden = true;
    this.#section.dataset.state = "settled";
    this.#settle();
    if (result.answer) this.#show(result.answer, linkNotes);
    else this.#setState("failed", [result.failed ?? result.error, this.#standsBelow()].join(" ").trim());
  }

  #show(answer, linkNotes) {
    this.#problems = answer.errors;
    this.#answer = answer;
    this.#showProblems();
    this.#showNotes([...linkNotes, ...answer.notes]);
    if (!answer.tree) {
      this.#setState("stale", this.#whyNone());
      this.#standing.show();
      this.#bow?.answered(answer);
      return;
    }
    this.#standing.show(Object.keys(answer.standing));
    const open = openDetails(this.#outcome);
    this.#outcome.replaceChildren(grow(answer.tree));
    reopenDetails(this.#outcome, open);
    this.#outcome.dataset.own = "";
    this.#setState("current");
    this.#announce(this.#peek.show());
    this.#keep();
    fitTables(this.#outcome);
    offerFiles(this.#outcome, answer.files);
    drawCharts(this.#outcome, answer.charts);
    this.#bow?.answered(answer);
  }

  #showProblems() {
    const due = this.#problems.filter(({ field }) =>
      !this.#unknown.has(field) && (field !== this.#typing || this.#shown.has(field)));
    this.#shown = new Set(due.map(({ field }) => field));
    showProblems(this.#form, due);
  }

  #showNotes(notes) {
    this.#notes.hidden = notes.length === 0;
    this.#notes.replaceChildren(
      ...notes.map((note) => Object.assign(document.createElement("li"), { textContent: note })),
    );
  }

  #whyNone() {
    const onlyEmpty = this.#problems.every(({ field }) => this.#unknown.has(field));
    if (!this.#bow && onlyEmpty) return [WORDS.empty, this.#standsBelow()].join(" ");
    return WORDS.stale;
  }

  #standsBelow() {
    if (!this.#hasResult) return "";
    return this.#outcome.dataset.own === undefined ? WORDS.example : WORDS.stale;
  }

  #showProgress(progress) {
    this.#progress.value = progress;
    this.#progress.hidden = false;
  }

  /** waiting, current, stale or failed; before the first answer to a link there is no result to show. */
  #setState(state, sentence = WORDS[state] ?? "") {
    if (state === "current") this.#hasResult = true;
    this.#outcome.dataset.state = this.#hasResult ? state : "none";
    delete document.documentElement.dataset.link;
    clearTimeout(this.#sayTimer);
    this.#state.classList.remove("rb-state--unseen");
    this.#state.textContent = state === "stale" && !this.#hasResult ? "" : sentence;
    this.#again.hidden = state !== "failed";
    if (state !== "current") this.#peek.hide();
  }

  /** Read the verdict out once the reader stops typing. */
  #announce(verdict) {
    this.#state.classList.add("rb-state--unseen");
    this.#sayTimer = setTimeout(() => (this.#state.textContent = verdict), PAUSE_MS);
  }

  // Keeping --------------------------------------------------------------------

  #saveSoon() {
    clearTimeout(this.#saveTimer);
    if (this.#bow) return; // its figures stand in no address
    this.#saveTimer = setTimeout(() => this.#save(), SAVE_AFTER_MS);
  }

  /** Only what was changed and could be answered is kept. */
  #keep() {
    const pairs = readForm(this.#form);
    const link = writeLink(pairs);
    if (this.#bow || !this.#changed || !link || link === writeLink(this.#example)) return;
    const headline = this.#outcome.querySelector(".rb-headline")?.textContent ?? "";
    this.#kept.keep(link, headline, [...this.#standing.own]);
  }

  /** The address; of the example only its units, so that a reload does not make it somebody's. */
  #save() {
    clearTimeout(this.#saveTimer);
    const pairs = readForm(this.#form);
    const link = writeLink(this.#standing.own.size ? pairs : pairs.filter(([name]) => name === "units"));
    if (!link) return;
    this.#link = link;
    this.#writeAddress();
  }

  /** Also behind a jump, so that a reload brings back the figures. */
  #writeAddress() {
    if (!this.#section.isConnected) return;
    history.replaceState(history.state, "", this.#link);
    this.#written.add(location.hash);
  }

  async #copyLink() {
    const link = writeLink(readForm(this.#form));
    if (!link) {
      this.#say(WORDS.tooLong);
      return;
    }
    if (!this.#bow) this.#save();
    const { href } = new URL(link, location.href);
    try {
      await navigator.clipboard.writeText(href);
      this.#say(WORDS.copied);
    } catch {
      this.#say(copyBySelection(href) ? WORDS.copied : WORDS.byHand);
    }
  }

  #say(text) {
    this.#saved().textContent = text;
  }
}

/** What draws them is fetched behind the answer: the same figures stand there as a table. */
async function drawCharts(outcome, charts) {
  if (!charts.length) return;
  const drawing = await import("./charts.mjs");
  drawing.drawCharts(outcome, charts);
}

/** What to say of a link's value that a choice does not offer; nothing for names the engine reports. */
function offList(form, name, text) {
  const field = fieldOf(form, name);
  if (!field) return null;
  const beyond = rowsBeyond(field, text);
  if (beyond) return `The link holds ${beyond} more rows in “${name}” than its table takes; they were left out.`;
  const echo = text.length > 40 ? `${text.slice(0, 40)}…` : text;
  return `The link asks for “${echo}” in “${name}”, which is not on its list; it was left as it stands.`;
}

/** The form's own figures, whatever has been typed into it. */
function readExample(form) {
  const fresh = form.cloneNode(true);
  fresh.reset();
  return readForm(fresh);
}

function openDetails(outcome) {
  return [...outcome.querySelectorAll("details")].map(({ open }) => open);
}

function reopenDetails(outcome, open) {
  outcome.querySelectorAll("details").forEach((details, index) => {
    details.open = open[index] ?? details.open;
  });
}

function copyBySelection(text) {
  const field = Object.assign(document.createElement("textarea"), { value: text, className: "rb-offscreen" });
  document.body.append(field);
  field.select();
  const copied = document.execCommand("copy");
  field.remove();
  return copied;
}
