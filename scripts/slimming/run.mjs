// node run.mjs < {"interpreter": path, "pack": path, "requests": [text, ...], "programs": [name, ...],
//                    "failing": [name, ...]}
// Answers requests and runs programs, all in one pack, with an interpreter that notes what is called; prints the
// numbers noted.

import { readFileSync } from "node:fs";
import { startInterpreter } from "../../docs/assets/js/interpreter.mjs";
import { unpacked } from "../../docs/assets/js/packs.mjs";

const { interpreter, pack, requests, programs, failing } = JSON.parse(readFileSync(0, "utf8"));

const instances = [];
const instantiate = WebAssembly.instantiateStreaming;
WebAssembly.instantiateStreaming = async (...given) => {
  const made = await instantiate(...given);
  instances.push(made.instance);
  return made;
};

const wasm = new Response(readFileSync(interpreter), { headers: { "Content-Type": "application/wasm" } });
const python = await startInterpreter(Promise.resolve(wasm));
python.add(unpacked(readFileSync(pack)));
const answer = python.load("calc.answer");
const [begin, advance] = [answer("begin"), answer("advance")];
for (const request of requests) {
  begin(request);
  while (advance().startsWith('{"progress"'));
}
for (const program of programs) python.load(program);
for (const program of failing) {
  let failed = false;
  try {
    python.load(program);
  } catch (error) {
    failed = error.name === "PythonError";
  }
  if (!failed) throw new Error(`this should have failed in Python: ${program}`);
}

const noted = instances[0].exports;
const numbers = Object.keys(noted).filter((name) => /^called\d+$/.test(name) && noted[name].value);
process.stdout.write(JSON.stringify(numbers.map((name) => Number(name.slice("called".length)))), () => process.exit(0));
