// The bow whose job goes on in this tab: the calculators fill themselves from it.
// It lives as long as the tab does and stands in no address.

const KEY = "rebrace.bow";
const ID = /^[0-9a-hj-km-np-tv-z]{14}$/;

let held = null; // where a browser keeps nothing

/** Whether a text has the form of a bow's id. */
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

/** Choose a bow by its id; null: none. */
export function chooseBow(id) {
  held = isBowId(id) ? id : null;
  try {
    if (held) sessionStorage.setItem(KEY, held);
    else sessionStorage.removeItem(KEY);
  } catch {
    // It holds as long as the page.
  }
}
