// node answer.mjs small|full < {"files": {part: address}, "requests": [request, ...]}
// Answers requests with the site's own engine modules and built files; prints one JSON list.

import { readFileSync } from "node:fs";
import { onDisk } from "../../scripts/measuring/from-disk.mjs";

const [name] = process.argv.slice(2);
const { files, requests } = JSON.parse(readFileSync(0, "utf8"));
const engine = await import(`../../docs/assets/js/${name}-engine.mjs`);
await engine.start(onDisk(files));

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
