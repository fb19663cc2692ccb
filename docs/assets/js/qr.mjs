// A text as a square that a phone's camera reads. The library gives the matrix; the drawing is ours.

import { encode } from "uqr";

const MARGIN = 4; // light modules around it, as the standard asks
const MOST_LETTERS = 1200; // above this the modules are too small for a phone's camera on paper
const SVG = "http://www.w3.org/2000/svg";

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
  const drawing = made("svg", { class: "rb-square", viewBox: `0 0 ${size} ${size}`, role: "img", "shape-rendering": "crispEdges" });
  const name = made("title", {});
  name.textContent = title;
  drawing.append(name, made("rect", { width: String(size), height: String(size), fill: "#fff" }), made("path", { d: runs, fill: "#000" }));
  return drawing;
}

/**
 * @param {string} tag
 * @param {Record<string, string>} attributes
 */
function made(tag, attributes) {
  const element = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  return element;
}
