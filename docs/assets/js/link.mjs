// The inputs of a calculator in the fragment of its address.
// Whatever a link carries is hostile: it is only ever text, and only so much of it.

/** @import { Pair } from "./types.d.ts" */

const LONGEST_FRAGMENT = 16000;
const LONGEST_VALUE = 4000;
const LONGEST_NAME = 64;
const MOST_PAIRS = 100;

/**
 * Whether a fragment carries inputs, rather than the name of a place on the page.
 * @param {string} fragment
 */
export function carriesInputs(fragment) {
  return fragment.includes("=");
}

/**
 * Read a fragment (with or without "#"): {pairs: [[name, text], ...], notes: [sentence, ...]}.
 * @param {string} fragment
 * @returns {{pairs: Pair[], notes: string[]}}
 */
export function readLink(fragment) {
  const text = fragment.replace(/^#/, "");
  if (!carriesInputs(text)) return { pairs: [], notes: [] };
  if (text.length > LONGEST_FRAGMENT) {
    return { pairs: [], notes: ["This link is too long to be one of ours; nothing was taken from it."] };
  }
  const given = [...new URLSearchParams(text)];
  const pairs = given
    .filter(([name, value]) => name.length <= LONGEST_NAME && value.length <= LONGEST_VALUE)
    .slice(0, MOST_PAIRS);
  const left = given.length - pairs.length;
  const notes = left ? [`The link held ${left} more or longer entries than this page reads; they were left out.`] : [];
  return { pairs, notes };
}

/**
 * Write pairs as a fragment that people can read, or null if it would be too long to share.
 * @param {Pair[]} pairs
 */
export function writeLink(pairs) {
  const text = new URLSearchParams(pairs)
    .toString()
    .replaceAll("%2F", "/")
    .replaceAll("%3A", ":")
    .replaceAll("%3B", ";")
    .replaceAll("%2C", ",");
  return text.length <= LONGEST_FRAGMENT ? `#${text}` : null;
}

/**
 * Split pairs into the first of each name, which counts, and the others.
 * @param {Pair[]} pairs
 */
export function splitRepeated(pairs) {
  const first = pairs.filter(([name], index) => pairs.findIndex(([other]) => other === name) === index);
  return { first, again: pairs.filter((pair) => !first.includes(pair)) };
}
