// A link with figures that this browser did not make: the answer stands first, with what it is and whose, and the
// form is folded behind one button. Links of one's own, clicked or typed here, are known by a short sum of each.

import { fieldsOf } from "./form.mjs";
import { recall, remember } from "./memory.mjs";
import { partOf } from "./parts.mjs";

const KEY = "own-links";
const MOST = 200;

/** @param {string} link */
export function isOwnLink(link) {
  return ownLinks().includes(sumOf(link));
}

/** @param {string} link */
export function noteOwnLink(link) {
  const sum = sumOf(link);
  remember(KEY, [sum, ...ownLinks().filter((other) => other !== sum)].slice(0, MOST).join(" "));
}

function ownLinks() {
  return (recall(KEY) ?? "").split(" ");
}

/** @param {string} link */
function sumOf(link) {
  return [...link].reduce((sum, letter) => (Math.imul(sum, 31) + (letter.codePointAt(0) ?? 0)) | 0, 0).toString(36);
}

export class Sent {
  #section;
  #form;
  #note;
  #button;
  #broughtUp = false;

  /**
   * @param {HTMLElement} section
   * @param {HTMLFormElement} form
   * @param {() => void} onUnfold
   */
  constructor(section, form, onUnfold) {
    this.#section = section;
    this.#form = form;
    this.#note = partOf(section, ".rb-sent", HTMLElement);
    this.#button = partOf(this.#note, "button", HTMLButtonElement);
    this.#button.addEventListener("click", () => {
      if (this.#isFolded) onUnfold();
      this.fold(!this.#isFolded);
    });
  }

  /** @param {boolean} isSent whether the form holds what somebody else's link says */
  show(isSent) {
    this.#note.hidden = !isSent;
    this.fold(isSent);
  }

  /** @param {boolean} isFolded */
  fold(isFolded) {
    const count = fieldsOf(this.#form).filter(({ hidden }) => !hidden).length;
    this.#section.toggleAttribute("data-folded", isFolded);
    this.#button.setAttribute("aria-expanded", String(!isFolded));
    this.#button.textContent = isFolded ? `Show the ${count} figures behind this` : "Hide the figures again";
  }

  /** Its answer is there: bring both into sight, unless the reader has gone elsewhere on the page. */
  bringUp() {
    if (this.#broughtUp) return;
    this.#broughtUp = true;
    requestAnimationFrame(() => { // when the page is laid out anyway
      if (this.#isFolded && !window.scrollY) this.#note.scrollIntoView();
    });
  }

  get #isFolded() {
    return "folded" in this.#section.dataset;
  }
}
