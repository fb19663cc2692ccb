// A quote for its owner: the same dialog that tells how a bow stands, filled from the form and the answer above it.

import { partOf } from "./parts.mjs";
import { newId, now, writeDown } from "./store.mjs";
import { openTelling } from "./tell.mjs";

/** @import { BowBar } from "./bow-bar.mjs" */
/** @import { CalculatorPage } from "./calculator.mjs" */
/** @import { Pair } from "./types.d.ts" */

const NO_QUOTE = "There is no quote of yours yet: type your own figures, and mend what is marked above.";

/**
 * @param {HTMLElement} section
 * @param {CalculatorPage} page
 * @param {BowBar} bar
 */
export function equipOffer(section, page, bar) {
  section.hidden = false;
  partOf(section, "button", HTMLButtonElement).addEventListener("click", () => {
    const { answer } = page;
    partOf(section, ":scope > [role=status]", HTMLElement).textContent = answer ? "" : NO_QUOTE;
    if (!answer) return;
    const { pairs } = page.figures();
    const results = (answer.kept.results ?? []).map(([name, value]) => [name, String(value)]);
    openTelling({
      tell: async (more) => bar.ask("offer", { ...more, entries: await recordOf(bar), pairs, results }),
      keep: (facts) => keep(bar, facts),
    }, partOf(section, "dialog", HTMLDialogElement));
  });
}

/** @param {BowBar} bar */
async function recordOf(bar) {
  return bar.bow ? bar.store.record(bar.bow) : "[]";
}

/**
 * @param {BowBar} bar
 * @param {Pair[]} facts
 */
async function keep(bar, facts) {
  const { bow } = bar;
  if (!bow) return;
  const id = newId();
  const taken = await bar.ask("take", { sheet: "told", pairs: facts, at: now(), note: "", id });
  if (taken?.entry) await writeDown(bar.store, bow, [{ id, text: taken.entry }], (more) => bar.ask("head", more));
}
