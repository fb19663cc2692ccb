// Owns the Python that runs a reader's programs. JSON text in, JSON text out:
//   in   {"start": {...}}     once, with the files' addresses
//        {"program": "..."}
//   out  {"ready": true} or {"failed": "why"}
//        {"printed": "text", "isError": false}, then {"ended": true}, or {"ended": false} after an error in the
//        program, or {"crash": "why"} if Python itself came to a halt

import { run, start } from "./bench-engine.mjs";
import { labelWasm } from "./wasm-fetch.mjs";

self.onmessage = ({ data }) => {
  const message = JSON.parse(data);
  if (message.start) begin(message.start);
  else execute(message.program);
};

async function begin(files) {
  labelWasm();
  try {
    await start(files, (printed, isError) => tell({ printed, isError }));
    tell({ ready: true });
  } catch (error) {
    tell({ failed: String(error) });
  }
}

function execute(program) {
  try {
    tell({ ended: run(program) });
  } catch (error) {
    tell({ crash: String(error) });
  }
}

function tell(message) {
  postMessage(JSON.stringify(message));
}
