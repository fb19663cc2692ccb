// The answer that follows the reader's thumb while the outcome itself is out of sight:
// the gravest check's word and whole text first, then the headline, never a part of either.

const LARGEST_SHARE = 1 / 3; // of what the reader sees; beyond it the headline gives way
const GAP = 8;

export class FloatingAnswer {
  #form;
  #outcome;
  #headline = "";
  /** @type {Element | null} */
  #verdict = null; // in the outcome
  #fitted = ""; // by what sizes it was last decided how much it says
  #view = window.visualViewport;

  /**
   * @param {HTMLFormElement} form
   * @param {HTMLElement} outcome
   * @param {() => void} onPress
   */
  constructor(form, outcome, onPress) {
    this.#form = form;
    this.#outcome = outcome;
    this.button = Object.assign(document.createElement("button"), { type: "button", className: "rb-peek", hidden: true });
    this.button.addEventListener("click", onPress);
    form.addEventListener("focusin", () => this.#keepClear());
    const look = () => {
      if (this.button.isConnected) this.#restIfSeen();
      else { // the page has gone
        for (const event of ["scroll", "resize"]) window.removeEventListener(event, look);
        sizes.disconnect();
      }
    };
    for (const event of ["scroll", "resize"]) window.addEventListener(event, look, { passive: true });
    const sizes = new ResizeObserver(() => {
      this.#fit();
      this.#restIfSeen();
    });
    for (const each of [form, document.body]) sizes.observe(each); // what comes late above the form moves it
    for (const event of ["resize", "scroll"]) this.#view?.addEventListener(event, () => this.#rise());
  }

  hide() {
    this.button.hidden = true;
  }

  /** Go on showing it, as the answer to what was typed before. */
  date() {
    this.button.classList.add("rb-peek--earlier");
  }

  /** Show what the outcome says; returns it as one text. */
  show() {
    const headline = textOf(this.#outcome.querySelector(".rb-headline"));
    const grave = this.#outcome.querySelector(".rb-check:not(.rb-ok)"); // the gravest comes first
    const verdict = grave && verdictOf(grave);
    this.#headline = headline;
    this.button.classList.remove("rb-peek--earlier");
    this.#fitted = "";
    this.button.replaceChildren(...(verdict ? [verdict] : []), part("rb-peek-rest"));
    this.button.hidden = false;
    this.#fit();
    this.#verdict = grave ?? this.#outcome.querySelector(".rb-headline");
    this.#restIfSeen();
    return [verdict && textOf(verdict), headline].filter(Boolean).join(" ");
  }

  /** It rests once the outcome's own verdict is wholly in sight, or has been scrolled past with the form. */
  #restIfSeen() {
    if (!this.#verdict) return;
    const { top, bottom } = this.#verdict.getBoundingClientRect();
    const head = document.querySelector(".md-header")?.getBoundingClientRect().bottom ?? 0;
    const isPast = top < head && this.#form.getBoundingClientRect().bottom < head;
    this.button.classList.toggle("rb-peek--resting", isPast || (top >= head && bottom <= window.innerHeight));
    this.#keepClear();
  }

  /** The headline whole, or none of it. */
  #fit() {
    const rest = this.button.querySelector(".rb-peek-rest");
    if (!rest || this.button.hidden) return;
    const stops = this.#outcome.querySelectorAll(".rb-stop").length - 1;
    const more = stops > 0 ? ` (${stops} more ${stops === 1 ? "stop" : "stops"} below)` : "";
    const most = (this.#view?.height ?? window.innerHeight) * LARGEST_SHARE;
    if (!this.#fitted || this.#fitted !== this.#sizes(most)) { // a try has the page laid out again
      rest.textContent = this.#headline + more;
      if (this.button.offsetHeight > most && rest.previousElementSibling) rest.textContent = "More below" + more;
      this.#fitted = this.#sizes(most);
    }
    this.#keepClear();
  }

  /** @param {number} most */
  #sizes(most) {
    return [most, this.button.offsetWidth, this.button.offsetHeight].join(" ");
  }

  /** A phone's keyboard lies over the page: float above it. */
  #rise() {
    if (!this.#view || !this.button.isConnected) return;
    const hidden = window.innerHeight - this.#view.height - this.#view.offsetTop;
    this.button.style.setProperty("--rb-risen", `${this.#view.scale > 1.01 ? 0 : Math.max(0, hidden)}px`);
    this.#fit();
  }

  /** Whatever has the focus never lies under it, now or after the next step of the Tab key. */
  #keepClear() {
    if (!this.button.isConnected) return;
    const bar = this.button.getBoundingClientRect();
    const inSight = bar.top < window.innerHeight && bar.bottom > 0;
    const isBeside = bar.left >= this.#form.getBoundingClientRect().right; // it covers nothing of the form there
    const floats = inSight && !isBeside && !this.button.hidden && !this.button.matches(".rb-peek--resting");
    const room = floats ? window.innerHeight - bar.top + GAP : 0;
    document.documentElement.style.scrollPaddingBottom = `${room}px`;
    const focused = document.activeElement;
    if (!floats || !focused || !this.#form.contains(focused)) return;
    const covered = focused.getBoundingClientRect().bottom + GAP - bar.top;
    if (covered > 0 && bar.bottom > focused.getBoundingClientRect().top) window.scrollBy(0, covered);
  }
}

/**
 * @param {string} className
 * @param {...Node} children
 */
function part(className, ...children) {
  const element = Object.assign(document.createElement("span"), { className });
  element.append(...children.map((child) => (child.nodeName === "A" ? child.textContent ?? "" : child)));
  return element;
}

/**
 * A check as it floats: its words without its links.
 * @param {Element} check
 */
function verdictOf(check) {
  const verdict = part("rb-peek-verdict", ...[...check.childNodes].map((node) => node.cloneNode(true)));
  verdict.classList.add(...[...check.classList].filter((name) => /^rb-(stop|watch)$/.test(name)));
  return verdict;
}

/** @param {Element | null} element */
function textOf(element) {
  return element?.textContent.trim() ?? "";
}
