// Decision paths: one step at a time. The address names the step and with it all answers, for each step
// is led to by one answer only. Without this module a path is a document whose answers are links.

import { partOf, partsOf, sourceOf } from "./parts.mjs";

/** Let every path of the page show the step that the address names. */
export function followPaths() {
  partsOf(document, ".rb-path", HTMLElement).forEach((path) => {
    if (!("at" in path.dataset)) equip(path);
    const step = location.hash ? stepOf(path, location.hash) : stepsOf(path)[0];
    if (step) show(path, step);
  });
}

/** @param {HTMLElement} path */
function equip(path) {
  show(path, stepsOf(path)[0]);
  path.addEventListener("click", (event) => {
    const link = sourceOf(event)?.closest("a");
    const step = link && stepOf(path, link.hash);
    if (!step || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    event.stopPropagation(); // the theme would scroll away from the path
    history.pushState(history.state, "", link.hash);
    show(path, step);
    partOf(step, "h3", HTMLElement).focus({ preventScroll: true });
    path.scrollIntoView({ block: "nearest" });
  });
}

/**
 * @param {HTMLElement} path
 * @param {HTMLElement} step
 */
function show(path, step) {
  stepsOf(path).forEach((each) => each.classList.toggle("rb-step--away", each !== step));
  path.dataset.at = step === stepsOf(path)[0] ? "start" : "on";
}

/** @param {Element} path */
function stepsOf(path) {
  return partsOf(path, ".rb-step", HTMLElement);
}

/**
 * The step that a fragment names, if it is one of this path's.
 * @param {Element} path
 * @param {string} fragment
 */
function stepOf(path, fragment) {
  return stepsOf(path).find(({ id }) => `#${id}` === fragment);
}
