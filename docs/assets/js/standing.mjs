// Whose figures a form holds: the worked example's until the reader or a sender has given or confirmed them.

import { fieldOf, fieldsOf, labelOf } from "./form.mjs";

export class Standing {
  #form;
  #line;
  #lent = []; // what the answer leans on that is the example's

  own = new Set();
  fromLink = false;
  stale = new Map(); // of a bow's record, by name: the day on which it was read
  ofBow = false;

  constructor(form, { onConfirm, onEmpty, onOwn }) {
    this.#form = form;
    this.onConfirm = onConfirm;
    this.onEmpty = onEmpty;
    this.onOwn = onOwn;
    this.#line = Object.assign(document.createElement("p"), { className: "rb-standing" });
    form.prepend(this.#line);
    this.show([]);
  }

  /** As a request wants it. */
  asked() {
    const names = fieldsOf(this.#form).map(({ dataset }) => dataset.field);
    const lent = names.filter((name) => !this.own.has(name)).map((name) => [name, "example"]);
    const stale = [...this.stale].map(([name, day]) => [name, `stale ${day}`.trim()]);
    return Object.fromEntries([...lent, ...stale]);
  }

  /** Mark the fields of the example that an answer leans on; none: those of the answer before. */
  show(lent = this.#lent) {
    this.#lent = this.own.size ? lent.filter((name) => !this.own.has(name)) : [];
    for (const mark of this.#form.querySelectorAll(".rb-lent")) {
      if (!this.#lent.includes(mark.parentElement.dataset.field)) mark.remove();
    }
    for (const name of this.#lent) this.#mark(fieldOf(this.#form, name));
    this.#say();
  }

  #mark(field) {
    if (!field || field.querySelector(".rb-lent")) return;
    const mark = Object.assign(document.createElement("p"), { className: "rb-lent", textContent: "Still the example's. " });
    const button = buttonOf("Mine too", () => {
      const next = field.querySelector("input, select");
      this.own.add(field.dataset.field);
      this.show();
      next?.focus({ preventScroll: true });
      this.onConfirm();
    });
    button.setAttribute("aria-label", `Mine too: ${labelOf(field)}`);
    mark.append(button);
    field.querySelector(".rb-error").before(mark);
  }

  #say() {
    const count = this.#lent.length;
    const [text, ...buttons] = count
      ? [`${count === 1 ? "One figure is" : `${count} figures are`} still the worked example's, not yours: marked below. `,
        buttonOf("Empty them", () => this.onEmpty(this.#lent))]
      : this.own.size
        ? [this.ofBow ? "Figures of this bow. " : this.fromLink ? "Figures from a link. They are in no bow of yours. " : "Your figures. "]
        : ["Worked example: an invented job, not yours. ", buttonOf("Type my own", () => this.onOwn())];
    if (this.#line.firstChild?.textContent !== text) this.#line.replaceChildren(text, ...buttons);
  }
}

function buttonOf(textContent, onPress) {
  const button = Object.assign(document.createElement("button"), { type: "button", textContent });
  button.addEventListener("click", onPress);
  return button;
}
