// The search of the site, behind the theme's own box: it speaks as the theme's worker would.
// That worker shortens its list of words by a key in which digits are ambiguous, so that a page full of
// figures makes it look for words that it does not have, and fail. Here a well-kept library keeps the words.

import MiniSearch from "minisearch";
import { stemmer } from "stemmer";

/** @import { SearchResult } from "minisearch" */
/** @typedef {{location: string, title: string, text: string, words?: string}} Section */
/** @typedef {SearchResult | undefined} Found */
/** @typedef {{id: string, found: Found[]}} Hit */

const SETUP = 0;
const READY = 1;
const QUERY = 2;
const RESULT = 3;

const FIELDS = { title: 6, words: 8, text: 1 };
const LOOK_UP = {
  boost: FIELDS,
  weights: { fuzzy: 0.2, prefix: 0.5 },
  tokenize: (/** @type {string} */ text) => [text],
};
const MOST_PAGES = 30;
const EXCERPT = 160; // characters, about two lines on a phone
const FUZZY_FROM = 5; // letters: shorter words have too many neighbours
const SOURCES = /#sources(?:_\d+)?$/; // titles of books, which say little of the page that names them
const LITTLE_WORDS = new Set(
  "a about an and are as at be by can do does for from go has have how i if in into is it its me my of off on onto or out so that the their them then there these this to too up was what when where which who why will with would you your".split(" "),
);
const WORD = /[\p{L}\p{N}]+(?:[/.'’][\p{L}\p{N}]+)*/gu;

/** @type {MiniSearch<Section>} */
let index;
/** @type {Map<string, Section>} */
let documents = new Map();
/** @type {[others: string, own: string][]} */
let otherWords = [];
/** @type {Map<string, string>} */
const stems = new Map();

addEventListener("message", ({ data: { type, data } }) => {
  if (type === SETUP) {
    setUp(data);
    postMessage({ type: READY });
  } else if (type === QUERY) {
    postMessage({ type: RESULT, data: search(data) });
  }
});

/** @param {{config: {others?: Record<string, string>}, docs: Section[]}} data */
function setUp({ config, docs }) {
  otherWords = Object.entries(config.others ?? {})
    .sort(([one], [other]) => other.length - one.length)
    .map(([others, own]) => [` ${spaced(others)} `, ` ${spaced(own)} `]);
  documents = new Map(docs.map((each) => [each.location, each]));
  index = new MiniSearch({
    idField: "location",
    fields: Object.keys(FIELDS),
    tokenize: wordsOf,
    processTerm: stemmed,
    extractField: (section, field) => fieldOf(section, field),
  });
  index.addAll(docs);
}

/**
 * What is looked through; texts come as HTML.
 * @param {Section} section
 * @param {string} field
 */
function fieldOf({ location, title, words, text }, field) {
  return field === "text" ? text.replace(/<[^>]*>/g, " ") : { location, title, words }[field];
}

/** @param {string} id */
function sectionOf(id) {
  const section = documents.get(id);
  if (!section) throw new Error(`the search has no section ${id}`);
  return section;
}

/**
 * The words of a text, in small letters, each in the book's own way of saying it.
 * @param {string} text
 */
function wordsOf(text) {
  let line = ` ${spaced(text)} `;
  for (const [others, own] of otherWords) line = line.replaceAll(others, own);
  return line.split(" ").filter(Boolean);
}

/** @param {string} text */
function spaced(text) {
  return (text.toLowerCase().match(WORD) ?? []).join(" ").replaceAll("’", "'");
}

/** @param {string} word */
function stemmed(word) {
  const known = stems.get(word);
  if (known !== undefined) return known;
  const stem = /\d/.test(word) ? word : stemmer(word);
  stems.set(word, stem);
  return stem;
}

/** @param {string} query */
function search(query) {
  const all = wordsOf(query);
  const telling = all.filter((word) => !LITTLE_WORDS.has(word));
  const words = [...new Set(telling.length ? telling : all)];
  if (!words.length) return { items: [], suggest: [] };
  return { items: pagesWith(words), suggest: suggestions(query) };
}

/** @param {string[]} words */
function pagesWith(words) {
  const hits = words.map((word, place) => new Map(lookUp(word, place === words.length - 1).map((hit) => [hit.id, hit])));
  /** @type {Map<string, Hit[]>} */
  const pages = new Map();
  for (const id of new Set(hits.flatMap((hit) => [...hit.keys()]))) {
    const found = hits.map((hit) => hit.get(id));
    const page = id.split("#")[0];
    pages.set(page, [...(pages.get(page) ?? []), { id, found }]);
  }
  return [...pages].map(([page, sections]) => ranked(page, sections, words))
    .sort((one, other) => other.score - one.score)
    .slice(0, MOST_PAGES)
    .map(({ items }) => items);
}

/**
 * Where a word stands; one that stands nowhere may be misspelt.
 * @param {string} word
 * @param {boolean} last
 */
function lookUp(word, last) {
  const hits = index.search(word, { ...LOOK_UP, prefix: last && word.length > 1 });
  const mayBeMisspelt = !hits.length && word.length >= FUZZY_FROM && !/\d/.test(word);
  return mayBeMisspelt ? index.search(word, { ...LOOK_UP, fuzzy: 0.25 }) : hits;
}

/**
 * A page's sections, the best first, as the theme shows them; all words in one place count most.
 * @param {string} page
 * @param {Hit[]} sections
 * @param {string[]} words
 */
function ranked(page, sections, words) {
  const share = (/** @type {unknown[]} */ flags) => flags.filter(Boolean).length / words.length;
  const ofPage = share(words.map((_, place) => sections.some(({ found }) => found[place])));
  const items = sections.map(({ id, found }) => {
    const sum = found.reduce((total, hit) => total + (hit?.score ?? 0), 0);
    const weight = SOURCES.test(id) ? 0.3 : 1;
    return shown(sectionOf(id), weight * sum * share(found) ** 2, found, words);
  }).sort((one, other) => other.score - one.score);
  const score = items[0].score * (1 + ofPage ** 2);
  const whole = documents.get(page);
  if (whole && !sections.some(({ id }) => id === page)) items.push(shown(whole, 0, [], words));
  return { score, items };
}

/**
 * @param {Section} section
 * @param {number} score
 * @param {Found[]} found
 * @param {string[]} words
 */
function shown({ location, title, text }, score, found, words) {
  const terms = new Set(found.flatMap((hit) => (hit ? hit.terms : [])));
  const marks = (/** @type {string} */ word) => terms.has(stemmed(word.toLowerCase()));
  const asked = Object.fromEntries(words.map((word, place) => [word, Boolean(found[place])]));
  return { location, title: marked(title, marks), text: excerpt(text, marks), score, terms: score ? asked : {} };
}

/**
 * Some words around the first that was found. The text comes as HTML and stays as safe as it is.
 * @param {string} html
 * @param {(word: string) => boolean} marks
 */
function excerpt(html, marks) {
  const words = html.replace(/<[^>]*>/g, " ").split(/\s+/).filter(Boolean);
  const first = words.findIndex((word) => (word.match(WORD) ?? []).some(marks));
  if (first < 0) return "";
  const start = Math.max(0, first - 8);
  let end = start;
  for (let length = 0; end < words.length && length < EXCERPT; end++) length += words[end].length + 1;
  return (start ? "… " : "") + marked(words.slice(start, end).join(" "), marks) + (end < words.length ? " …" : "");
}

/**
 * @param {string} text
 * @param {(word: string) => boolean} marks
 */
function marked(text, marks) {
  return text.replace(/&#?\w+;|[\p{L}\p{N}]+(?:[/.'’][\p{L}\p{N}]+)*/gu,
    (word) => (word.startsWith("&") || !marks(word) ? word : `<mark>${word}</mark>`));
}

/**
 * A word of a title that goes on from what is being typed.
 * @param {string} query
 */
function suggestions(query) {
  const typed = query.toLowerCase().match(/[\p{L}\p{N}]+$/u)?.[0];
  if (!typed) return [];
  for (const { title } of documents.values()) {
    const word = spaced(title).split(" ").find((each) => each.startsWith(typed) && each !== typed);
    if (word) return [word];
  }
  return [];
}
