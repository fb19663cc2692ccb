// Entry of every page. With instant navigation this module lives as long as the visit:
// one engine, one set of window listeners; pages come and go through document$.

import { CalculatorPage } from "./calculator.mjs";
import { drawn } from "./drawn.mjs";
import { Engine, engineFiles } from "./engine.mjs";
import { keepJumps, noteMoves } from "./jumps.mjs";
import { carriesInputs } from "./link.mjs";
import { keepOffline } from "./offline.mjs";
import { recall } from "./memory.mjs";
import { followPaths } from "./path.mjs";
import { startTheme } from "./theme.mjs";

/** @import { BowBar } from "./bow-bar.mjs" */

const ANSWER_FIRST_MS = 5000; // then the rest of the page waits no longer

/** @type {Engine | null} */
let engine = null;
/** @type {HTMLElement | null} */
let section = null;
/** @type {CalculatorPage | null} */
let page = null;
/** @type {BowBar | null} */
let bar = null;
let programsSeen = false;

function visit() {
  if (document.querySelector(".rb-lookup")) import("./lookup.mjs").then(({ equipLookups }) => equipLookups());
  visitAnyPrograms();
  /** @type {HTMLElement | null} */
  const bows = document.querySelector(".rb-bows:not([data-live])");
  if (bows) import("./bows.mjs").then(({ visitBows }) => visitBows(bows, theEngine()));
  /** @type {HTMLElement | null} */
  const owner = document.querySelector(".rb-owner");
  if (owner) import("./owner.mjs").then(({ visitOwner }) => visitOwner(owner, theEngine()));
  /** @type {HTMLElement | null} */
  const copy = document.querySelector(".rb-offline");
  if (copy) import("./copy.mjs").then(({ tellCopy }) => tellCopy(copy));
  followPaths();
  visitAnyTimers();
  /** @type {HTMLElement | null} */
  const found = document.querySelector(".rb-calculator");
  if (found === section || found?.matches("[data-live]")) return; // a script asked for twice runs twice
  section = found;
  page = section && new CalculatorPage(section, theEngine());
  bar?.end();
  bar = null;
  if (page) lendBows(page);
  if (page) lendMarks(page);
}

/**
 * The bar of bows, and what keeps an answer: behind the answer to a link.
 * @param {CalculatorPage} made
 */
async function lendBows(made) {
  await behindAnswer(made);
  const [{ BowBar }, { layOutForPrint }] = await Promise.all([import("./bow-bar.mjs"), import("./bench-sheet.mjs")]);
  if (made !== page) return; // the reader has gone on
  bar = new BowBar(made, theEngine());
  bar.begin();
  layOutForPrint(made, bar);
  /** @type {HTMLElement | null} */
  const offer = document.querySelector(".rb-offer");
  if (offer) import("./offer.mjs").then(({ equipOffer }) => bar && equipOffer(offer, made, bar));
}

/**
 * What marks points on a picture for a calculator, where the page has it.
 * @param {CalculatorPage} made
 */
async function lendMarks(made) {
  /** @type {HTMLElement | null} */
  const bench = document.querySelector(".rb-marking");
  if (!bench) return;
  await behindAnswer(made);
  const { lendMarking } = await import("./marking.mjs");
  if (made === page) lendMarking(bench, made);
}

/** Timers of this page, and those that run and are shown on any. */
function visitAnyTimers() {
  const isAsked = document.querySelector(".rb-timer") || recall("timers");
  if (isAsked) import("./timer.mjs").then(({ visitTimers }) => visitTimers(() => page));
}

function visitAnyPrograms() {
  /** @type {HTMLElement | null} */
  const found = document.querySelector(".rb-programs");
  programsSeen ||= found !== null;
  if (programsSeen) import("./programs.mjs").then(({ visitPrograms }) => visitPrograms(found));
}

function theEngine() {
  engine ??= new Engine(engineFiles());
  return engine;
}

/** @returns {Promise<void>} */
function parsed() {
  return new Promise((resolve) => {
    if (document.readyState !== "loading") resolve();
    else document.addEventListener("DOMContentLoaded", () => resolve(), { once: true });
  });
}

keepJumps(() => bar?.takesBack() || page?.followAddress());
window.addEventListener("hashchange", followPaths);

/**
 * Resolve once the answer to a link has been drawn, however long it takes; at once without a link.
 * @param {CalculatorPage} made
 */
async function behindAnswer(made) {
  if (carriesInputs(location.hash)) await made.answered.then(drawn);
}

/** @param {CalculatorPage} made */
function answered(made) {
  return Promise.race([behindAnswer(made), new Promise((resolve) => setTimeout(resolve, ANSWER_FIRST_MS))]);
}

// A shared link: the engine loads while the page is still arriving, and everything else waits for its answer.
const shared = carriesInputs(location.hash);
if (shared && document.querySelector('meta[name="rebrace-engine"]')) theEngine().start();

// The header stays while pages change below it: an address that is not whole would be read from the next page.
function keepWayToTables() {
  const way = document.querySelector("a.rb-look-up");
  if (way instanceof HTMLAnchorElement) way.href = new URL(way.href).href;
}

parsed().then(async () => {
  keepWayToTables();
  visit();
  if (shared && page) await answered(page);
  const { dataset } = document.documentElement;
  if ("plain" in dataset) dataset.plain = "theme"; // what each means is in the style sheet
  await startTheme();
  if ("plain" in dataset) import("./rest.mjs").then(({ bringRest }) => bringRest(), () => delete dataset.plain);
  noteMoves();
  window.document$?.subscribe(visit);
  import("./arriving.mjs").then(({ lookAfterMoves }) => lookAfterMoves());
  keepOffline();
});
