// What a form has folded away: what it holds and whose that is stands on the fold, and nothing wrong stays behind one.

import { fieldsOf, nameOf, rowsOf } from "./form.mjs";
import { around, partOf, partsOf, sourceOf } from "./parts.mjs";

/** @typedef {{own: Set<string>, lent: string[], wrong: Set<string>, empty: Set<string>, whose: string}} Marks */

/**
 * Unfold whatever an element stands behind.
 * @param {Element} element
 */
export function reveal(element) {
  element.closest("table[data-short]")?.removeAttribute("data-short");
  for (let fold = element.closest("details"); fold; fold = fold.parentElement?.closest("details") ?? null) fold.open = true;
}

export class Folds {
  #folds;

  /** @param {HTMLFormElement} form */
  constructor(form) {
    this.#folds = partsOf(form, "details.rb-fold", HTMLDetailsElement);
    for (const table of partsOf(form, "table.rb-rows", HTMLTableElement)) shorten(table);
    form.addEventListener("click", (event) => this.#clicked(sourceOf(event)?.closest("button")));
  }

  /**
   * Write on each what it holds.
   * @param {string[]} texts in the order of the folds
   */
  write(texts) {
    this.#folds.forEach((fold, index) => say(fold, ".rb-fold-held", texts[index]));
  }

  /**
   * Say on each what is wrong, empty, still the example's or changed behind it, the gravest alone.
   * @param {Marks} marks
   */
  mark({ own, lent, wrong, empty, whose }) {
    for (const fold of this.#folds) {
      const names = fieldsOf(fold).filter(({ hidden }) => !hidden).map(nameOf);
      const count = (/** @type {(name: string) => boolean} */ isSo) => names.filter(isSo).length;
      const [words, isGrave] = wordsFor({
        wrong: count((name) => wrong.has(name)),
        empty: count((name) => empty.has(name)),
        lent: own.size ? count((name) => lent.includes(name)) : 0,
        own: count((name) => own.has(name)),
      }, whose);
      say(fold, ".rb-fold-whose", words);
      fold.toggleAttribute("data-grave", isGrave);
    }
  }

  /** @param {HTMLButtonElement | null | undefined} button */
  #clicked(button) {
    if (button?.matches(".rb-next-step")) this.#goOn(around(button, "details.rb-fold", HTMLDetailsElement));
    if (button?.matches(".rb-all-rows")) {
      const table = partOf(around(button, ".rb-field", HTMLElement), "table", HTMLTableElement);
      table.removeAttribute("data-short");
      table.querySelector("input")?.focus();
    }
  }

  /** @param {HTMLDetailsElement} fold */
  #goOn(fold) {
    const next = this.#folds[this.#folds.indexOf(fold) + 1];
    fold.open = false;
    if (next) next.open = true;
    const place = partOf(next ?? fold, "summary", HTMLElement);
    place.focus({ preventScroll: true });
    place.scrollIntoView({ block: "start" });
  }
}

/**
 * @param {{wrong: number, empty: number, lent: number, own: number}} counts
 * @param {string} whose
 * @returns {[words: string, isGrave: boolean]}
 */
function wordsFor({ wrong, empty, lent, own }, whose) {
  if (wrong) return [`${wrong} to mend`, true];
  if (empty) return [`${empty} to fill in`, true];
  if (lent) return [`${lent} still the example's`, true];
  if (own) return [`${own} ${whose}`, false];
  return ["as in the example", false];
}

/**
 * On a narrow page a long log of many columns begins with its newest row; the style sheet knows which is narrow.
 * @param {HTMLTableElement} table
 */
function shorten(table) {
  const rows = rowsOf(around(table, ".rb-field", HTMLElement));
  table.toggleAttribute("data-short", rows.length > 2);
}

/**
 * @param {Element} fold
 * @param {string} selector
 * @param {string} text
 */
function say(fold, selector, text) {
  const place = partOf(fold, selector, HTMLElement);
  if (place.textContent !== text) place.textContent = text;
}
