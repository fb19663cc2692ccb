// node engines.mjs < {"files": {part: address}, "requests": {name: request}, "runs": n}
// Prints {engine: {name: median milliseconds}} for the two browser engines, outside a browser: with the site's own
// engine modules and built files.

import { readFileSync } from "node:fs";
import { onDisk } from "./from-disk.mjs";
import * as Pyodide from "../../docs/assets/js/full-engine.mjs";
import * as MicroPython from "../../docs/assets/js/small-engine.mjs";

const { files, requests, runs } = JSON.parse(readFileSync(0, "utf8"));

function timed(engine, request) {
  const began = performance.now();
  const advance = engine.run(request);
  while (advance().startsWith('{"progress"'));
  return performance.now() - began;
}

function median(numbers) {
  const sorted = [...numbers].sort((one, other) => one - other);
  return (sorted[(sorted.length - 1) >> 1] + sorted[sorted.length >> 1]) / 2;
}

const found = {};
for (const [name, engine] of Object.entries({ MicroPython, Pyodide })) {
  await engine.start(onDisk(files));
  found[name] = {};
  for (const [id, request] of Object.entries(requests)) {
    await engine.prepare(id);
    timed(engine, request); // imports the calculator's module
    found[name][id] = median(Array.from({ length: runs }, () => timed(engine, request)));
  }
}
process.stdout.write(JSON.stringify(found), () => process.exit(0));
