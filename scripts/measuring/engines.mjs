// node engines.mjs < {"sources": {...}, "requests": {name: request}, "runs": n}
// Prints {engine: {name: median milliseconds}} for the two browser engines, outside a browser.

import { readFileSync } from "node:fs";
import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript/micropython.mjs";
import { loadPyodide } from "pyodide";

const HOME = "/home/rebrace";
const { sources, requests, runs } = JSON.parse(readFileSync(0, "utf8"));
const LOADERS = { MicroPython: () => loadMicroPython({ heapsize: 8 * 1024 * 1024 }), Pyodide: () => loadPyodide() };

function withPackage(python) {
  for (const [path, source] of Object.entries(sources)) {
    const folders = `${HOME}/${path}`.split("/").slice(1, -1);
    folders.forEach((_, depth) => {
      const folder = `/${folders.slice(0, depth + 1).join("/")}`;
      if (!python.FS.analyzePath(folder).exists) python.FS.mkdir(folder);
    });
    python.FS.writeFile(`${HOME}/${path}`, source);
  }
  python.runPython(`import sys\nsys.path.insert(0, "${HOME}")`);
  return python.pyimport("calc.answer");
}

function timed(answer, request) {
  const began = performance.now();
  answer.begin(request);
  while (answer.advance().startsWith('{"progress"'));
  return performance.now() - began;
}

function median(numbers) {
  const sorted = [...numbers].sort((one, other) => one - other);
  return (sorted[(sorted.length - 1) >> 1] + sorted[sorted.length >> 1]) / 2;
}

const found = {};
for (const [name, load] of Object.entries(LOADERS)) {
  const answer = withPackage(await load());
  found[name] = {};
  for (const [id, request] of Object.entries(requests)) {
    timed(answer, request); // imports the calculator's module
    found[name][id] = median(Array.from({ length: runs }, () => timed(answer, request)));
  }
}
console.log(JSON.stringify(found));
