// The bow whose job goes on in this tab: the calculators fill themselves from it.
// It lives as long as the tab does and stands in no address.

const KEY = "rebrace.bow";
const FORM_KEY = "rebrace.form";
const ID = /^[0-9a-hj-km-np-tv-z]{14}$/;

/** @type {string | null} */
let held = null; // where a browser keeps nothing
/** @type {string | null} */
let wanted = null; // likewise

/**
 * Whether a text has the form of a bow's id.
 * @param {unknown} text
 * @returns {text is string}
 */
export function isBowId(text) {
  return typeof text === "string" && ID.test(text);
}

/** The id of the chosen bow, or null. */
export function chosenBow() {
  try {
    const kept = sessionStorage.getItem(KEY);
    return isBowId(kept) ? kept : null;
  } catch {
    return held;
  }
}

/**
 * Choose a bow by its id; null: none.
 * @param {string | null} id
 */
export function chooseBow(id) {
  held = isBowId(id) ? id : null;
  try {
    if (held) sessionStorage.setItem(KEY, held);
    else sessionStorage.removeItem(KEY);
  } catch {
    // It holds as long as the page.
  }
}

/**
 * Ask for a form on the page of the bow that is opened next.
 * @param {string} form
 */
export function askFor(form) {
  wanted = form;
  try {
    sessionStorage.setItem(FORM_KEY, form);
  } catch {
    // The page that opens next may be of the same visit.
  }
}

/** The form that was asked for, once; or null. */
export function takeAskedFor() {
  let form = wanted;
  wanted = null;
  try {
    form ??= sessionStorage.getItem(FORM_KEY);
    sessionStorage.removeItem(FORM_KEY);
  } catch {
    // Then there is none from before.
  }
  return form;
}
