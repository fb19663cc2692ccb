// node run.mjs < {"interpreter": path, "sources": {path: text}, "requests": [text, ...], "programs": [text, ...],
//                    "failing": [text, ...]}
// Answers requests and runs programs with an interpreter that notes what is called; prints the numbers noted.

import { readFileSync } from "node:fs";
import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript/micropython.mjs";

const HOME = "/home/rebrace";
const { interpreter, sources, requests, programs, failing } = JSON.parse(readFileSync(0, "utf8"));

const instances = [];
const instantiate = WebAssembly.instantiate;
WebAssembly.instantiate = async (...given) => {
  const made = await instantiate(...given);
  instances.push(made.instance ?? made);
  return made;
};

const python = await loadMicroPython({ url: interpreter, heapsize: 8 * 1024 * 1024, stdout: () => {} });
for (const [path, source] of Object.entries(sources)) {
  let folder = "";
  for (const part of `${HOME}/${path}`.split("/").slice(1, -1)) {
    folder += `/${part}`;
    if (!python.FS.analyzePath(folder).exists) python.FS.mkdir(folder);
  }
  python.FS.writeFile(`${HOME}/${path}`, source);
}
python.runPython(`import sys\nsys.path.insert(0, "${HOME}")`);
const answer = python.pyimport("calc.answer");
for (const request of requests) {
  answer.begin(request);
  while (answer.advance().startsWith('{"progress"'));
}
for (const program of programs) python.runPython(program);
for (const program of failing) {
  let failed = false;
  try {
    python.runPython(program);
  } catch (error) {
    failed = error.name === "PythonError";
  }
  if (!failed) throw new Error(`this should have failed in Python: ${program}`);
}

const noted = instances.at(-1).exports;
const numbers = Object.keys(noted).filter((name) => /^called\d+$/.test(name) && noted[name].value);
process.stdout.write(JSON.stringify(numbers.map((name) => Number(name.slice("called".length)))), () => process.exit(0));
