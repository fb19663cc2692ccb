// The theme opens its drawer, its lists of pages and its search by labels, which no key reaches and no reader of
// screens names. Once scripts run they are buttons. What a closed drawer holds, and what an open one covers, is no
// stop of the Tab key: the style sheet hides the one, this module the other.

import { node } from "./elements.mjs";
import { around, partOf, partsOf } from "./parts.mjs";

const ALONE = ":is(.md-header__button, .rb-find):is([for=__drawer], [for=__search])";
const DRAWER = ".md-sidebar--primary";
const LISTS = `${DRAWER} :is(.md-nav__link[for], .md-nav .md-nav .md-nav__title[for])`;
const COVERED = ".md-header, .md-content, .md-footer";
const SEARCH = "__search";
const NAMES = new Map([["__drawer", "Menu"], [SEARCH, "Search"]]);

/** Make buttons of the labels of the page that has just come, and of the header's once. */
export function reachMenus() {
  for (const label of partsOf(document, `${ALONE}, ${LISTS}`, HTMLLabelElement)) {
    const toggle = label.control;
    if (toggle instanceof HTMLInputElement) replace(label, toggle);
  }
}

/** Once a visit: an open drawer is all there is, and Escape closes it. */
export function keepDrawer() {
  const drawer = drawerToggle();
  drawer.addEventListener("change", () => {
    for (const each of partsOf(document, COVERED, HTMLElement)) each.inert = drawer.checked;
    if (drawer.checked) firstInDrawer()?.focus();
    else partOf(document, ".md-header__button[for=__drawer]", HTMLElement).focus({ preventScroll: true });
  });
  document.addEventListener("keydown", ({ key }) => {
    if (key === "Escape" && drawer.checked) drawer.click();
  });
}

/**
 * @param {HTMLLabelElement} label
 * @param {HTMLInputElement} toggle
 */
function replace(label, toggle) {
  const button = node("button", { type: "button", class: label.className, for: label.htmlFor }, ...label.childNodes);
  if (label.id) button.id = label.id;
  const isBack = label.matches(".md-nav__title");
  const words = button.textContent.trim();
  const name = isBack ? `${words}: back` : words || NAMES.get(toggle.id);
  if (name && name !== words) button.setAttribute("aria-label", name);
  const tell = () => isBack || button.setAttribute("aria-expanded", String(toggle.checked));
  button.addEventListener("click", () => {
    toggle.click();
    if (toggle.id === SEARCH) search(button, toggle);
    const preventScroll = toggle.checked; // a list that is still sliding in would stop half-way
    if (drawerToggle().checked && button.closest(DRAWER)) afterTurn(button, toggle)?.focus({ preventScroll });
  });
  toggle.addEventListener("change", tell);
  tell();
  label.replaceWith(button);
}

/**
 * To what was opened by key, and back.
 * @param {HTMLElement} button
 * @param {HTMLInputElement} toggle
 */
function search(button, toggle) {
  partOf(document, ".md-search__input", HTMLElement).focus();
  toggle.addEventListener("change", () => button.focus({ preventScroll: true }), { once: true });
}

/**
 * Where the focus goes in the drawer once a list has been opened or left.
 * @param {HTMLElement} button
 * @param {HTMLInputElement} toggle
 */
function afterTurn(button, toggle) {
  if (toggle.checked) return firstInDrawer();
  return partOf(around(button, ".md-nav__item", HTMLElement), `button.md-nav__link[for="${toggle.id}"]`, HTMLElement);
}

/** @returns {HTMLElement | undefined} */
function firstInDrawer() {
  return partsOf(document, `${DRAWER} :is(a[href], button)`, HTMLElement)
    .find((each) => each.checkVisibility({ visibilityProperty: true }));
}

function drawerToggle() {
  return partOf(document, "#__drawer", HTMLInputElement);
}
