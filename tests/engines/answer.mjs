// node answer.mjs small|full < {"files": {part: address}, "requests": [request, ...]}
// Answers requests with the site's own engine modules and built files; prints one JSON list.

import { readFile } from "node:fs/promises";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

// The engine modules fetch; here what they fetch lies on the disk.
globalThis.fetch = async (address) => new Response(await readFile(new URL(address)));

const [name] = process.argv.slice(2);
const { files, requests } = JSON.parse(readFileSync(0, "utf8"));
files.pyodide = fileURLToPath(files.pyodide); // outside a browser it wants a path
const engine = await import(`../../docs/assets/js/${name}-engine.mjs`);
await engine.start(files);

async function answer(request) {
  await engine.prepare("task" in request ? "record" : request.calculator);
  const advance = engine.run(JSON.stringify(request));
  for (;;) {
    const found = JSON.parse(advance());
    if (!("progress" in found)) return found;
  }
}

const answers = [];
for (const request of requests) {
  answers.push(await answer(request).catch((error) => ({ fault: error.message })));
}
process.stdout.write(JSON.stringify(answers), () => process.exit(0));
