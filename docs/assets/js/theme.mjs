// The theme's own script, with the search index that it fetches at once: over a hundred kilobytes.
// Pages with a calculator hold only its address, so that a shared link can be answered first.

import { partsOf } from "./parts.mjs";

/**
 * Start the theme's script where it has not been started; resolve once it has run.
 * @returns {Promise<void>}
 */
export function startTheme() {
  const place = /** @type {HTMLScriptElement | null} */ (document.querySelector("script[data-theme]"));
  if (!place) return Promise.resolve();
  writeStylesWhole();
  return new Promise((resolve) => {
    const script = document.createElement("script");
    script.src = place.src;
    script.dataset.apart = ""; // scripts/building/theme.py has let it heed that
    script.onerror = () => resolve();
    script.onload = () => setTimeout(() => { // a task of its own: a tap may come before it
      window.document$?.next(document); // it waits for the page to be parsed, which has long been
      resolve();
    });
    place.replaceWith(script);
  });
}

/** The theme writes every address whole, and with that of the style sheet has the page laid out in its own long task. */
function writeStylesWhole() {
  for (const link of partsOf(document, "link[rel=stylesheet]", HTMLLinkElement)) {
    link.setAttribute("href", link.href);
  }
}
