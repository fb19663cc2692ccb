// A calculator on paper: one sheet for the bench with its answer, the figures that it was asked, whose they are,
// when it was printed and where it can be opened again. What else stands on the page stays off it.

import { node } from "./elements.mjs";
import { labelOf } from "./form.mjs";
import { around, partOf } from "./parts.mjs";

/** @import { BowBar } from "./bow-bar.mjs" */
/** @import { CalculatorPage } from "./calculator.mjs" */

const WORDS = {
  example: "Worked example of an invented bow",
  trial: "Trial",
  figures: "Figures that it was asked",
  tooLong: "These figures are too long for a link.",
  square: "This page with its figures",
};
const gone = { page: new AbortController() };

/**
 * Have a page ready for its printer, which waits for no script once it was asked.
 * @param {CalculatorPage} page
 * @param {BowBar} bar
 */
export function layOutForPrint(page, bar) {
  gone.page.abort(); // the page before it
  gone.page = new AbortController();
  const { signal } = gone.page;
  const section = around(page.form, ".rb-calculator", HTMLElement);
  const head = node("div", { class: "rb-bench" });
  const foot = node("div", { class: "rb-bench" });
  section.prepend(head);
  section.append(foot);
  const lay = (/** @type {Node[]} */ ...square) => {
    section.dataset.print = "";
    head.replaceChildren(...headOf(page, bar, section.dataset.title ?? ""));
    foot.replaceChildren(...footOf(page), ...square);
  };
  const button = partOf(page.form, ".rb-print", HTMLButtonElement);
  button.disabled = false;
  button.addEventListener("click", async () => {
    lay(...await squareOf(page));
    window.print();
  });
  window.addEventListener("beforeprint", () => {
    if (isOwnPage(page.calculator) && !("print" in section.dataset)) lay();
  }, { signal });
  window.addEventListener("afterprint", () => delete section.dataset.print, { signal });
}

/**
 * Whether a page is a calculator's own; another has more to print than the calculator on it.
 * @param {string} calculator
 */
function isOwnPage(calculator) {
  return location.pathname.includes(`/calculators/${calculator}`);
}

/**
 * @param {CalculatorPage} page
 * @param {BowBar} bar
 * @param {string} title
 */
function headOf(page, bar, title) {
  const whose = bar.bow ? `Bow ${bar.title}` : page.figures().own.length ? WORDS.trial : WORDS.example;
  const moment = new Date().toLocaleString("en-GB", { dateStyle: "medium", timeStyle: "short" });
  return [node("h2", {}, title), node("p", { class: "rb-bench-of" }, `${whose}. Printed ${moment}.`)];
}

/** @param {CalculatorPage} page */
function footOf(page) {
  const { pairs } = page.figures();
  const said = pairs.flatMap(([name, text]) => {
    const field = page.fieldOf(name);
    const shown = field && textOf(field, text);
    return shown ? [node("span", {}, `${labelOf(field)}: `, node("b", {}, shown))] : [];
  });
  const { address } = page;
  const link = address ? node("a", { href: address }, address) : WORDS.tooLong;
  return [node("p", { class: "rb-subhead" }, WORDS.figures), node("p", { class: "rb-bench-figures" }, ...said),
    node("p", { class: "rb-bench-link" }, link)];
}

/**
 * What a field holds, as its reader sees it.
 * @param {HTMLElement} field
 * @param {string} text
 */
function textOf(field, text) {
  const [select] = field.querySelectorAll("select");
  if (field.dataset.kind === "choice" && select) return select.selectedOptions[0]?.textContent ?? "";
  return field.dataset.kind === "rows" ? text.replaceAll(":", ", ").replaceAll(";", "; ") : text;
}

/** @param {CalculatorPage} page */
async function squareOf(page) {
  const { address } = page;
  const { fitsSquare, squareOf: drawn } = await import("./qr.mjs");
  return address && fitsSquare(address) ? [drawn(address, WORDS.square)] : [];
}
