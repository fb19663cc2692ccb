// Says whether this browser keeps the site for use without a signal, and lets the reader ask for more ahead.

import { node } from "./elements.mjs";
import { theCopy } from "./offline.mjs";

const SAY = {
  making: "This browser is fetching all pages now, to keep them for use without a signal.",
  ready: "This browser keeps all pages: they open without a signal.",
  half: "Not all pages could be kept: signal or room ran out. The next visit tries again.",
  refused: "This browser keeps no pages of this site, so that each wants a signal. A private window does that, or a setting.",
};
const AHEAD = {
  offer: "Keep Python on this device now",
  making: "Fetching Python\u2026",
  kept: "Python is kept, too: it starts without a signal.",
  failed: "Python could not be kept: signal or room ran out. Try again with a better one.",
};

/**
 * Say at a place how the copy stands, and go on saying it as it changes.
 * @param {HTMLElement} place
 */
export async function tellCopy(place) {
  if ("live" in place.dataset) return; // a page may be told of twice
  place.dataset.live = "";
  const copy = await theCopy();
  if (copy === undefined) return;
  place.hidden = false;
  if (!copy) return say(place, SAY.refused);
  const making = copy.installing ?? copy.waiting;
  if (copy.active) return ready(place, copy.active);
  say(place, SAY.making);
  making?.addEventListener("statechange", () => {
    if (making.state === "activated") ready(place, making);
    if (making.state === "redundant") say(place, SAY.half);
  });
}

/**
 * @param {HTMLElement} place
 * @param {ServiceWorker} worker
 */
async function ready(place, worker) {
  say(place, SAY.ready);
  if (place.dataset.ahead === undefined) return;
  if ((await ask(worker, "ahead?")) === "kept") return say(place, SAY.ready, AHEAD.kept);
  const button = node("button", { type: "button", class: "md-button" }, AHEAD.offer);
  button.addEventListener("click", async () => {
    say(place, SAY.ready, AHEAD.making);
    const kept = (await ask(worker, "ahead")) === "kept";
    say(place, SAY.ready, kept ? AHEAD.kept : AHEAD.failed);
    if (!kept) place.append(button);
  });
  place.append(" ", button);
}

/**
 * @param {HTMLElement} place
 * @param {string[]} sentences
 */
function say(place, ...sentences) {
  place.textContent = sentences.join(" ");
}

/**
 * @param {ServiceWorker} worker
 * @param {string} question
 * @returns {Promise<string>}
 */
function ask(worker, question) {
  const { port1, port2 } = new MessageChannel();
  return new Promise((resolve) => {
    port1.onmessage = ({ data }) => resolve(data);
    worker.postMessage(question, [port2]);
  });
}
