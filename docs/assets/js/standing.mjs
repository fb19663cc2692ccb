// Whose figures a form holds: the worked example's until the reader or a sender has given or confirmed them.

import { controlsIn, fieldOf, fieldsOf, labelOf, nameOf } from "./form.mjs";
import { around, partOf, partsOf } from "./parts.mjs";

export class Standing {
  #form;
  #line;
  /** @type {string[]} */
  lent = []; // what the answer leans on that is the example's
  /** @type {Set<string>} */
  own = new Set();
  fromLink = false;
  /** @type {Map<string, string>} */
  stale = new Map(); // of a bow's record, by name: the day on which it was read
  ofBow = false;

  /**
   * @param {HTMLFormElement} form
   * @param {{onConfirm: () => void, onEmpty: (names: string[]) => void, onOwn: () => void}} listeners
   */
  constructor(form, { onConfirm, onEmpty, onOwn }) {
    this.#form = form;
    this.onConfirm = onConfirm;
    this.onEmpty = onEmpty;
    this.onOwn = onOwn;
    this.#line = Object.assign(document.createElement("p"), { className: "rb-standing" });
    form.prepend(this.#line);
    this.show([]);
  }

  /**
   * As a request wants it.
   * @returns {Record<string, string>}
   */
  asked() {
    const names = fieldsOf(this.#form).map(nameOf);
    const lent = names.filter((name) => !this.own.has(name)).map((name) => [name, "example"]);
    const stale = [...this.stale].map(([name, day]) => [name, `stale ${day}`.trim()]);
    return Object.fromEntries([...lent, ...stale]);
  }

  /**
   * Mark the fields of the example that an answer leans on; none: those of the answer before.
   * @param {string[]} lent
   */
  show(lent = this.lent) {
    this.lent = this.own.size ? lent.filter((name) => !this.own.has(name)) : [];
    for (const mark of partsOf(this.#form, ".rb-lent", HTMLElement)) {
      if (!this.lent.includes(nameOf(around(mark, ".rb-field", HTMLElement)))) mark.remove();
    }
    for (const name of this.lent) this.#mark(fieldOf(this.#form, name));
    this.#say();
  }

  /** @param {HTMLElement | null} field */
  #mark(field) {
    if (!field || field.querySelector(".rb-lent")) return;
    const mark = Object.assign(document.createElement("p"), { className: "rb-lent", textContent: "Still the example's. " });
    const button = buttonOf("Mine too", () => {
      const [next] = controlsIn(field);
      this.own.add(nameOf(field));
      this.show();
      next.focus({ preventScroll: true });
      this.onConfirm();
    });
    button.setAttribute("aria-label", `Mine too: ${labelOf(field)}`);
    mark.append(button);
    partOf(field, ".rb-error", HTMLElement).before(mark);
  }

  #say() {
    const { text, button } = this.#sentence();
    if (this.#line.firstChild?.textContent === text) return;
    const isRead = this.#form.contains(document.activeElement); // else to measure has the page laid out in vain
    if (isRead) this.#line.style.minHeight = `${this.#line.clientHeight}px`; // to give room back moves the fields below
    this.#line.replaceChildren(text, ...(button ? [button] : []));
  }

  /** @returns {{text: string, button?: HTMLButtonElement}} */
  #sentence() {
    const count = this.lent.length;
    if (count) {
      const figures = count === 1 ? "One figure is" : `${count} figures are`;
      return { text: `${figures} still the worked example's, not yours: marked below. `,
        button: buttonOf("Empty them", () => this.onEmpty(this.lent)) };
    }
    if (!this.own.size) {
      return { text: "Worked example: an invented job, not yours. ", button: buttonOf("Type my own", () => this.onOwn()) };
    }
    if (this.ofBow) return { text: "Figures of this bow. " };
    return { text: this.fromLink ? "Figures from a link. They are in no bow of yours. " : "Your figures. " };
  }
}

/**
 * @param {string} textContent
 * @param {() => void} onPress
 */
function buttonOf(textContent, onPress) {
  const button = Object.assign(document.createElement("button"), { type: "button", textContent });
  button.addEventListener("click", onPress);
  return button;
}
