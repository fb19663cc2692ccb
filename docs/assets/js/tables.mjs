// The theme puts tables of the text into boxes that scroll sideways where they are too wide.

/** Let the keyboard reach and scroll those boxes that need it. */
export function reachWideTables() {
  for (const box of document.querySelectorAll(".md-typeset__scrollwrap")) {
    if (box.scrollWidth > box.clientWidth) box.tabIndex = 0;
    else box.removeAttribute("tabindex");
  }
}
