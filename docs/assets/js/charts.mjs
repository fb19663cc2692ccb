// Line charts from the numbers of an answer, drawn by uPlot once the answer is on the page.
// The figure already holds the same numbers as a table, so a chart that cannot be drawn is no loss.

import { partOf, partsOf } from "./parts.mjs";

/** @import { Chart, ChartLine } from "./types.d.ts" */

/** @import uPlot from "uplot" */
/** @typedef {{plot: uPlot, box: HTMLElement, chart: Chart}} Drawn */

const LIBRARY = new URL("./vendor/uplot.mjs", import.meta.url).href;
const STYLE = new URL("../css/vendor/uplot.css", import.meta.url).href;
const HEIGHT = 280;
const PATIENCE_MS = 5000; // then a chart is written in what there is
const DASHES = [
  { name: "solid", pattern: [] },
  { name: "dashed", pattern: [8, 4] },
  { name: "dotted", pattern: [2, 4] },
  { name: "dashed", pattern: [14, 3] },
];
/** @type {Map<string, Drawn>} */
const plots = new Map(); // by the chart's id
const style = Object.assign(document.createElement("link"), { rel: "stylesheet", href: STYLE });
/** @type {Promise<typeof uPlot> | null} */
let library = null;

/** @type {Map<Element, () => void>} */
const due = new Map(); // places that no reader has come near yet, each with what draws in it

const near = new IntersectionObserver((entries) => {
  for (const { target, isIntersecting } of entries) if (isIntersecting) setTimeout(() => drawDue(target)); // a task each
}, { rootMargin: "100%" });

window.addEventListener("beforeprint", () => [...due.keys()].forEach(drawDue));

const resized = new ResizeObserver((entries) => {
  for (const { target } of entries) fit([...plots.values()].find(({ box }) => box === target));
});

/**
 * Draw every chart that has its place in the outcome, once somebody comes near it or prints the page.
 * @param {HTMLElement} outcome
 * @param {Chart[]} charts
 */
export async function drawCharts(outcome, charts) {
  const places = charts.flatMap((chart) => {
    const box = placeOf(outcome, chart);
    return box ? [{ chart, box }] : [];
  });
  if (!places.length) return;
  try {
    // Instant navigation takes it away with the page before; to put it in again loads it again.
    if (!style.isConnected) document.head.append(style);
    library ??= load();
    const Plot = await library;
    for (const box of due.keys()) if (!box.isConnected) forget(box);
    for (const { chart, box } of places) {
      if (!box.isConnected) continue;
      if (plots.has(chart.id)) draw(Plot, chart, box); // drawn before: its place would be seen empty
      else drawOnceNear(Plot, chart, box);
    }
  } catch {
    library = null;
    for (const { box } of places) box.hidden = true;
  }
}

/**
 * @param {typeof uPlot} Plot
 * @param {Chart} chart
 * @param {HTMLElement} box
 */
function drawOnceNear(Plot, chart, box) {
  due.set(box, () => draw(Plot, chart, box));
  near.observe(box);
}

/** @param {Element} box */
function drawDue(box) {
  const drawIt = due.get(box);
  forget(box);
  if (box.isConnected) drawIt?.();
}

/** @param {Element} box */
function forget(box) {
  due.delete(box);
  near.unobserve(box);
}

/** @returns {Promise<typeof uPlot>} */
async function load() {
  const [module] = await Promise.all([import(LIBRARY), dressed()]);
  watchScheme();
  return module.default;
}

/**
 * Resolve once the page has its own fonts, in which charts are written: they come behind the answer to a link.
 * @returns {Promise<void>}
 */
function dressed() {
  const root = document.documentElement;
  return new Promise((resolve) => {
    const look = () => ["answer", "theme"].includes(root.dataset.plain ?? "") || resolve();
    new MutationObserver(look).observe(root, { attributeFilter: ["data-plain"] });
    setTimeout(resolve, PATIENCE_MS);
    look();
  });
}

/**
 * Where a chart goes: a box that has its height from the start, so that nothing jumps.
 * @param {HTMLElement} outcome
 * @param {Chart} chart
 */
function placeOf(outcome, chart) {
  const figure = partsOf(outcome, "figure.rb-chart", HTMLElement).find(({ dataset }) => dataset.chart === chart.id);
  if (!figure) return null;
  const box = partOf(figure, ".rb-plot", HTMLElement);
  box.setAttribute("aria-hidden", "true"); // the table below it says the same
  return box;
}

/**
 * @param {typeof uPlot} Plot
 * @param {Chart} chart
 * @param {HTMLElement} box
 */
function draw(Plot, chart, box) {
  const former = plots.get(chart.id);
  if (former) resized.unobserve(former.box);
  const plot = former && shapeOf(former.chart) === shapeOf(chart) ? moved(former.plot, chart, box) : made(Plot, chart, box);
  if (former && former.plot !== plot) former.plot.destroy();
  plots.set(chart.id, { plot, box, chart });
  resized.observe(box);
}

/**
 * @param {typeof uPlot} Plot
 * @param {Chart} chart
 * @param {HTMLElement} box
 */
function made(Plot, chart, box) {
  return new Plot(options(chart, box.clientWidth), columns(chart), box);
}

/**
 * A plot that differs in its numbers only is taken along, which is quicker than a new one.
 * @param {uPlot} plot
 * @param {Chart} chart
 * @param {HTMLElement} box
 */
function moved(plot, chart, box) {
  box.append(plot.root);
  plot.setData(columns(chart));
  return plot;
}

/** @param {Chart} chart */
function shapeOf({ x, y, lines }) {
  return JSON.stringify([x.label, y.label, lines.map(({ label, style }) => [label, style])]);
}

/** @param {Drawn | undefined} entry */
function fit(entry) {
  if (entry?.box.isConnected && entry.box.clientWidth !== entry.plot.width) {
    entry.plot.setSize({ width: entry.box.clientWidth, height: HEIGHT });
  }
}

/**
 * uPlot wants one column of x for all lines; every line has its own xs.
 * @param {Chart} chart
 * @returns {uPlot.AlignedData}
 */
function columns(chart) {
  const xs = [...new Set(chart.lines.flatMap((line) => line.xs))].sort((a, b) => a - b);
  const ys = chart.lines.map((line) => {
    const at = new Map(line.xs.map((x, index) => [x, line.ys[index]]));
    return xs.map((x) => at.get(x));
  });
  return [xs, ...ys];
}

/**
 * @param {Chart} chart
 * @param {number} width
 * @returns {uPlot.Options}
 */
function options(chart, width) {
  const style = getComputedStyle(document.body);
  const colour = (/** @type {string} */ name) => style.getPropertyValue(name).trim();
  const axis = (/** @type {string} */ label) => ({
    label,
    stroke: colour("--rb-ink"),
    grid: { stroke: colour("--rb-rule"), width: 1 },
    ticks: { stroke: colour("--rb-rule"), width: 1 },
    font: `12px ${style.fontFamily}`,
    labelFont: `12px ${style.fontFamily}`,
  });
  return {
    width,
    height: HEIGHT,
    scales: { x: { time: false } },
    axes: [axis(chart.x.label), axis(chart.y.label)],
    cursor: { y: false, drag: { setScale: false } },
    legend: { markers: { dash: (plot, index) => DASHES[(index - 1) % DASHES.length].name } },
    series: [
      { label: chart.x.label, value: shortNumber },
      ...chart.lines.map((line, index) => series(line, colour(`--rb-line-${1 + (rank(chart.lines, index) % 3)}`), index)),
    ],
  };
}

/**
 * Lines and points take the colours in turn, each for themselves: the first points belong to the first line.
 * @param {ChartLine[]} lines
 * @param {number} index
 */
function rank(lines, index) {
  return lines.slice(0, index).filter(({ style }) => style === lines[index].style).length;
}

/**
 * Lines differ by colour and by dash, so that colour alone never tells them apart.
 * @param {ChartLine} line
 * @param {string} stroke
 * @param {number} index
 * @returns {uPlot.Series}
 */
function series({ label, style }, stroke, index) {
  const points = style === "points";
  return {
    label,
    class: points ? "rb-points" : "rb-lines",
    stroke,
    value: shortNumber,
    width: 2,
    spanGaps: true,
    dash: DASHES[index % DASHES.length].pattern,
    paths: points ? () => null : undefined,
    points: { show: points, size: 8, fill: stroke },
  };
}

/**
 * What the legend says under the pointer; the exact figures are in the table.
 * @param {uPlot} plot
 * @param {number | null} value
 */
function shortNumber(plot, value) {
  return value === null || value === undefined ? "" : String(Number(value.toPrecision(4)));
}

function watchScheme() {
  new MutationObserver(async () => {
    const Plot = await library;
    if (!Plot) return;
    for (const { plot, chart, box } of Array.from(plots.values())) { // drawing anew adds to them
      resized.unobserve(box);
      plot.destroy();
      plots.delete(chart.id);
      if (box.isConnected) draw(Plot, chart, box);
    }
  }).observe(document.body, { attributes: true, attributeFilter: ["data-md-color-scheme"] });
}
