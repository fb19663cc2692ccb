// Timers for waits at the bench. Each is kept by the moment at which it is over, so that it survives a reload and
// tells the truth afterwards. It sounds only while a page is open: nobody else would wake it.

import { chosenBow, isBowId } from "./chosen.mjs";
import { node } from "./elements.mjs";
import { recall, remember } from "./memory.mjs";
import { partOf, partsOf, sourceOf } from "./parts.mjs";
import { newId, openStore } from "./store.mjs";

/** @import { CalculatorPage } from "./calculator.mjs" */

/**
 * @typedef Timer a wait that was begun
 * @property {string} id
 * @property {string} title
 * @property {string} after what to do once it is over
 * @property {string} of the bow, as it is called; empty where none was chosen
 * @property {number} until [ms] of the clock
 * @property {"runs" | "sounded" | "silent" | "missed"} state missed: over while no page was open
 */

const KEY = "timers";
const TICK_MS = 1000;
const LATE_MS = 90_000; // a page that is awake comes by sooner, even in a tab behind others
const MOST = 40;
const MINUTE_MS = 60_000;
const BEEPS = [0, 0.5, 1];
const WORDS = {
  length: "Set how long: from one minute to 14 days.",
  noAnswer: "There is no time to count yet: the answer above gives no minutes.",
  untouched: "Tap this page once, or it cannot sound.",
  silent: "It could not sound: nobody had touched the page.",
};

/** @type {() => CalculatorPage | null} */
let calculator = () => null;
/** @type {AudioContext | null} */
let audio = null;
let ticking = 0;
const corner = node("div", { class: "rb-timer-over", role: "alert" });

/**
 * Take up the timers of a page, and go on with those that run; page: tells the calculator on it, if there is one.
 * @param {() => CalculatorPage | null} page
 */
export function visitTimers(page) {
  calculator = page;
  for (const section of partsOf(document, ".rb-timer:not([data-live])", HTMLElement)) {
    section.dataset.live = "";
    section.addEventListener("click", (event) => pressed(section, sourceOf(event)?.closest("button")));
    for (const button of partsOf(section, ".rb-timer-start button", HTMLButtonElement)) button.disabled = false;
  }
  if (!ticking) {
    ticking = window.setInterval(tick, TICK_MS);
    window.addEventListener("storage", tick);
    document.addEventListener("pointerdown", allowSound, true);
    corner.addEventListener("click", (event) => pressed(corner, sourceOf(event)?.closest("button")));
    for (const each of timers()) if (each.state === "runs" && each.until <= Date.now()) change(each.id, "missed");
  }
  document.body.append(corner);
  tick();
}

/**
 * @param {HTMLElement} section
 * @param {HTMLButtonElement | null | undefined} button
 */
async function pressed(section, button) {
  if (!button) return;
  const { end } = button.dataset;
  if (end) {
    keep(timers().filter(({ id }) => id !== end));
  } else {
    allowSound();
    const starter = button.closest(".rb-timer-start");
    if (starter instanceof HTMLElement) await start(section, starter);
  }
  tick();
}

/**
 * @param {HTMLElement} section
 * @param {HTMLElement} starter
 */
async function start(section, starter) {
  const { title = "", after = "", result } = starter.dataset;
  const seconds = result ? secondsOf(result) : typedIn(starter);
  const isCounted = seconds !== null && seconds >= 60 && seconds <= Number(section.dataset.longest);
  partOf(section, ".rb-timer-said", HTMLElement).textContent = isCounted ? "" : result ? WORDS.noAnswer : WORDS.length;
  if (!isCounted) return;
  const until = Date.now() + seconds * 1000;
  keep([...timers(), { id: newId(), title, after, of: await nameOfBow(), until, state: "runs" }]);
}

/**
 * What the calculator on the page answers to a result, while its answer stands.
 * @param {string} result
 */
function secondsOf(result) {
  const found = calculator()?.answer?.kept.results?.find(([id]) => id === result);
  return found && typeof found[1] === "number" ? found[1] : null;
}

/** @param {HTMLElement} starter */
function typedIn(starter) {
  const fields = partsOf(starter, "input", HTMLInputElement);
  if (!fields.length) return Number(starter.dataset.seconds);
  if (fields.some(({ validity }) => !validity.valid)) return null;
  const [hours, minutes] = fields.map(({ valueAsNumber }) => valueAsNumber || 0);
  return hours * 3600 + minutes * 60;
}

/** What the bow is called whose page is open, or that is chosen. */
async function nameOfBow() {
  const named = location.hash.slice(1);
  const bow = isBowId(named) ? named : chosenBow();
  if (!bow) return "";
  const store = await openStore();
  const head = await store.head(bow).catch(() => null);
  store.close();
  return head?.title ?? "";
}

// Counting ---------------------------------------------------------------------

function tick() {
  const now = Date.now();
  for (const { id, state, until } of timers()) {
    if (state === "runs" && until <= now) change(id, now - until > LATE_MS ? "missed" : sound() ? "sounded" : "silent");
  }
  show(now);
}

/** @param {number} now */
function show(now) {
  const all = timers();
  const over = all.filter(({ state }) => state !== "runs");
  const isDeaf = all.length > over.length && navigator.userActivation?.hasBeenActive === false;
  const places = partsOf(document, ".rb-timers", HTMLElement);
  for (const place of places) draw(place, [...all.map((each) => line(each, now)), ...(isDeaf ? [[WORDS.untouched, ""]] : [])]);
  draw(corner, places.length ? [] : over.map((each) => line(each, now)));
}

/**
 * Draw lines, each a text and the id of a timer, where they are not what stands there.
 * @param {HTMLElement} place
 * @param {string[][]} lines
 */
function draw(place, lines) {
  const now = JSON.stringify(lines);
  if (place.dataset.shown === now) return;
  place.dataset.shown = now;
  const tag = place.localName === "ul" ? "li" : "p";
  place.replaceChildren(...lines.map(([text, id]) => node(tag, {}, `${text} `,
    ...(id ? [node("button", { type: "button", "data-end": id }, "Remove")] : []))));
}

/**
 * @param {Timer} timer
 * @param {number} now
 */
function line({ id, title, after, of, until, state }, now) {
  const name = of ? `${title}, ${of}` : title;
  const clock = new Date(until).toLocaleString("en-GB", { weekday: "short", hour: "2-digit", minute: "2-digit" });
  if (state === "runs") return [`${name}: ${left(until - now)} left, until ${clock}.`, id];
  const minutes = Math.floor((now - until) / MINUTE_MS);
  const since = minutes ? ` ${minutes} min ago` : "";
  const how = state === "missed" ? ", while no page of this site was open and awake" : "";
  const deaf = state === "silent" ? ` ${WORDS.silent}` : "";
  return [`${name}: over since ${clock}${since}${how}.${deaf} ${after}`, id];
}

/** @param {number} span [ms] */
function left(span) {
  const seconds = Math.ceil(span / 1000);
  const parts = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60].map((each) => String(each).padStart(2, "0"));
  return (parts[0] === "00" ? parts.slice(1) : parts).join(":");
}

// Sounding ---------------------------------------------------------------------

/** A browser lets a page sound once it was touched. */
function allowSound() {
  if (!timers().length && !document.querySelector(".rb-timer")) return;
  audio ??= "AudioContext" in window ? new AudioContext() : null;
  if (audio?.state === "suspended") audio.resume().catch(() => {});
}

/** Sound and shake; returns whether it could be heard. */
function sound() {
  navigator.vibrate?.([400, 200, 400]);
  if (audio?.state !== "running") return false;
  for (const after of BEEPS) {
    const tone = new OscillatorNode(audio, { frequency: 880 });
    tone.connect(audio.destination);
    tone.start(audio.currentTime + after);
    tone.stop(audio.currentTime + after + 0.3);
  }
  return true;
}

// Keeping ----------------------------------------------------------------------

/** @returns {Timer[]} */
function timers() {
  try {
    const kept = JSON.parse(recall(KEY) ?? "[]");
    return Array.isArray(kept) ? kept.filter(isTimer).slice(0, MOST) : [];
  } catch {
    return [];
  }
}

/**
 * @param {unknown} kept
 * @returns {kept is Timer}
 */
function isTimer(kept) {
  if (typeof kept !== "object" || kept === null || !("until" in kept) || !Number.isFinite(kept.until)) return false;
  return ["id", "title", "after", "of", "state"].every((name) => name in kept && typeof Reflect.get(kept, name) === "string");
}

/** @param {Timer[]} kept */
function keep(kept) {
  remember(KEY, JSON.stringify(kept));
}

/**
 * @param {string} id
 * @param {Timer["state"]} state
 */
function change(id, state) {
  keep(timers().map((each) => (each.id === id ? { ...each, state } : each)));
}
