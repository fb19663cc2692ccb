// Builds the nodes of an answer: a string is text, [tag, attributes, ...children] an element.
// Only what is listed here is ever made, so that no text from a link can become anything but text.

/** @import { TreeNode } from "./types.d.ts" */

const HTML = new Set(
  ("a abbr b br caption code dd details div dl dt em figcaption figure h2 h3 h4 hr i li ol p section small span " +
    "strong sub summary sup table tbody td tfoot th thead tr ul").split(" "),
);
const SVG = new Set(
  "circle defs desc ellipse g line path polygon polyline rect svg text title tspan".split(" "),
);
const ATTRIBUTES = new Set(
  ("class colspan cx cy d dominant-baseline dx dy focusable headers height id lang open points " +
    "preserveAspectRatio r role rowspan rx ry scope tabindex text-anchor transform viewBox width " +
    "x x1 x2 y y1 y2").split(" "),
);
const SVG_NAMESPACE = "http://www.w3.org/2000/svg";

/**
 * Return a fragment with the elements of a tree.
 * @param {TreeNode[]} tree
 */
export function grow(tree) {
  const fragment = document.createDocumentFragment();
  fragment.append(...tree.map((node) => growNode(node, false)));
  return fragment;
}

/**
 * @param {TreeNode} node
 * @param {boolean} insideDrawing
 * @returns {Node}
 */
function growNode(node, insideDrawing) {
  if (!Array.isArray(node)) return document.createTextNode(String(node));
  const [tag, attributes, ...children] = node;
  const drawing = insideDrawing || tag === "svg";
  if (!(drawing ? SVG : HTML).has(tag)) return growAll(document.createDocumentFragment(), children, drawing);
  const element = drawing ? document.createElementNS(SVG_NAMESPACE, tag) : document.createElement(tag);
  for (const [name, value] of Object.entries(attributes ?? {})) setAttribute(element, name, String(value));
  return growAll(element, children, drawing);
}

/**
 * @template {ParentNode & Node} Parent
 * @param {Parent} parent
 * @param {TreeNode[]} children
 * @param {boolean} drawing
 */
function growAll(parent, children, drawing) {
  parent.append(...children.map((child) => growNode(child, drawing)));
  return parent;
}

/**
 * @param {Element} element
 * @param {string} name
 * @param {string} value
 */
function setAttribute(element, name, value) {
  if (ATTRIBUTES.has(name) || /^(aria|data)-[a-z-]+$/.test(name)) {
    element.setAttribute(name, value);
  } else if (name === "href" && element.localName === "a" && staysHere(value)) {
    element.setAttribute(name, value);
  }
}

/**
 * Whether an address is relative, so that it can only lead to a page of this site.
 * @param {string} address
 */
function staysHere(address) {
  return /^(#|\.{0,2}\/(?!\/)|[a-z0-9-]+\/)[\w./#%=&+:;,~-]*$/i.test(address);
}
