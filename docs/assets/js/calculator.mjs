// One calculator on a page: form to engine to outcome, with its link and its memory.

import { drawCharts } from "./charts.mjs";
import { offerFiles } from "./files.mjs";
import { addRow, fieldOf, fillForm, fillWhatLinksMean, namePercents, nameUnits, readForm, removeRow, resetForm, rowsBeyond, setUnits, showWhatMatters, unitsOf } from "./form.mjs";
import { carriesInputs, readLink, splitRepeated, writeLink } from "./link.mjs";
import { recall, remember } from "./memory.mjs";
import { focusSummary, showProblems } from "./problems.mjs";
import { grow } from "./tree.mjs";

const SAVE_AFTER_MS = 300; // browsers refuse an address that changes more often
const PAUSE_MS = 900; // a half-typed number is not yet a mistake
const WORDS = {
  waiting: "Working it out…",
  stale: "The result below belongs to the figures before your last change.",
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
  #lastTyped = null;
  #example;
  #hasResult = true; // the worked example stands in the page
  #problems = [];
  #shown = new Set(); // fields whose problem is on the page
  #typing = null; // field that is being typed in; its problems wait
  #linkNotes = [];
  #strangers = [];
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
    this.#form.reset(); // browsers keep what was typed across a reload; the link decides instead
    this.#example = readForm(this.#form);
    this.#addParts();
    this.#listen();
    this.#begin();
  }

  /** The address changed under the page, for example by a pasted link. */
  takeLink() {
    if (this.#section.isConnected && carriesInputs(location.hash)) this.#takeLink();
  }

  // Starting -------------------------------------------------------------------

  #addParts() {
    const make = (tag, className, more = {}) =>
      Object.assign(document.createElement(tag), { className, ...more });
    this.#state = make("p", "rb-state", { role: "status" });
    this.#notes = make("ul", "rb-notes", { hidden: true });
    this.#progress = make("progress", "rb-progress", { hidden: true, max: 1, ariaLabel: "Working it out" });
    this.#peek = make("button", "rb-peek", { type: "button", hidden: true });
    this.#back = make("button", "rb-back", { type: "button", textContent: "Back to the last figure you typed", hidden: true });
    this.#outcome.before(this.#peek, this.#notes, this.#progress, this.#state, this.#back);
    new IntersectionObserver(([{ isIntersecting }]) => {
      this.#peek.classList.toggle("rb-peek--resting", isIntersecting);
    }).observe(this.#outcome);
  }

  #begin() {
    setUnits(this.#form, recall("units") ?? unitsOf(this.#form));
    if (carriesInputs(location.hash)) {
      this.#takeLink();
      return;
    }
    showWhatMatters(this.#form);
    this.#offerLastJob();
    if (unitsOf(this.#form) === "metric") {
      this.#update();
    } else {
      const { charts, files } = JSON.parse(this.#outcome.dataset.example);
      offerFiles(this.#outcome, files);
      drawCharts(this.#outcome, charts);
      this.#warmUp();
    }
  }

  #takeLink() {
    const { pairs, notes } = readLink(location.hash);
    resetForm(this.#form, this.#example);
    fillWhatLinksMean(this.#form);
    setUnits(this.#form, "imperial"); // what a link means must not depend on who opens it
    const { first, again } = splitRepeated(pairs);
    const strangers = fillForm(this.#form, first);
    namePercents(this.#form);
    const idle = first.filter(([name]) => fieldOf(this.#form, name)?.hidden);
    this.#strangers = [...strangers.filter(([name]) => !fieldOf(this.#form, name)), ...idle, ...again];
    this.#linkNotes = [...notes, ...strangers.map(([name, text]) => offList(this.#form, name, text)).filter(Boolean)];
    this.#hasResult = false;
    this.#setState("waiting");
    this.#update({ save: false });
  }

  #offerLastJob() {
    const last = recall(`job.${this.#section.dataset.calculator}`);
    if (!last || last === writeLink(this.#example)) return;
    const button = Object.assign(document.createElement("button"), {
      type: "button",
      className: "rb-last",
      textContent: "Take up your last figures",
    });
    button.addEventListener("click", () => {
      fillWhatLinksMean(this.#form);
      fillForm(this.#form, readLink(last).pairs);
      namePercents(this.#form);
      this.#say("");
      this.#update();
    });
    this.#form.querySelector(".rb-saved").replaceChildren(button);
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
    this.#peek.addEventListener("click", () => this.#goToOutcome());
    this.#back.addEventListener("click", () => this.#goBack());
  }

  #typed(control) {
    if (control.name === "units") {
      this.#switchUnits();
      return;
    }
    this.#typing = control.closest(".rb-field")?.dataset.field ?? null;
    this.#lastTyped = control;
    this.#back.hidden = false;
    clearTimeout(this.#pauseTimer);
    this.#pauseTimer = setTimeout(() => this.#pause(), PAUSE_MS);
    this.#update();
  }

  #pause() {
    clearTimeout(this.#pauseTimer);
    this.#typing = null;
    this.#showProblems();
  }

  async #enter(event) {
    event.preventDefault();
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
      removeRow(field, button.closest("tr"));
      field.querySelector(".rb-add-row").focus();
      this.#update();
    } else if (button.matches(".rb-copy")) {
      this.#copyLink();
    } else if (button.matches(".rb-reset")) {
      resetForm(this.#form, this.#example);
      this.#say("");
      this.#update();
    }
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

  // Answering ------------------------------------------------------------------

  async #update({ save = true } = {}) {
    showWhatMatters(this.#form);
    const request = {
      calculator: this.#section.dataset.calculator,
      pairs: [...readForm(this.#form), ...this.#strangers],
    };
    if (save) this.#saveSoon();
    this.#section.dataset.state = "busy";
    const linkNotes = this.#linkNotes;
    this.#strangers = [];
    this.#linkNotes = [];
    const result = await this.#engine.run(request, (progress) => this.#showProgress(progress));
    if (!result || !this.#section.isConnected) return;
    this.#progress.hidden = true;
    this.#section.dataset.state = "settled";
    this.#settle();
    if (result.answer) this.#show(result.answer, linkNotes);
    else this.#setState("failed", result.failed ?? result.error);
  }

  #show(answer, linkNotes) {
    this.#problems = answer.errors;
    this.#showProblems();
    this.#showNotes([...linkNotes, ...answer.notes]);
    if (!answer.tree) {
      this.#setState("stale");
      return;
    }
    const open = openDetails(this.#outcome);
    this.#outcome.replaceChildren(grow(answer.tree));
    reopenDetails(this.#outcome, open);
    this.#setState("current");
    this.#announce(this.#outcome.querySelector(".rb-headline")?.textContent ?? "");
    offerFiles(this.#outcome, answer.files);
    drawCharts(this.#outcome, answer.charts);
  }

  #showProblems() {
    const due = this.#problems.filter(({ field }) => field !== this.#typing || this.#shown.has(field));
    this.#shown = new Set(due.map(({ field }) => field));
    showProblems(this.#form, due);
  }

  #showNotes(notes) {
    this.#notes.hidden = notes.length === 0;
    this.#notes.replaceChildren(
      ...notes.map((note) => Object.assign(document.createElement("li"), { textContent: note })),
    );
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
    const covers = this.#peek.hidden && state === "current";
    this.#peek.hidden = state !== "current";
    if (covers && this.#form.contains(document.activeElement)) document.activeElement.scrollIntoView({ block: "nearest" });
  }

  /** Read the headline out once the reader stops typing, and show it while the outcome is out of sight. */
  #announce(headline) {
    this.#peek.textContent = headline;
    this.#state.classList.add("rb-state--unseen");
    this.#sayTimer = setTimeout(() => (this.#state.textContent = headline), PAUSE_MS);
  }

  // Keeping --------------------------------------------------------------------

  #saveSoon() {
    clearTimeout(this.#saveTimer);
    this.#saveTimer = setTimeout(() => this.#save(), SAVE_AFTER_MS);
  }

  #save() {
    clearTimeout(this.#saveTimer);
    const link = writeLink(readForm(this.#form));
    if (!link) return null;
    remember(`job.${this.#section.dataset.calculator}`, link);
    if (this.#section.isConnected) history.replaceState(history.state, "", link);
    return link;
  }

  async #copyLink() {
    if (!this.#save()) {
      this.#say(WORDS.tooLong);
      return;
    }
    try {
      await navigator.clipboard.writeText(location.href);
      this.#say(WORDS.copied);
    } catch {
      this.#say(copyBySelection(location.href) ? WORDS.copied : WORDS.byHand);
    }
  }

  #say(text) {
    this.#form.querySelector(".rb-saved").textContent = text;
  }
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
