// What is wrong, in two places with the same words: at the field, and in the summary where the answer would be.

import { reveal } from "./folds.mjs";
import { controlOf } from "./form.mjs";
import { around, partOf, partsOf } from "./parts.mjs";

/** @import { Control, Problem } from "./types.d.ts" */

const MARKED = "[aria-invalid]";

/**
 * Show these problems of a calculator and no others.
 * @param {HTMLElement} section
 * @param {Problem[]} problems
 */
export function showProblems(section, problems) {
  const form = partOf(section, ".rb-form", HTMLFormElement);
  clear(form);
  for (const problem of problems) markField(form, problem);
  summarise(summaryOf(section), form, problems);
}

/** @param {HTMLElement} section */
export function focusSummary(section) {
  summaryOf(section).focus();
}

/** @param {HTMLFormElement} form */
function clear(form) {
  for (const control of form.querySelectorAll(MARKED)) {
    control.removeAttribute("aria-invalid");
    control.removeAttribute("aria-errormessage");
  }
  for (const place of partsOf(form, ".rb-error", HTMLElement)) {
    place.hidden = true;
    place.replaceChildren();
  }
}

/**
 * @param {HTMLFormElement} form
 * @param {Problem} problem
 */
function markField(form, problem) {
  const control = controlOf(form, problem);
  if (!control) return;
  const list = (problem.row ?? null) === null ? control.closest(".rb-list") : null; // of no row: it may stay folded
  reveal(list?.parentElement ?? control);
  const place = partOf(around(control, ".rb-field", HTMLElement), ".rb-error", HTMLElement);
  control.setAttribute("aria-invalid", "true");
  control.setAttribute("aria-errormessage", place.id);
  describe(control, place.id);
  place.append(line(problem.message));
  place.hidden = false;
}

/**
 * @param {Element} control
 * @param {string} id
 */
function describe(control, id) {
  const described = (control.getAttribute("aria-describedby") ?? "").split(" ").filter(Boolean);
  if (!described.includes(id)) control.setAttribute("aria-describedby", [...described, id].join(" "));
}

/**
 * @param {HTMLElement} summary
 * @param {HTMLFormElement} form
 * @param {Problem[]} problems
 */
function summarise(summary, form, problems) {
  summary.hidden = problems.length === 0;
  if (sameWords(summary, problems)) return; // said once, not at every key
  const title = document.createElement("p");
  title.textContent = problems.length === 1 ? "One figure needs mending" : `${problems.length} figures need mending`;
  const list = document.createElement("ul");
  list.append(...problems.map((problem) => item(form, problem)));
  summary.replaceChildren(...(problems.length ? [title, list] : []));
}

/**
 * @param {HTMLFormElement} form
 * @param {Problem} problem
 */
function item(form, problem) {
  const control = controlOf(form, problem);
  const element = document.createElement("li");
  if (!control) {
    element.textContent = problem.message;
    return element;
  }
  const link = document.createElement("a");
  link.href = `#${idOf(control)}`;
  link.textContent = problem.message;
  link.addEventListener("click", (event) => {
    event.preventDefault(); // the fragment holds the inputs
    event.stopPropagation();
    reveal(control);
    control.focus();
    control.scrollIntoView({ block: "center" });
  });
  element.append(link);
  return element;
}

/**
 * Cells of a table have no id of their own until they are linked to.
 * @param {Control} control
 */
function idOf(control) {
  control.id ||= `${control.name}-${Math.random().toString(36).slice(2)}`;
  return control.id;
}

/**
 * @param {Element} summary
 * @param {Problem[]} problems
 */
function sameWords(summary, problems) {
  const said = [...summary.querySelectorAll("li")].map(({ textContent }) => textContent);
  return said.length === problems.length && problems.every(({ message }, index) => message === said[index]);
}

/** @param {HTMLElement} section */
function summaryOf(section) {
  return partOf(section, ".rb-problems", HTMLElement);
}

/** @param {string} text */
function line(text) {
  const element = document.createElement("span");
  element.textContent = text;
  return element;
}
