// Points marked on a picture of the bow. The picture stays on the device: nothing is sent, kept or read off it but what
// the reader marks, and that stands in the form's rows. What the marks mean is worked out in Python.

import { node } from "./elements.mjs";
import { Marks, sizeInWords } from "./marks.mjs";
import { partOf, partsOf } from "./parts.mjs";
import { NextFigures } from "./marking-figures.mjs";
import { Stage } from "./marking-stage.mjs";

/** @import { CalculatorPage } from "./calculator.mjs" */
/** @import { FoundMark, Mark, MarkSet, PictureLine, Spot } from "./marking.d.ts" */

const FAST = 10; // pixels of a step with Shift held
const SIDES = /** @type {const} */ ({ ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] });
const WORDS = {
  reading: "Opening the picture…",
  unread: "This browser cannot open that file: it is no picture, too large, or of a kind that it does not know, such as HEIC. "
    + "Choose a photograph saved as JPEG or PNG; most phones take such if their camera is set to the most compatible kind.",
  full: "This table takes no more rows.",
  gone: "Mark deleted.",
  cleared: "All marks deleted.",
  undone: "Taken back.",
  redone: "Done again.",
  nothingToDraw: "There is nothing here to draw this mark to.",
  kept: "The marks of the tables stand on it. For marks of its own, delete all marks.",
};

/**
 * Make the part of a page live that marks a picture for its calculator.
 * @param {HTMLElement} section
 * @param {CalculatorPage} page
 */
export function lendMarking(section, page) {
  const bench = new MarkingBench(section, page);
  page.watch(bench);
  section.dataset.live = "";
}

class MarkingBench {
  #section;
  #page;
  #marks;
  #figures;
  #stage;
  #picture = { width: 0, height: 0 };
  /** @type {string | null} */
  #set = null; // what is marked now
  /** @type {number | null} */
  #row = null; // of the mark that keys and arrows move
  /** @type {PictureLine[]} */
  #lines = [];
  /** @type {Map<string, number>} */
  #rises = new Map(); // which way the edge was brighter that the last mark of a set was drawn to, as Python had it

  /**
   * @param {HTMLElement} section
   * @param {CalculatorPage} page
   */
  constructor(section, page) {
    this.#section = section;
    this.#page = page;
    this.#marks = new Marks(page);
    this.#figures = new NextFigures(partOf(section, ".rb-marking-figures", HTMLElement), this.#marks, () => page.units);
    const canvas = partOf(section, "canvas", HTMLCanvasElement);
    this.#stage = new Stage(canvas, {
      placed: (spot) => this.#place(spot),
      moved: ({ row }, spot) => this.#move(row, spot),
    });
    for (const input of partsOf(section, 'input[type="file"]', HTMLInputElement)) {
      input.addEventListener("change", () => this.#open(input));
    }
    canvas.addEventListener("keydown", (event) => this.#key(event));
    for (const button of partsOf(section, "button[data-do]", HTMLButtonElement)) {
      button.addEventListener("click", () => this.#do(button.dataset.do ?? "", 1));
    }
    this.#list.addEventListener("change", ({ target }) => target instanceof HTMLInputElement && this.#choose(target.value));
  }

  /** The form was changed, by hand or from here. */
  changed() {
    this.#show();
  }

  /** What the marks mean has been worked out, or cannot be. */
  answered() {
    this.#lines = linesIn(this.#page.outcome, this.#picture);
    this.#show();
  }

  // The picture ----------------------------------------------------------------------

  /** @param {HTMLInputElement} input */
  async #open(input) {
    const [file] = input.files ?? [];
    input.value = ""; // the same file can be chosen again
    if (!file) return;
    this.#say(WORDS.reading);
    const picture = await createImageBitmap(file, { imageOrientation: "from-image" }).catch(() => null);
    if (!picture) {
      this.#say(WORDS.unread);
      return;
    }
    this.#page.picture = file;
    this.#picture = { width: picture.width, height: picture.height };
    this.#row = null;
    this.#section.dataset.state = "shown";
    this.#stage.show(picture);
    const said = this.#takeUp();
    this.answered();
    this.#say(`The picture is open: ${picture.width} by ${picture.height} pixels. ${said}`);
  }

  /** Marks that are somebody's own stay on a new picture; those of the example go. Returns what to say of it. */
  #takeUp() {
    if (!this.#marks.areOwn) {
      this.#marks.begin(this.#picture);
      return this.#figures.next(this.#current);
    }
    const size = this.#marks.size;
    if (size.join() === sizeInWords(this.#picture).join()) return WORDS.kept;
    return `The tables hold marks of a picture of ${size.join(" by ")}. Choose that one, or delete all marks.`;
  }

  // What is marked -------------------------------------------------------------------

  get #current() {
    const { sets } = this.#marks;
    return sets.find(({ id }) => id === this.#set) ?? sets[0];
  }

  get #chosen() {
    return this.#current.marks.find(({ row }) => row === this.#row) ?? null;
  }

  /** @param {string} set */
  #choose(set) {
    this.#set = set;
    this.#letGo();
  }

  /** @param {Spot} spot */
  #place(spot) {
    const { id } = this.#current;
    const row = this.#marks.add(id, spot, { behind: this.#row, figures: this.#figures.take(this.#current) });
    if (row === null) {
      this.#say(WORDS.full);
      return;
    }
    const next = this.#figures.next(this.#current);
    this.#tell(row, next);
    if (!this.#current.draws || !this.#drawsEach) return;
    this.#draw(id, row, next);
    if (row === 1) this.#draw(id, 0); // the first mark waited to know where the limb goes
  }

  /** Whether the reader wants each mark drawn to what the picture shows. */
  get #drawsEach() {
    return partOf(this.#section, ".rb-marking-draw input", HTMLInputElement).checked;
  }

  /**
   * Have a mark drawn to the edge or dot that it was meant for, where the picture shows one.
   * @param {string} set
   * @param {number} row
   * @param {string} [next] what is said of the next mark
   * @returns {Promise<FoundMark | null>}
   */
  async #draw(set, row, next = "") {
    const mark = this.#markAt(set, row);
    const patch = mark && this.#stage.patchAbout(mark);
    if (!mark || !patch) return null;
    const [before, after] = [row - 1, row + 1].map((each) => pairOf(this.#markAt(set, each)));
    const asked = { set, row, mark: pairOf(mark), before, after, rises: this.#rises.get(set) ?? 0, ...patch };
    const found = /** @type {FoundMark | null} */ (await this.#page.find(asked));
    const now = this.#markAt(set, row);
    if (!found || !now || now.x !== mark.x || now.y !== mark.y) return null; // it went on meanwhile
    if (row > 0) this.#rises.set(set, found.rises ?? 0);
    if (found.x !== undefined && found.y !== undefined) this.#marks.move(set, row, { x: found.x, y: found.y }, found.how);
    if (found.said && row === this.#row && set === this.#current.id) this.#tell(row, `${found.said} ${next}`.trim());
    return found;
  }

  /** Draws the chosen mark, whether or not each is drawn by itself. */
  async #drawChosen() {
    const { id } = this.#current;
    if (this.#row === null) return;
    const found = await this.#draw(id, this.#row);
    if (found && !found.said) this.#say(WORDS.nothingToDraw);
  }

  /**
   * @param {string} set
   * @param {number} row
   */
  #markAt(set, row) {
    return this.#marks.sets.find(({ id }) => id === set)?.marks.find((each) => each.row === row) ?? null;
  }

  /**
   * @param {number} row
   * @param {Spot} spot
   */
  #move(row, { x, y }) {
    const { id, marks } = this.#current;
    const { width, height } = this.#picture;
    const there = { x: Math.min(width, Math.max(0, x)), y: Math.min(height, Math.max(0, y)) };
    const mark = marks.find((each) => each.row === row);
    if (mark && (mark.x !== there.x || mark.y !== there.y)) this.#marks.move(id, row, there);
    this.#tell(row);
  }

  // Keys and buttons -----------------------------------------------------------------

  /** @param {KeyboardEvent} event */
  #key(event) {
    const deed = deedOf(event);
    if (!deed) return;
    event.preventDefault();
    this.#do(deed, event.shiftKey ? FAST : 1);
  }

  /**
   * @param {string} deed
   * @param {number} pixels
   */
  #do(deed, pixels) {
    const side = SIDES[/** @type {keyof typeof SIDES} */ (deed)];
    if (side) this.#nudge(side[0] * pixels, side[1] * pixels);
    else this.#deeds[deed]?.();
  }

  /** @type {Record<string, () => void>} */
  #deeds = {
    place: () => this.#place(wholePixel(this.#stage.middle)),
    "let-go": () => this.#letGo(),
    delete: () => this.#delete(),
    clear: () => this.#clear(),
    draw: () => this.#drawChosen(),
    undo: () => this.#step(this.#marks.canUndo, () => this.#marks.undo(), WORDS.undone),
    redo: () => this.#step(this.#marks.canRedo, () => this.#marks.redo(), WORDS.redone),
    "former-mark": () => this.#walk(-1),
    "next-mark": () => this.#walk(1),
    closer: () => this.#stage.zoom(1),
    farther: () => this.#stage.zoom(-1),
    whole: () => this.#stage.seeAll(),
  };

  /**
   * Moves the chosen mark, or, with none chosen, what is in sight.
   * @param {number} across
   * @param {number} down
   */
  #nudge(across, down) {
    const mark = this.#chosen;
    if (mark) this.#move(mark.row, { x: mark.x + across, y: mark.y + down });
    else this.#stage.pan(Math.sign(across), Math.sign(down));
  }

  #letGo() {
    this.#row = null;
    this.#show();
    this.#say(this.#figures.next(this.#current));
  }

  /** The mark before it is chosen then, so that the next takes the place of the one that went. */
  #delete() {
    const { id, marks } = this.#current;
    const at = marks.findIndex(({ row }) => row === this.#row);
    if (at < 0) return;
    this.#figures.keep(id, marks[at].row);
    this.#marks.remove(id, marks[at].row);
    this.#row = marks[at - 1]?.row ?? null;
    this.#show();
    this.#say(WORDS.gone);
  }

  #clear() {
    this.#marks.begin(this.#picture);
    this.#figures.begin();
    this.#rises.clear();
    this.#row = null;
    this.#show();
    this.#say(WORDS.cleared);
  }

  /**
   * @param {boolean} can
   * @param {() => void} deed
   * @param {string} word
   */
  #step(can, deed, word) {
    if (!can) return;
    deed();
    if (!this.#chosen) this.#row = null;
    this.#show();
    this.#say(word);
  }

  /** @param {number} steps */
  #walk(steps) {
    const { marks } = this.#current;
    if (!marks.length) return;
    const at = marks.findIndex(({ row }) => row === this.#row);
    const start = at < 0 && steps < 0 ? 0 : at;
    this.#tell(marks[(start + steps + marks.length) % marks.length].row);
  }

  // Showing --------------------------------------------------------------------------

  /**
   * Choose a mark and say where it stands.
   * @param {number} row
   * @param {string} [more]
   */
  #tell(row, more = "") {
    this.#row = row;
    this.#show();
    this.#stage.reveal();
    const { title } = this.#current;
    const mark = this.#chosen;
    if (mark) this.#say(`${title}, ${mark.label}: ${mark.x} across, ${mark.y} down. ${more}`.trim());
  }

  #show() {
    if (this.#section.dataset.state !== "shown") return;
    const { sets } = this.#marks;
    const current = this.#current;
    const chosen = this.#chosen;
    this.#showSets(sets, current);
    this.#figures.show(current, chosen);
    this.#stage.sight = {
      now: current.marks, others: sets.filter(({ id }) => id !== current.id).flatMap(({ marks }) => marks), chosen, lines: this.#lines,
    };
    const { canUndo, canRedo } = this.#marks;
    const some = current.marks.length > 0;
    this.#enable({
      undo: canUndo, redo: canRedo, delete: chosen !== null, draw: current.draws && chosen !== null, "former-mark": some, "next-mark": some,
    });
    partOf(this.#section, ".rb-marking-draw", HTMLElement).hidden = !current.draws;
  }

  /**
   * @param {MarkSet[]} sets
   * @param {MarkSet} current
   */
  #showSets(sets, current) {
    const shown = partsOf(this.#list, "input", HTMLInputElement).map(({ value }) => value);
    if (shown.join() !== sets.map(({ id }) => id).join()) {
      partsOf(this.#list, "label", HTMLElement).forEach((label) => label.remove());
      this.#list.append(...sets.map(radioOf));
    }
    const labels = partsOf(this.#list, "label", HTMLElement);
    sets.forEach(({ id, marks }, index) => {
      partOf(labels[index], "input", HTMLInputElement).checked = id === current.id;
      partOf(labels[index], ".rb-marking-count", HTMLElement).textContent = String(marks.length);
    });
    partOf(this.#section, ".rb-marking-hint", HTMLElement).textContent = current.hint;
  }

  /**
   * Said, not disabled: a button that a finger or a key is on keeps the focus.
   * @param {Record<string, boolean>} can
   */
  #enable(can) {
    for (const [deed, able] of Object.entries(can)) {
      partOf(this.#section, `button[data-do="${deed}"]`, HTMLButtonElement).setAttribute("aria-disabled", String(!able));
    }
  }

  get #list() {
    return partOf(this.#section, ".rb-marking-sets", HTMLElement);
  }

  /** @param {string} text */
  #say(text) {
    partOf(this.#section, ".rb-marking-said", HTMLElement).textContent = text;
  }
}

/**
 * What Python drew for the picture, in the picture's pixels.
 * @param {HTMLElement} outcome
 * @param {{width: number}} picture
 * @returns {PictureLine[]}
 */
function linesIn(outcome, { width }) {
  const drawing = outcome.dataset.state === "current" ? outcome.querySelector('[data-drawing="picture"] svg') : null;
  if (!(drawing instanceof SVGSVGElement)) return [];
  const scale = width / drawing.viewBox.baseVal.width;
  return partsOf(drawing, "polyline", SVGPolylineElement).map(({ points, classList }) => ({
    points: [...points].map(({ x, y }) => ({ x: x * scale, y: y * scale })),
    kind: classList.contains("rb-quiet") ? "grid" : "curve",
  }));
}

/**
 * What a key asks for on the picture; nothing where it is the page's.
 * @param {KeyboardEvent} event
 */
function deedOf({ key, ctrlKey, metaKey, altKey, shiftKey }) {
  if (altKey) return null;
  if (ctrlKey || metaKey) return { z: shiftKey ? "redo" : "undo", Z: "redo", y: "redo" }[key] ?? null;
  if (key in SIDES) return key;
  return {
    Enter: "place", " ": "place", Escape: "let-go", Delete: "delete", Backspace: "delete", PageUp: "former-mark",
    PageDown: "next-mark", "+": "closer", "=": "closer", "-": "farther", 0: "whole",
  }[key] ?? null;
}

/**
 * @param {MarkSet} set
 * @param {number} index
 */
function radioOf({ id, title }, index) {
  return node("label", {},
    node("input", { type: "radio", name: "marking-set", value: id }),
    node("span", {}, `${index + 1}. ${title}`), " ",
    node("span", { class: "rb-marking-count" }));
}

/** @param {Mark | null} mark */
function pairOf(mark) {
  return mark && [mark.x, mark.y];
}

/** @param {Spot} spot */
function wholePixel({ x, y }) {
  return { x: Math.round(x), y: Math.round(y) };
}
