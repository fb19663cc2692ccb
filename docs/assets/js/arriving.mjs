// Moving between pages without a reload: a screen reader hears where it is, and the Tab key goes on from there.

import { node } from "./elements.mjs";
import { keepDrawer, reachMenus } from "./menu.mjs";
import { carriesInputs } from "./link.mjs";
import { reachWideTables } from "./tables.mjs";

const HEARD_MS = 300; // a text that comes with its place is not read out

/** Look after each page that comes from now on; the theme runs. */
export function lookAfterMoves() {
  const said = node("p", { class: "rb-spoken", role: "status" });
  document.body.append(said);
  let here = location.pathname;
  keepDrawer();
  window.document$?.subscribe(() => requestAnimationFrame(reachWideTables));
  window.document$?.subscribe(() => {
    reachMenus();
    if (location.pathname === here) return;
    here = location.pathname;
    said.textContent = "";
    setTimeout(() => (said.textContent = document.title), HEARD_MS);
    place()?.focus({ preventScroll: true });
  });
}

/** What the address leads to, else the page's heading. */
function place() {
  const named = carriesInputs(location.hash) ? null : document.getElementById(decodeURIComponent(location.hash.slice(1)));
  const found = named ?? document.querySelector("main h1");
  if (found instanceof HTMLElement && found.tabIndex < 0) found.tabIndex = -1;
  return found instanceof HTMLElement ? found : null;
}
