// A picture to mark on: shown, panned and zoomed, with a loupe that keeps off the finger. What is reckoned here serves
// showing alone; marks are pixels of the whole picture, whatever is shown of it.

/** @import { Mark, Patch, Sight, Spot } from "./marking.d.ts" */

const REACH = 16; // from a finger to a mark that it takes hold of, in the page's pixels
const LOUPE = 62; // its radius
const LOUPE_SCALE = 3; // of the page's pixels to one of the picture's, at least
const CLOSEST = 12;
const EDGE = 6;
const BY_HAND = "hand";
const CROSS = 11; // its arms
const SMALL_CROSS = 6;
const RING = 15;
const NAME = 26; // from a name to the next, at least
const SMALL_COPY = 2048; // the longer side of what is drawn while the whole picture is in sight
const AROUND = 40; // samples of a patch to each side of its mark
const FULL_WIDTH = 4000; // a picture so many pixels wide is sampled pixel by pixel, one of twice as many every second
const STEP = 1.5; // of a zoom
const PAN_STEP = 0.1; // of what is in sight

/** @typedef {{finger: Spot, spot: Spot, held: Mark | null}} Aim what a finger is about to mark, or holds */

export class Stage {
  #canvas;
  #pen;
  #heard;
  /** @type {ImageBitmap | null} */
  #picture = null;
  /** @type {HTMLCanvasElement | null} */
  #small = null;
  #view = { scale: 1, x: 0, y: 0 }; // the page's pixels to one of the picture's; what stands at the upper left corner
  /** @type {Sight} */
  #sight = { now: [], others: [], chosen: null, lines: [] };
  /** @type {Map<number, Spot>} */
  #fingers = new Map();
  /** @type {Aim | null} */
  #aim = null;
  #panning = false;
  #due = false;

  /**
   * heard: what is told of a mark set, moved, or chosen by hand.
   * @param {HTMLCanvasElement} canvas
   * @param {{placed: (spot: Spot) => void, moved: (mark: Mark, spot: Spot) => void}} heard
   */
  constructor(canvas, heard) {
    this.#canvas = canvas;
    this.#heard = heard;
    const pen = canvas.getContext("2d");
    if (!pen) throw new Error("this browser draws nothing");
    this.#pen = pen;
    canvas.addEventListener("pointerdown", (event) => this.#press(event));
    canvas.addEventListener("pointermove", (event) => this.#drag(event));
    canvas.addEventListener("pointerup", (event) => this.#lift(event));
    canvas.addEventListener("pointercancel", (event) => this.#forget(event));
    canvas.addEventListener("wheel", (event) => this.#wheel(event), { passive: false });
    canvas.addEventListener("focus", () => this.#drawSoon());
    canvas.addEventListener("blur", () => this.#drawSoon());
    new ResizeObserver(() => this.#resized()).observe(canvas);
  }

  /** @param {ImageBitmap} picture */
  show(picture) {
    this.#picture?.close();
    this.#picture = picture;
    this.#small = smallCopy(picture);
    this.seeAll();
  }

  /**
   * What stands on the picture: marks, the chosen one, lines.
   * @param {Sight} sight
   */
  set sight(sight) {
    this.#sight = sight;
    this.#drawSoon();
  }

  /** The place in the middle of what is in sight. */
  get middle() {
    const { width, height } = this.#size();
    return this.#toPicture({ x: width / 2, y: height / 2 });
  }

  /**
   * The picture around a place, as Python looks at it; null without a picture.
   * @param {Spot} spot
   * @returns {Patch | null}
   */
  patchAbout({ x, y }) {
    if (!this.#picture) return null;
    const step = Math.max(1, Math.round(this.#picture.width / FULL_WIDTH));
    const wide = 2 * AROUND + 1;
    const [left, top] = [x, y].map((middle) => Math.round(middle) - AROUND * step);
    const copy = document.createElement("canvas");
    copy.width = wide;
    copy.height = wide;
    const pen = copy.getContext("2d", { willReadFrequently: true });
    if (!pen) return null;
    pen.drawImage(this.#picture, left, top, wide * step, wide * step, 0, 0, wide, wide);
    const { data } = pen.getImageData(0, 0, wide, wide);
    const gray = Array.from({ length: wide * wide }, (_, at) => Math.round((data[4 * at] + data[4 * at + 1] + data[4 * at + 2]) / 3));
    return { left, top, step, wide, gray };
  }

  seeAll() {
    if (!this.#picture) return;
    const { width, height } = this.#size();
    const scale = this.#wholeScale();
    this.#view = { scale, x: (this.#picture.width - width / scale) / 2, y: (this.#picture.height - height / scale) / 2 };
    this.#drawSoon();
  }

  /**
   * Closer (1) or farther (-1), about the chosen mark or the middle.
   * @param {number} steps
   */
  zoom(steps) {
    const { width, height } = this.#size();
    const { chosen } = this.#sight;
    const about = chosen ? this.#toPage(chosen) : { x: width / 2, y: height / 2 };
    this.#zoomAbout(about, STEP ** steps);
    this.reveal();
  }

  /**
   * @param {number} across
   * @param {number} down
   */
  pan(across, down) {
    const { width, height } = this.#size();
    this.#panBy(-across * PAN_STEP * width, -down * PAN_STEP * height);
  }

  /** Pan to the chosen mark, if it is out of sight. */
  reveal() {
    const { chosen } = this.#sight;
    if (!chosen) return;
    const { width, height } = this.#size();
    const { x, y } = this.#toPage(chosen);
    if (x !== within(x, width) || y !== within(y, height)) this.#panBy(width / 2 - x, height / 2 - y);
  }

  // Hands ------------------------------------------------------------------------

  /** @param {PointerEvent} event */
  #press(event) {
    if (!this.#picture) return;
    this.#canvas.setPointerCapture(event.pointerId);
    const finger = this.#placeOf(event);
    this.#fingers.set(event.pointerId, finger);
    this.#panning = this.#fingers.size > 1 || event.button === 1 || event.shiftKey;
    if (event.button > 1) return;
    const held = this.#nearest(finger);
    this.#aim = this.#panning ? null : {
      finger, held, spot: held ?? this.#kept(this.#toPicture(finger)),
    };
    this.#drawSoon();
  }

  /** @param {PointerEvent} event */
  #drag(event) {
    const before = this.#fingers.get(event.pointerId);
    if (!before) return;
    const finger = this.#placeOf(event);
    if (this.#panning) this.#panAndPinch(event.pointerId, before, finger);
    this.#fingers.set(event.pointerId, finger);
    if (this.#aim) this.#follow(this.#aim, before, finger);
    this.#drawSoon();
  }

  /**
   * A new mark goes where the finger goes; one that is held moves as the loupe shows it, which is finer.
   * @param {Aim} aim
   * @param {Spot} before
   * @param {Spot} finger
   */
  #follow(aim, before, finger) {
    aim.finger = finger;
    if (!aim.held) {
      aim.spot = this.#kept(this.#toPicture(finger));
      return;
    }
    const scale = this.#loupeScale();
    aim.spot = this.#kept({ x: aim.spot.x + (finger.x - before.x) / scale, y: aim.spot.y + (finger.y - before.y) / scale });
  }

  /** @param {PointerEvent} event */
  #lift(event) {
    const aim = this.#aim;
    this.#forget(event);
    if (!aim) return;
    if (aim.held) this.#heard.moved(aim.held, wholePixel(aim.spot));
    else this.#heard.placed(wholePixel(aim.spot));
  }

  /** @param {PointerEvent} event */
  #forget(event) {
    this.#fingers.delete(event.pointerId);
    this.#aim = null;
    if (this.#fingers.size === 0) this.#panning = false;
    this.#drawSoon();
  }

  /**
   * @param {number} id
   * @param {Spot} before
   * @param {Spot} after
   */
  #panAndPinch(id, before, after) {
    const other = [...this.#fingers].find(([each]) => each !== id)?.[1];
    const share = other ? 0.5 : 1;
    this.#panBy((after.x - before.x) * share, (after.y - before.y) * share);
    if (!other) return;
    const apart = distance(before, other);
    if (apart > 0) this.#zoomAbout({ x: (after.x + other.x) / 2, y: (after.y + other.y) / 2 }, distance(after, other) / apart);
  }

  /** @param {WheelEvent} event */
  #wheel(event) {
    const meant = event.ctrlKey || document.activeElement === this.#canvas; // else the page scrolls
    if (!this.#picture || !meant) return;
    event.preventDefault();
    this.#zoomAbout(this.#placeOf(event), STEP ** (event.deltaY < 0 ? 0.5 : -0.5));
  }

  /** @param {MouseEvent} event */
  #placeOf(event) {
    const { left, top } = this.#canvas.getBoundingClientRect();
    return { x: event.clientX - left - this.#canvas.clientLeft, y: event.clientY - top - this.#canvas.clientTop };
  }

  /** @param {Spot} finger */
  #nearest(finger) {
    const near = this.#sight.now
      .map((mark) => ({ mark, apart: distance(this.#toPage(mark), finger) }))
      .filter(({ apart }) => apart <= REACH)
      .sort((one, other) => one.apart - other.apart);
    return near[0]?.mark ?? null;
  }

  // The view ---------------------------------------------------------------------

  #size() {
    return { width: this.#canvas.clientWidth, height: this.#canvas.clientHeight };
  }

  #wholeScale() {
    const { width, height } = this.#size();
    return this.#picture ? Math.min(width / this.#picture.width, height / this.#picture.height) : 1;
  }

  #loupeScale() {
    return Math.max(LOUPE_SCALE, 2 * this.#view.scale);
  }

  /**
   * @param {Spot} about
   * @param {number} factor
   */
  #zoomAbout(about, factor) {
    const fixed = this.#toPicture(about);
    const scale = Math.min(CLOSEST, Math.max(this.#wholeScale(), this.#view.scale * factor));
    this.#view = { scale, x: fixed.x - about.x / scale, y: fixed.y - about.y / scale };
    this.#panBy(0, 0);
  }

  /**
   * The middle of the view stays on the picture.
   * @param {number} across
   * @param {number} down
   */
  #panBy(across, down) {
    if (!this.#picture) return;
    const { scale, x, y } = this.#view;
    const { width, height } = this.#size();
    const [halfWide, halfHigh] = [width / scale / 2, height / scale / 2];
    this.#view = {
      scale,
      x: within(x - across / scale + halfWide, this.#picture.width) - halfWide,
      y: within(y - down / scale + halfHigh, this.#picture.height) - halfHigh,
    };
    this.#drawSoon();
  }

  /**
   * @param {Spot} spot
   * @returns {Spot}
   */
  #toPage({ x, y }) {
    return { x: (x - this.#view.x) * this.#view.scale, y: (y - this.#view.y) * this.#view.scale };
  }

  /**
   * @param {Spot} place
   * @returns {Spot}
   */
  #toPicture({ x, y }) {
    return { x: this.#view.x + x / this.#view.scale, y: this.#view.y + y / this.#view.scale };
  }

  /** @param {Spot} spot */
  #kept({ x, y }) {
    return { x: within(x, this.#picture?.width ?? 0), y: within(y, this.#picture?.height ?? 0) };
  }

  // Drawing ----------------------------------------------------------------------

  #resized() {
    const { width, height } = this.#size();
    const sharp = window.devicePixelRatio;
    const middle = this.middle;
    this.#canvas.width = Math.round(width * sharp);
    this.#canvas.height = Math.round(height * sharp);
    if (this.#view.scale <= this.#wholeScale()) this.seeAll();
    else this.#view = { ...this.#view, x: middle.x - width / this.#view.scale / 2, y: middle.y - height / this.#view.scale / 2 };
    this.#drawSoon();
  }

  #drawSoon() {
    if (this.#due) return;
    this.#due = true;
    requestAnimationFrame(() => {
      this.#due = false;
      this.#draw();
    });
  }

  #draw() {
    const pen = this.#pen;
    const { width, height } = this.#size();
    const sharp = window.devicePixelRatio;
    pen.setTransform(sharp, 0, 0, sharp, 0, 0);
    pen.clearRect(0, 0, width, height);
    if (!this.#picture || width === 0) return;
    const colours = this.#colours();
    this.#drawAll((spot) => this.#toPage(spot), this.#view.scale, colours, false);
    if (document.activeElement === this.#canvas && !this.#sight.chosen) drawCross(pen, { x: width / 2, y: height / 2 }, 16, colours, colours.now);
    this.#drawLoupe(colours);
  }

  /**
   * The picture and all that stands on it; the chosen mark bare, where it would hide what is under it.
   * @param {(spot: Spot) => Spot} place
   * @param {number} scale
   * @param {Colours} colours
   * @param {boolean} bare
   */
  #drawAll(place, scale, colours, bare) {
    if (!this.#picture) return;
    const pen = this.#pen;
    const small = this.#small && scale * this.#picture.width <= this.#small.width ? this.#small : null;
    const corner = place({ x: 0, y: 0 });
    pen.imageSmoothingEnabled = scale < LOUPE_SCALE;
    pen.drawImage(small ?? this.#picture, corner.x, corner.y, this.#picture.width * scale, this.#picture.height * scale);
    for (const { points, kind } of this.#sight.lines) drawLine(pen, points.map(place), kind, colours);
    const { now, others, chosen } = this.#sight;
    for (const mark of others) drawCross(pen, place(mark), SMALL_CROSS, colours, colours.other);
    /** @type {Spot | null} */
    let named = null; // the last, so that names stand apart
    for (const mark of now) {
      const held = this.#aim?.held?.row === mark.row ? this.#aim.spot : null;
      const isChosen = held !== null || mark.row === chosen?.row;
      const at = place(held ?? mark);
      drawCross(pen, at, CROSS, colours, colours.now);
      if (isChosen && !bare) drawRing(pen, at, colours);
      if (!held && mark.how && mark.how !== BY_HAND) drawDrawn(pen, at, colours);
      if (!isChosen && named && distance(named, at) < NAME) continue;
      if (!isChosen || !bare) drawName(pen, at, mark.label, colours);
      named = at;
    }
    if (this.#aim && !this.#aim.held) drawCross(pen, place(this.#aim.spot), CROSS, colours, colours.now);
  }

  /**
   * Off the finger while one is down; else in a corner away from the chosen mark.
   * @param {Colours} colours
   */
  #drawLoupe(colours) {
    const shown = this.#aim?.spot ?? this.#sight.chosen;
    if (!shown || (!this.#aim && this.#view.scale >= LOUPE_SCALE)) return;
    const size = this.#size();
    const centre = this.#aim ? besideFinger(this.#aim.finger, size) : inCorner(this.#toPage(shown), size);
    const scale = this.#loupeScale();
    const pen = this.#pen;
    pen.save();
    pen.beginPath();
    pen.arc(centre.x, centre.y, LOUPE, 0, 2 * Math.PI);
    pen.fillStyle = colours.halo;
    pen.fill();
    pen.clip();
    this.#drawAll(({ x, y }) => ({ x: centre.x + (x - shown.x) * scale, y: centre.y + (y - shown.y) * scale }), scale, colours, true);
    pen.restore();
    pen.lineWidth = 3;
    pen.strokeStyle = colours.rim;
    pen.beginPath();
    pen.arc(centre.x, centre.y, LOUPE, 0, 2 * Math.PI);
    pen.stroke();
  }

  /** @returns {Colours} */
  #colours() {
    const style = getComputedStyle(this.#canvas);
    /** @param {string} name */
    const of = (name) => style.getPropertyValue(`--rb-marking-${name}`).trim();
    return { now: of("now"), other: of("other"), halo: of("halo"), rim: of("rim"), curve: of("curve"), grid: of("grid") };
  }
}

/** @typedef {{now: string, other: string, halo: string, rim: string, curve: string, grid: string}} Colours */

// The loupe's place ------------------------------------------------------------------

/**
 * Above the finger; beside it, on the roomier side, where there is no room above.
 * @param {Spot} finger
 * @param {{width: number, height: number}} size
 * @returns {Spot}
 */
function besideFinger({ x, y }, { width, height }) {
  const away = LOUPE + 44;
  const above = y - away;
  if (above >= LOUPE) return { x: within(x, width, LOUPE), y: above };
  return { x: x < width / 2 ? x + away : x - away, y: within(y, height, LOUPE) };
}

/**
 * In the upper corner that is farther from a mark.
 * @param {Spot} mark
 * @param {{width: number, height: number}} size
 * @returns {Spot}
 */
function inCorner({ x, y }, { width, height }) {
  const room = LOUPE + EDGE;
  return { x: x < width / 2 ? width - room : room, y: y < height / 2 ? height - room : room };
}

// Strokes ------------------------------------------------------------------------------

/**
 * @param {CanvasRenderingContext2D} pen
 * @param {Spot[]} points
 * @param {"curve" | "grid"} kind
 * @param {Colours} colours
 */
function drawLine(pen, points, kind, colours) {
  pen.beginPath();
  points.forEach(({ x, y }, index) => (index ? pen.lineTo(x, y) : pen.moveTo(x, y)));
  pen.setLineDash(kind === "grid" ? [5, 4] : []);
  outline(pen, kind === "grid" ? 1 : 2, colours, colours[kind]);
  pen.setLineDash([]);
}

/**
 * Around the chosen mark.
 * @param {CanvasRenderingContext2D} pen
 * @param {Spot} place
 * @param {Colours} colours
 */
function drawRing(pen, { x, y }, colours) {
  pen.beginPath();
  pen.arc(x, y, RING, 0, 2 * Math.PI);
  outline(pen, 2, colours, colours.now);
}

/**
 * A corner to each side of the cross: the picture drew this mark, not a hand.
 * @param {CanvasRenderingContext2D} pen
 * @param {Spot} place
 * @param {Colours} colours
 */
function drawDrawn(pen, { x, y }, colours) {
  const half = CROSS - 3;
  pen.beginPath();
  for (const [across, down] of [[1, 1], [1, -1], [-1, 1], [-1, -1]]) {
    pen.moveTo(x + across * half, y + down * (half - 4));
    pen.lineTo(x + across * half, y + down * half);
    pen.lineTo(x + across * (half - 4), y + down * half);
  }
  outline(pen, 2, colours, colours.now);
}

/**
 * @param {CanvasRenderingContext2D} pen
 * @param {Spot} place of the mark that has this name
 * @param {string} name
 * @param {Colours} colours
 */
function drawName(pen, { x, y }, name, colours) {
  pen.font = "600 13px sans-serif";
  pen.lineWidth = 3;
  pen.lineJoin = "round";
  pen.strokeStyle = colours.halo;
  pen.strokeText(name, x + RING - 3, y - RING + 3);
  pen.fillStyle = colours.now;
  pen.fillText(name, x + RING - 3, y - RING + 3);
}

/**
 * Its middle stays open, so that what is marked is seen.
 * @param {CanvasRenderingContext2D} pen
 * @param {Spot} place
 * @param {number} arm
 * @param {Colours} colours
 * @param {string} colour
 */
function drawCross(pen, { x, y }, arm, colours, colour) {
  const open = 3;
  pen.beginPath();
  for (const [across, down] of [[1, 0], [-1, 0], [0, 1], [0, -1]]) {
    pen.moveTo(x + across * open, y + down * open);
    pen.lineTo(x + across * arm, y + down * arm);
  }
  outline(pen, 2, colours, colour);
}

/**
 * Stroke the path in a colour with a rim around it, so that it stands out from light and dark.
 * @param {CanvasRenderingContext2D} pen
 * @param {number} wide
 * @param {Colours} colours
 * @param {string} colour
 */
function outline(pen, wide, colours, colour) {
  pen.lineWidth = wide + 2;
  pen.strokeStyle = colours.halo;
  pen.stroke();
  pen.lineWidth = wide;
  pen.strokeStyle = colour;
  pen.stroke();
}

// Small helpers ------------------------------------------------------------------------

/** @param {ImageBitmap} picture */
function smallCopy(picture) {
  const share = SMALL_COPY / Math.max(picture.width, picture.height);
  if (share >= 1) return null;
  const copy = document.createElement("canvas");
  copy.width = Math.round(picture.width * share);
  copy.height = Math.round(picture.height * share);
  const pen = copy.getContext("2d");
  if (!pen) return null;
  pen.imageSmoothingQuality = "high";
  pen.drawImage(picture, 0, 0, copy.width, copy.height);
  return copy;
}

/** @param {Spot} spot */
function wholePixel({ x, y }) {
  return { x: Math.round(x), y: Math.round(y) };
}

/**
 * @param {Spot} one
 * @param {Spot} other
 */
function distance(one, other) {
  return Math.hypot(one.x - other.x, one.y - other.y);
}

/**
 * @param {number} value
 * @param {number} length
 * @param {number} [edge]
 */
function within(value, length, edge = 0) {
  return Math.min(length - edge, Math.max(edge, value));
}
