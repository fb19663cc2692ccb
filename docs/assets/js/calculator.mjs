// One calculator on a page: form to engine to outcome, with its link and its memory.

import { copyText } from "./clipboard.mjs";
import { drawn } from "./drawn.mjs";
import { fitTables } from "./figures.mjs";
import { offerFiles } from "./files.mjs";
import { Folds, reveal } from "./folds.mjs";
import { addRow, controlFrom, controlsIn, fieldOf, fieldsOf, fillForm, fillWhatLinksMean, isUnfinished, nameOf, namePercents, nameUnits, readForm, removeRow, resetForm, rowsBeyond, setUnits, showWhatMatters, unitsOf } from "./form.mjs";
import { KeptJobs } from "./kept.mjs";
import { carriesInputs, readLink, splitRepeated, writeLink } from "./link.mjs";
import { recall, remember } from "./memory.mjs";
import { FloatingAnswer } from "./floating.mjs";
import { around, partOf, sourceOf } from "./parts.mjs";
import { Patience } from "./patience.mjs";
import { focusSummary, showProblems } from "./problems.mjs";
import { isOwnLink, noteOwnLink, Sent } from "./sent.mjs";
import { Standing } from "./standing.mjs";
import { steadily } from "./steady.mjs";
import { grow } from "./tree.mjs";

/** @import { BowBar } from "./bow-bar.mjs" */
/** @import { Engine } from "./engine.mjs" */
/** @import { Filled } from "./record.d.ts" */
/** @import { Answer, Chart, Control, Job, Pair, Problem, TreeNode, UnitSystem } from "./types.d.ts" */

/** @typedef {{pairs: Pair[], own: string[], fromLink: boolean, job: Job | null | undefined}} Snapshot */

const SAVE_AFTER_MS = 300; // browsers refuse an address that changes more often
const SAY_AFTER_MS = 900; // what is read out waits for a pause in typing
const WORDS = {
  waiting: "Working it out…",
  stale: "The result below belongs to the figures before your last change.",
  unfinished: "A figure is not finished yet. The result below belongs to the figures before your last change.",
  example: "What stands below is the worked example's answer, not yours.",
  empty: "No answer of yours yet: some figures are empty. What each is stands below it.",
  copied: "Link copied. It holds all figures of this page.",
  byHand: "Copy the link from the address bar: this browser does not let a page do it.",
  tooLong: "These figures are too long for a link.",
  tooLargeForSquare: "This link is too long for a QR code. Copy it instead.",
  square: "This page with its figures",
};

export class CalculatorPage {
  #section;
  #engine;
  #form;
  #outcome;
  #state = make("p", "rb-state", {});
  #heard = make("p", "rb-spoken", { role: "status" }); // the same for those who listen, once they pause
  #notes = make("ul", "rb-notes", { hidden: true });
  #progress = make("progress", "rb-progress", { hidden: true, max: 1, ariaLabel: "Working it out" });
  #peek;
  #back = make("button", "rb-back", { type: "button", textContent: "Back to the last figure you typed", hidden: true });
  #trouble = make("p", "rb-trouble", { role: "alert", hidden: true });
  #offers = make("div", "rb-kept", { hidden: true });
  #kept;
  #standing;
  #folds;
  #sent;
  #changed = false; // since the example or the link was put in
  /** @type {Control | null} */
  #lastTyped = null;
  #example;
  #hasResult = true; // the worked example stands in the page
  /** @type {Problem[]} */
  #problems = [];
  #patience;
  /** @type {Set<string>} */
  #told = new Set(); // fields whose problem is on the page
  /** @type {string | null} */
  #link = null; // the figures as an address; none while the example stands untouched
  /** @type {Set<string>} */
  #written = new Set(); // addresses of this page's own, to tell a way back from a pasted link
  /** @type {string[]} */
  #linkNotes = [];
  /** @type {Pair[]} */
  #strangers = [];
  /** @type {BowBar | null} */
  #bow = null; // whose record the form is filled from; its bar, which is told what happens
  /** @type {Set<Problem["field"]>} */
  #unknown = new Set(); // to that record or emptied, and not typed yet: no mistake of anybody's
  /** @type {Snapshot | null} */
  #aside = null; // what stood in the form before a bow filled it
  /** @type {Answer | null} */
  #answer = null;
  /** @type {{changed: () => void, answered: () => void} | null} */
  #watcher = null;
  #saveTimer = 0;
  #sayTimer = 0;
  #settle = () => {};

  /**
   * Resolves once something typed or linked has been answered.
   * @type {Promise<void>}
   */
  answered = new Promise((resolve) => (this.#settle = resolve));

  /**
   * @param {HTMLElement} section
   * @param {Engine} engine
   */
  constructor(section, engine) {
    this.#section = section;
    this.#engine = engine;
    this.#form = partOf(section, ".rb-form", HTMLFormElement);
    this.#outcome = partOf(section, ".rb-outcome", HTMLElement);
    const typed = "typed" in this.#form.dataset; // before this script arrived
    if (!typed) this.#form.reset(); // browsers keep what was typed across a reload; the link decides instead
    this.#example = typed ? readExample(this.#form) : readForm(this.#form);
    this.#kept = new KeptJobs(this.calculator);
    this.#sent = new Sent(section, this.#form, () => this.#link && noteOwnLink(this.#link));
    this.#standing = new Standing(this.#form, {
      onConfirm: () => this.#update(),
      onEmpty: (names) => this.#toFirstOf(this.empty(names)),
      onOwn: () => this.#typeOwn(),
    });
    this.#folds = new Folds(this.#form);
    this.#patience = new Patience(this.#form, () => this.#tellProblems());
    this.#peek = new FloatingAnswer(this.#form, this.#outcome, () => this.#goToOutcome());
    this.#form.append(this.#offers);
    const summary = partOf(this.#form, ".rb-problems", HTMLElement); // above the form it would move what is typed in
    const told = [this.#progress, this.#state, this.#heard, this.#trouble, this.#back];
    this.#outcome.before(this.#peek.button, summary, this.#notes, ...told);
    this.#listen();
    if (carriesInputs(location.hash)) this.#beginWithLink(typed);
    else this.#begin(typed);
  }

  /** The address changed under the page: a jump, a way back, or a pasted link. Only that brings figures. */
  followAddress() {
    if (!this.#section.isConnected) return;
    if (carriesInputs(location.hash) && !this.#written.has(location.hash)) {
      this.#leaveBow(() => resetForm(this.#form, this.#example));
      this.#takeLink();
    } else if (this.#link) this.#writeAddress();
  }

  // For the bar of bows ---------------------------------------------------------

  get calculator() {
    return this.#section.dataset.calculator ?? "";
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

  /**
   * The picture that its figures were read from, while one is open. It stands in no link and is kept when asked for.
   * @type {Blob | null}
   */
  picture = null;

  /** What the form holds, as typed. */
  get typed() {
    return readForm(this.#form);
  }

  /** What the form holds, each number with its unit; as a link says each, and the names that are nobody else's. */
  figures() {
    nameUnits(this.#form, this.units);
    const pairs = readForm(this.#form);
    return { pairs, said: pairs.map((pair) => writeLink([pair])?.slice(1) ?? ""), own: this.own };
  }

  /** All figures of the page as an address; null where they are too long for one. */
  get address() {
    const link = writeLink(readForm(this.#form));
    return link ? new URL(link, location.href).href : null;
  }

  /** @param {string} name */
  fieldOf(name) {
    return fieldOf(this.#form, name);
  }

  /** Names of the figures that are nobody else's. */
  get own() {
    return [...this.#standing.own];
  }

  // For what writes into the form with the reader's hand ------------------------

  /**
   * Tell somebody of every change of the form, and of every answer.
   * @param {{changed: () => void, answered: () => void}} watcher
   */
  watch(watcher) {
    this.#watcher = watcher;
  }

  /**
   * A script wrote into these fields for the reader; what is not filled yet is no mistake.
   * @param {string[]} names
   */
  wrote(names) {
    for (const name of names) {
      this.#isOwn(name);
      const field = fieldOf(this.#form, name);
      if (field && isUnfinished(field)) this.#unknown.add(name);
    }
    this.#standing.show();
    this.#update();
  }

  /**
   * Empty fields for figures of the reader's own; returns those that could be.
   * @param {string[]} names
   */
  empty(names) {
    const before = this.#snapshot();
    const texts = names.filter((name) => fillForm(this.#form, [[name, ""]]).length === 0);
    texts.forEach((name) => this.#standing.own.add(name));
    this.#unknown = new Set([...this.#unknown, ...texts]);
    this.#offerUndo("Emptied.", this.#saved(), () => this.#restore(before));
    this.#update();
    return texts;
  }

  /**
   * What the calculator finds beside its answer, once no answer is due; null where it cannot say.
   * @param {Record<string, unknown>} asked
   */
  async find(asked) {
    const { answer } = await this.#engine.ask({ calculator: this.calculator, find: asked });
    return answer ?? null;
  }

  /** @param {TreeNode[]} tree */
  grow(tree) {
    return grow(tree);
  }

  /**
   * Fill the form from what a bow's record tells, and from what was typed over it, pairs with their units last.
   * bar hears of what happens from now on: typed(name), answered(answer), again(), left().
   * @param {BowBar} bar
   * @param {Filled[]} told
   * @param {Pair[]} typed
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
    /** @type {Pair[]} */
    const known = told.filter(({ text, shop }) => text || !shop).map(({ input, text }) => [input, text]);
    const refused = new Set([...fillForm(this.#form, known), ...fillForm(this.#form, typed)].map(([name]) => name));
    this.#kept.goOn(null);
    this.#own([...known, ...typed].map(([name]) => name).filter((name) => !refused.has(name)), { ofBow: true });
    const over = new Set(typed.map(([name]) => name));
    const { units = system } = /** @type {{units?: UnitSystem}} */ (Object.fromEntries(typed));
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

  /** @param {() => void} goOn */
  #leaveBow(goOn) {
    const bar = this.#bow;
    this.#bow = null;
    this.#aside = null;
    bar?.left();
    goOn();
  }

  // Starting -------------------------------------------------------------------

  /**
   * The link is taken up in a task of its own, and what it asks in another: what is pressed meanwhile comes first.
   * @param {boolean} typed
   */
  #beginWithLink(typed) {
    this.#link = location.hash;
    this.#outcome.dataset.state = "none";
    setTimeout(() => {
      if (!carriesInputs(location.hash)) this.#writeAddress(); // a jump in between; a link is the newer one
      if (typed) resetForm(this.#form, this.#example);
      this.#takeLink();
      this.#section.dataset.live = "";
    });
  }

  /** @param {boolean} typed */
  #begin(typed) {
    this.#section.dataset.live = "";
    setUnits(this.#form, recall("units") ?? unitsOf(this.#form));
    fitTables(this.#outcome);
    showWhatMatters(this.#form);
    this.#offerJobs();
    if (typed) this.#ownWhatDiffers();
    if (typed || unitsOf(this.#form) === "metric") {
      this.#update({ save: typed });
    } else {
      /** @type {Answer} */
      const { charts, files } = JSON.parse(this.#outcome.dataset.example ?? "");
      offerFiles(this.#outcome, files);
      drawCharts(this.#outcome, charts);
      this.#warmUp();
    }
  }

  /** Of a form that holds the example. */
  #takeLink() {
    const { pairs, notes } = readLink(location.hash);
    const hasFigures = pairs.some(([name]) => name !== "units");
    if (hasFigures) fillWhatLinksMean(this.#form);
    setUnits(this.#form, "imperial"); // what a link means must not depend on who opens it
    const { first, again } = splitRepeated(pairs);
    const strangers = fillForm(this.#form, first);
    namePercents(this.#form);
    const job = this.#kept.find(location.hash); // of one's own: it knows what was the example's
    this.#kept.goOn(job);
    this.#own(job?.own ?? first.map(([name]) => name), { fromLink: !job });
    this.#sent.show(hasFigures && !job && !isOwnLink(location.hash));
    const idle = first.filter(([name]) => fieldOf(this.#form, name)?.hidden);
    this.#strangers = [...strangers.filter(([name]) => !fieldOf(this.#form, name)), ...idle, ...again];
    this.#linkNotes = [...notes, ...strangers.map(([name, text]) => offList(this.#form, name, text)).filter((note) => note !== null)];
    this.#hasResult = false;
    this.#link = location.hash;
    this.#writeAddress();
    this.#setState("waiting");
    setTimeout(() => this.#update({ save: false }));
  }

  /**
   * From now on the figures of these names are the reader's or a sender's, and those of no others.
   * @param {string[]} names
   * @param {{fromLink?: boolean, ofBow?: boolean}} whose
   */
  #own(names, { fromLink = false, ofBow = false } = {}) {
    this.#changed = false;
    this.#sent.show(false);
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

  /** @param {Job} job */
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

  /** @param {Job} job */
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

  /** @returns {Snapshot} */
  #snapshot() {
    const job = this.#link ? this.#kept.find(this.#link) : null;
    const { own, fromLink } = this.#standing;
    return { pairs: readForm(this.#form, { all: true }), own: [...own], fromLink, job };
  }

  /** @param {Snapshot} before */
  #restore({ pairs, own, fromLink, job }) {
    fillForm(this.#form, pairs);
    this.#kept.goOn(job);
    this.#own(own, { fromLink });
    this.#update();
  }

  /** Empty every fact of the example, so that none of them can answer for the reader's bow. */
  async #typeOwn() {
    const facts = await this.#facts();
    this.#toFirstOf(this.empty(facts));
  }

  /** The facts that the example's answer leans on; where the engine cannot say, what the form shows first. */
  async #facts() {
    const outcome = await this.#engine.ask(this.#request());
    const answer = /** @type {Answer | undefined} */ (outcome.answer);
    const shown = fieldsOf(this.#form).filter(({ hidden }) => !hidden).map(nameOf);
    return answer ? shown.filter((name) => name in answer.standing) : shown;
  }

  /** @param {string[]} names */
  #toFirstOf(names) {
    const field = fieldOf(this.#form, names[0]);
    if (!field) return;
    reveal(field);
    controlsIn(field)[0].focus();
  }

  /**
   * Say what was done, at a place, and how to take it back.
   * @param {string} text
   * @param {Element} place
   * @param {() => void} takeBack
   */
  #offerUndo(text, place, takeBack) {
    const button = Object.assign(document.createElement("button"), { type: "button", className: "rb-undo", textContent: "Undo" });
    button.addEventListener("click", () => {
      place.textContent = "Brought back.";
      takeBack();
    });
    place.replaceChildren(`${text} `, button);
  }

  #saved() {
    return partOf(this.#form, ".rb-saved", HTMLElement);
  }

  /** Have the engine ready by the first key, without holding up the page. */
  #warmUp() {
    const idle = window.requestIdleCallback ?? ((/** @type {() => void} */ task) => setTimeout(task, 1500));
    idle(() => this.#section.isConnected && this.#engine.start(), { timeout: 4000 });
  }

  // Listening ------------------------------------------------------------------

  #listen() {
    const form = this.#form;
    form.addEventListener("submit", (event) => event.preventDefault());
    form.addEventListener("input", (event) => this.#typed(controlFrom(event)));
    form.addEventListener("keydown", (event) => {
      if (event.key === "Enter" && sourceOf(event)?.localName === "input") this.#enter(event);
    });
    form.addEventListener("click", (event) => this.#clicked(sourceOf(event)?.closest("button")));
    this.#back.addEventListener("click", () => this.#goBack());
  }

  /** @param {Control | null} control */
  #typed(control) {
    if (!control) return;
    if (control.name === "units") {
      this.#switchUnits();
      return;
    }
    this.#isOwn(nameOf(around(control, ".rb-field", HTMLElement)));
    steadily(() => {
      this.#standing.show();
      this.#markFolds();
      this.#back.hidden = false;
    });
    this.#lastTyped = control;
    this.#update();
  }

  /** @param {string} name */
  #isOwn(name) {
    this.#standing.own.add(name);
    this.#standing.stale.delete(name);
    this.#unknown.delete(name);
    this.#bow?.typed(name);
  }

  /** @param {Event} event */
  async #enter(event) {
    event.preventDefault();
    this.#unknown.clear();
    await this.#update();
    this.#patience.end();
    if (this.#problems.length) focusSummary(this.#section);
    else this.#goToOutcome();
  }

  /** @param {HTMLButtonElement | null | undefined} button */
  #clicked(button) {
    if (!button) return;
    if (button.matches(".rb-add-row")) {
      controlsIn(addRow(around(button, ".rb-field", HTMLElement)))[0].focus();
    } else if (button.matches(".rb-remove-row")) {
      this.#removeRow(around(button, ".rb-field", HTMLElement), around(button, "tr", HTMLTableRowElement));
    } else if (button.matches(".rb-copy")) {
      this.#copyLink();
    } else if (button.matches(".rb-show-square")) {
      this.#showSquare();
    } else if (button.matches(".rb-reset")) {
      this.#startAgain();
    }
  }

  /**
   * @param {HTMLElement} field
   * @param {HTMLTableRowElement} line
   */
  #removeRow(field, line) {
    const name = nameOf(field);
    const before = readForm(this.#form).filter(([each]) => each === name);
    const add = partOf(field, ".rb-add-row", HTMLElement);
    removeRow(field, line);
    field.querySelector(".rb-removed")?.remove();
    const place = make("span", "rb-removed", { role: "status" });
    add.after(place);
    add.focus();
    this.#isOwn(name);
    this.#offerUndo("Row removed.", place, () => {
      fillForm(this.#form, before);
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
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur(); // puts a phone's keyboard away
    partOf(this.#outcome, ".rb-answer", HTMLElement).scrollIntoView({ block: "start" });
  }

  #goBack() {
    const there = this.#lastTyped?.offsetParent ? this.#lastTyped : null; // its row or its field may be gone
    const control = there ?? controlsIn(this.#form)[0];
    reveal(control);
    control.focus({ preventScroll: true });
    control.scrollIntoView({ block: "center" });
  }

  #tryAgain() {
    this.#engine.again();
    this.#update({ save: false });
    this.#lastTyped?.focus({ preventScroll: true }); // the button goes
  }

  // Answering ------------------------------------------------------------------

  /**
   * What the form asks, with pairs that found no place in it.
   * @param {Pair[]} strangers
   */
  #request(strangers = []) {
    const pairs = [...readForm(this.#form), ...strangers];
    return { calculator: this.calculator, pairs, standing: this.#standing.asked() };
  }

  async #update({ save = true } = {}) {
    showWhatMatters(this.#form);
    this.#watcher?.changed();
    const request = this.#request(this.#strangers);
    if (save) {
      this.#changed = this.#standing.own.size > 0;
      this.#saveSoon();
    }
    this.#section.dataset.state = "busy";
    if (this.#engine.state !== "ready") this.#setState("waiting"); // a start takes longer than a breath
    const linkNotes = this.#linkNotes;
    this.#strangers = [];
    this.#linkNotes = [];
    const result = await this.#engine.run(request, (progress) => this.#showProgress(progress),
      (sentence) => this.#showTrouble(sentence));
    if (!result || !this.#section.isConnected) return;
    this.#progress.hidden = true;
    this.#showTrouble(result.failed ?? result.error ?? "");
    this.#section.dataset.state = "settled";
    this.#settle();
    if (result.answer) steadily(() => this.#show(/** @type {Answer} */ (result.answer), linkNotes));
    else this.#fail();
  }

  #fail() {
    this.#answer = null;
    this.#setState("failed", this.#standsBelow());
  }

  /**
   * Why nothing is worked out, at what was typed last: nowhere else would it be seen there.
   * @param {string} sentence
   */
  #showTrouble(sentence) {
    if ((this.#trouble.firstChild?.textContent ?? "") === sentence) return;
    const button = make("button", "rb-again", { type: "button", textContent: "Try again" });
    button.addEventListener("click", () => this.#tryAgain());
    const field = this.#lastTyped?.offsetParent ? this.#lastTyped.closest(".rb-field") : null;
    steadily(() => {
      if (field) field.append(this.#trouble);
      else this.#state.after(this.#trouble);
      this.#trouble.hidden = !sentence;
      this.#trouble.replaceChildren(...(sentence ? [sentence, " ", button] : []));
    });
  }

  /**
   * @param {Answer} answer
   * @param {string[]} linkNotes
   */
  #show(answer, linkNotes) {
    this.#problems = answer.errors;
    this.#answer = answer;
    this.#folds.write(answer.folds);
    this.#tellProblems();
    this.#showNotes([...linkNotes, ...answer.notes]);
    if (!answer.tree) {
      this.#sent.fold(false); // what is wrong stands in the form
      this.#standing.show();
      this.#watcher?.answered();
      this.#bow?.answered(answer);
      return;
    }
    this.#standing.show(Object.keys(answer.standing));
    this.#markFolds();
    const open = openDetails(this.#outcome);
    this.#outcome.replaceChildren(grow(answer.tree));
    reopenDetails(this.#outcome, open);
    this.#outcome.dataset.own = "";
    this.#setState("current");
    this.#sent.bringUp();
    this.#announce(this.#peek.show());
    this.#keep();
    fitTables(this.#outcome);
    offerFiles(this.#outcome, answer.files);
    drawCharts(this.#outcome, answer.charts);
    this.#watcher?.answered();
    this.#bow?.answered(answer);
  }

  #tellProblems() {
    const due = this.#patience.due(this.#problems.filter(({ field }) => !this.#unknown.has(field)));
    this.#told = new Set(due.map(({ field }) => field ?? ""));
    steadily(() => {
      showProblems(this.#section, due);
      this.#markFolds();
    });
    const isRefused = this.#answer && !this.#answer.tree;
    if (isRefused && this.#section.dataset.state === "settled") this.#setState("stale", this.#whyNone(due.length === 0));
  }

  #markFolds() {
    const { own, lent, fromLink, ofBow } = this.#standing;
    const names = this.#problems.map(({ field }) => field ?? "");
    this.#folds.mark({
      own,
      lent,
      wrong: this.#told,
      empty: new Set(names.filter((name) => this.#unknown.has(name))),
      whose: ofBow ? "of this bow" : fromLink ? "from the link" : "of yours",
    });
  }

  /** @param {string[]} notes */
  #showNotes(notes) {
    this.#notes.hidden = notes.length === 0;
    this.#notes.replaceChildren(
      ...notes.map((note) => Object.assign(document.createElement("li"), { textContent: note })),
    );
  }

  /** @param {boolean} isNoneTold */
  #whyNone(isNoneTold) {
    const onlyEmpty = this.#problems.every(({ field }) => this.#unknown.has(field));
    if (!this.#bow && onlyEmpty) return [WORDS.empty, this.#standsBelow()].join(" ");
    return isNoneTold ? WORDS.unfinished : WORDS.stale;
  }

  #standsBelow() {
    if (!this.#hasResult) return "";
    return this.#outcome.dataset.own === undefined ? WORDS.example : WORDS.stale;
  }

  /** @param {number} progress */
  #showProgress(progress) {
    this.#progress.value = progress;
    this.#progress.hidden = false;
  }

  /**
   * Before the first answer to a link there is no result to show.
   * @param {"waiting" | "current" | "stale" | "failed"} state
   * @param {string} sentence
   */
  #setState(state, sentence = state === "waiting" ? WORDS.waiting : "") {
    if (state === "current") this.#hasResult = true;
    this.#outcome.dataset.state = this.#hasResult ? state : "none";
    this.#section.toggleAttribute("data-unanswered", !this.#hasResult);
    delete document.documentElement.dataset.link;
    this.#state.textContent = state === "stale" && !this.#hasResult ? "" : sentence;
    this.#announce(this.#state.textContent);
    if (state === "stale" && sentence === WORDS.unfinished) this.#peek.date();
    else if (state !== "current") this.#peek.hide();
  }

  /**
   * Read a state or a verdict out once the reader stops typing.
   * @param {string} text
   */
  #announce(text) {
    clearTimeout(this.#sayTimer);
    this.#sayTimer = setTimeout(() => (this.#heard.textContent = text), SAY_AFTER_MS);
  }

  // Keeping --------------------------------------------------------------------

  #saveSoon() {
    clearTimeout(this.#saveTimer);
    this.#square().replaceChildren(); // it shows what the figures were
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
    noteOwnLink(link);
    this.#writeAddress();
  }

  /** Also behind a jump, so that a reload brings back the figures. */
  #writeAddress() {
    if (!this.#section.isConnected) return;
    history.replaceState(history.state, "", this.#link);
    this.#written.add(location.hash);
  }

  async #copyLink() {
    const href = this.#wholeLink();
    if (href) this.#say(await copyText(href) ? WORDS.copied : WORDS.byHand);
  }

  async #showSquare() {
    const href = this.#wholeLink();
    if (!href) return;
    const { fitsSquare, squareOf } = await import("./qr.mjs");
    const fits = fitsSquare(href);
    this.#say(fits ? "" : WORDS.tooLargeForSquare);
    this.#square().replaceChildren(...fits ? [squareOf(href, WORDS.square)] : []);
  }

  #square() {
    return partOf(this.#form, ".rb-link-square", HTMLElement);
  }

  /** The same where they fit into one, which else has been said. */
  #wholeLink() {
    const { address } = this;
    if (!address) this.#say(WORDS.tooLong);
    else if (!this.#bow) this.#save();
    return address;
  }

  /** @param {string} text */
  #say(text) {
    this.#saved().textContent = text;
  }
}

/**
 * @template {keyof HTMLElementTagNameMap} Tag
 * @param {Tag} tag
 * @param {string} className
 * @param {Partial<HTMLElementTagNameMap[Tag]>} more
 */
function make(tag, className, more) {
  return Object.assign(document.createElement(tag), { className }, more);
}

/** @type {Promise<typeof import("./charts.mjs")> | null} */
let chartist = null;

/**
 * What draws them is fetched behind the answer: the same figures stand there as a table.
 * @param {HTMLElement} outcome
 * @param {Chart[]} charts
 */
async function drawCharts(outcome, charts) {
  if (!charts.length) return;
  chartist ??= drawn().then(() => import("./charts.mjs"));
  (await chartist).drawCharts(outcome, charts);
}

/**
 * What to say of a link's value that a choice does not offer; nothing for names the engine reports.
 * @param {HTMLFormElement} form
 * @param {string} name
 * @param {string} text
 */
function offList(form, name, text) {
  const field = fieldOf(form, name);
  if (!field) return null;
  const beyond = rowsBeyond(field, text);
  if (beyond) return `The link holds ${beyond} more rows in “${name}” than its table takes; they were left out.`;
  const echo = text.length > 40 ? `${text.slice(0, 40)}…` : text;
  return `The link asks for “${echo}” in “${name}”, which is not on its list; it was left as it stands.`;
}

/**
 * The form's own figures, whatever has been typed into it.
 * @param {HTMLFormElement} form
 */
function readExample(form) {
  const unseen = document.implementation.createHTMLDocument(); // where no picture of the form is fetched
  const fresh = unseen.importNode(form, true);
  for (const each of fresh.querySelectorAll("input")) { // a form there cannot be reset
    each.value = each.defaultValue;
    each.checked = each.defaultChecked;
  }
  return readForm(fresh);
}

/** @param {Element} outcome */
function openDetails(outcome) {
  return [...outcome.querySelectorAll("details")].map(({ open }) => open);
}

/**
 * @param {Element} outcome
 * @param {boolean[]} open
 */
function reopenDetails(outcome, open) {
  outcome.querySelectorAll("details").forEach((details, index) => {
    details.open = open[index] ?? details.open;
  });
}
