// The theme puts tables of the text into boxes that scroll sideways where they are too wide.

import { partsOf } from "./parts.mjs";

/** Let the keyboard reach and scroll those boxes that need it. */
export function reachWideTables() {
  for (const box of partsOf(document, ".md-typeset__scrollwrap", HTMLElement)) {
    if (box.scrollWidth > box.clientWidth) box.tabIndex = 0;
    else box.removeAttribute("tabindex");
  }
}
