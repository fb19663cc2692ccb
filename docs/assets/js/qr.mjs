// A text as a square that a phone's camera reads. The library gives the matrix; the drawing is ours.

import { encode } from "uqr";

import { grow } from "./tree.mjs";

const MARGIN = 4; // light modules around it, as the standard asks
const MOST_LETTERS = 1200; // above this the modules are too small for a phone's camera on paper

/** @param {string} text */
export function fitsSquare(text) {
  return text.length <= MOST_LETTERS;
}

/**
 * An SVG of a text, dark on light whatever the colours of the page.
 * @param {string} text
 * @param {string} title what it leads to
 */
export function squareOf(text, title) {
  const { data, size } = encode(text, { ecc: "L", border: MARGIN });
  const runs = data.map((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : "")).join("")).join("");
  return grow([["svg", { class: "rb-square", viewBox: `0 0 ${size} ${size}`, role: "img" }, ["title", {}, title],
    ["rect", { width: size, height: size }], ["path", { d: runs }]]]);
}
