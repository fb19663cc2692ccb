// The page that an owner opens from a link: what the link carries, read by Python and shown as text. Nothing is kept.

import { recall, remember } from "./memory.mjs";
import { partOf } from "./parts.mjs";
import { grow } from "./tree.mjs";

/** @import { Engine } from "./engine.mjs" */
/** @import { TaskAnswer } from "./record.d.ts" */

const HALTED = "The page could not be made here. Reload it, or ask the sender for the same in words.";

/**
 * Take up the section of the page, and whatever link comes to it later.
 * @param {HTMLElement} section
 * @param {Engine} engine
 */
export function visitOwner(section, engine) {
  if ("live" in section.dataset) return;
  section.dataset.live = "";
  const units = partOf(section, "button", HTMLButtonElement);
  units.addEventListener("click", () => {
    remember("units", units.value);
    show(section, engine);
  });
  const gone = new AbortController();
  window.addEventListener("hashchange", () => (section.isConnected ? show(section, engine) : gone.abort()), { signal: gone.signal });
  show(section, engine);
}

/**
 * @param {HTMLElement} section
 * @param {Engine} engine
 */
async function show(section, engine) {
  const link = location.hash.slice(1);
  const page = partOf(section, ".rb-owner-page", HTMLElement);
  const units = partOf(section, "button", HTMLButtonElement);
  section.dataset.state = link ? "busy" : "none";
  if (!link) return;
  const { answer, failed } = /** @type {{answer?: TaskAnswer<"told">, failed?: string}} */ (await engine.ask({
    task: "told", link, now: new Date().toISOString(), units: /** @type {never} */ (recall("units") ?? ""),
  }));
  if (answer?.tree) page.replaceChildren(grow(answer.tree));
  else page.textContent = answer?.refused ?? failed ?? HALTED;
  const other = answer?.units === "metric" ? "imperial" : "metric";
  units.value = other;
  units.textContent = other === "metric" ? "Show it in metric units" : "Show it in inches and pounds";
  units.hidden = !answer?.tree;
  document.documentElement.dataset.units = answer?.units ?? "imperial";
  section.dataset.state = "shown";
}
