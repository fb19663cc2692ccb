// node programs.mjs < {"files": {part: address}, "programs": [text, ...]}
// Runs programs one after the other as the page "Python at the bench" does; prints a JSON list of
// {"printed": text, "errors": text, "ended": whether without an error}.

import { readFileSync } from "node:fs";
import { onDisk } from "../../scripts/measuring/from-disk.mjs";

const { files, programs } = JSON.parse(readFileSync(0, "utf8"));
const engine = await import("../../docs/assets/js/programs-engine.mjs");

let result;
await engine.start(onDisk(files), (text, isError) => (result[isError ? "errors" : "printed"] += text));
const results = programs.map((program) => {
  result = { printed: "", errors: "" };
  const ended = engine.run(program);
  return { ...result, ended };
});
process.stdout.write(JSON.stringify(results), () => process.exit(0));
