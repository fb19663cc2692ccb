// Parts of a page that its build has put there. One that is missing is a fault of ours, named where it is missed.

/**
 * The first element at a place that has to be there, of the kind that it has to be.
 * @template {Element} Kind
 * @param {ParentNode} whole
 * @param {string} selector
 * @param {new () => Kind} kind
 */
export function partOf(whole, selector, kind) {
  const found = whole.querySelector(selector);
  if (!(found instanceof kind)) throw new Error(`the page has no ${kind.name} at ${selector}`);
  return found;
}

/**
 * The element around another, of the kind that it has to be.
 * @template {Element} Kind
 * @param {Element} inner
 * @param {string} selector
 * @param {new () => Kind} kind
 */
export function around(inner, selector, kind) {
  const found = inner.closest(selector);
  if (!(found instanceof kind)) throw new Error(`the page has no ${kind.name} at ${selector}`);
  return found;
}

/**
 * What an event came from, where that is an element.
 * @param {Event} event
 */
export function sourceOf({ target }) {
  return target instanceof Element ? target : null;
}

/**
 * All elements at a place, of the kind that they have to be.
 * @template {Element} Kind
 * @param {ParentNode} whole
 * @param {string} selector
 * @param {new () => Kind} kind
 */
export function partsOf(whole, selector, kind) {
  return [...whole.querySelectorAll(selector)].filter(/** @returns {found is Kind} */ (found) => found instanceof kind);
}
