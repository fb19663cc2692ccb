// Owns one Python engine. JSON text in, JSON text out:
//   in   {"start": "small", "files": {...}}      once; with "calculator", that one is read before it is asked
//        {"id": 7, "request": {...}}             the newest one wins
//   out  {"alive": true} at once, and now and then while bytes come
//        {"ready": "small"} or {"failed": cause}
//        {"id": 7, "fetching": true}, then {"id": 7, "fetching": false} or {"id": 7, "lost": cause}
//        {"id": 7, "progress": 0.4}, then {"id": 7, "answer": {...}},
//        or {"id": 7, "error": "why"} from Python, or {"id": 7, "crash": "why"} from the engine itself

import { causeOf, tryWebAssembly, watchTransfers, withFiles } from "./transfers.mjs";
import { labelWasm } from "./wasm-fetch.mjs";

/** @import { Asked, EngineFiles, PythonEngine } from "./types.d.ts" */

const ENGINES = {
  small: () => import("./small-engine.mjs"),
  full: () => import("./full-engine.mjs"),
};
const BREATH_MS = 30; // how long a solve may go on before newer requests are looked at

/** @typedef {{id: number, request: Asked}} Question */

/** @type {PythonEngine | null} */
let engine = null;
/** @type {Question | null} */
let newest = null;
let working = false;
const here = new Set(); // parts of the package that have been fetched

labelWasm();
watchTransfers(() => tell({ alive: true }));
tell({ alive: true });

self.onmessage = ({ data }) => {
  const message = JSON.parse(data);
  if (message.start) {
    start(message.start, message.files).then(() => readAhead(message.calculator));
  } else {
    newest = message;
    work();
  }
};

/**
 * @param {keyof typeof ENGINES} name
 * @param {EngineFiles} files
 */
async function start(name, files) {
  try {
    engine = await withFiles(async () => {
      tryWebAssembly();
      const loaded = await ENGINES[name]();
      await loaded.start(files);
      return loaded;
    });
  } catch (error) {
    tell({ failed: await causeOf(error) });
    return;
  }
  tell({ ready: name });
  work();
}

/**
 * Read what will be asked first, while the page is not ready to ask it.
 * @param {string | undefined} calculator
 */
async function readAhead(calculator) {
  try {
    if (calculator) await engine?.prepare(calculator);
    if (calculator && !working) engine?.read?.(calculator);
  } catch {
    // told at the question
  }
}

async function work() {
  if (!engine || working) return;
  working = true;
  while (newest) {
    const current = newest;
    newest = null;
    if (await hasFiles(engine, current)) await answer(engine, current);
  }
  working = false;
}

/**
 * See to it that a question's part of the package is there; what is lost has been told.
 * @param {PythonEngine} python
 * @param {Question} question
 */
async function hasFiles(python, { id, request }) {
  const part = "task" in request ? "record" : request.calculator;
  if (here.has(part)) return true;
  tell({ id, fetching: true });
  try {
    await withFiles(() => python.prepare(part));
    here.add(part);
    tell({ id, fetching: false });
    return true;
  } catch (error) {
    tell({ id, lost: await causeOf(error) });
    return false;
  }
}

/**
 * @param {PythonEngine} python
 * @param {Question} question
 */
async function answer(python, { id, request }) {
  try {
    const advance = python.run(JSON.stringify(request));
    let breath = performance.now();
    for (;;) {
      const text = advance();
      const { progress } = JSON.parse(text);
      if (progress === undefined) {
        postMessage(`{"id":${Number(id)},"answer":${text}}`);
        return;
      }
      if (performance.now() - breath > BREATH_MS) {
        tell({ id, progress });
        await nextTask();
        if (newest) return;
        breath = performance.now();
      }
    }
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    tell({ id, [isFromPython(error) ? "error" : "crash"]: why });
  }
}

/** @param {unknown} error */
function isFromPython(error) {
  return error instanceof Error && error.name === "PythonError" && !/\b(MemoryError|SystemError)\b/.test(error.message);
}

/** @returns {Promise<void>} */
function nextTask() {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

/** @param {Record<string, unknown>} message */
function tell(message) {
  postMessage(JSON.stringify(message));
}
