// MicroPython, compiled to WebAssembly by Emscripten, with just what the calculators ask of it: import a module,
// call a function of it with a text. The loader that comes with it also brings a file system, a prompt and objects
// that both languages share, in ten times the bytes, and looks every function up twice that C calls.

import { moduleFiles } from "./module-files.mjs";

/** @import { Modules, PythonFunction } from "./types.d.ts" */
/** @typedef {(...given: number[]) => any} Foreign a function on numbers, of the interpreter or for it */
/** @typedef {Record<string, Foreign> & {memory: WebAssembly.Memory, __indirect_function_table: WebAssembly.Table}} Exports */

const STACK_WORDS = 2048; // of Python's own stack, as its loader has it
const HEAP_BYTES = 8 * 1024 * 1024;
const PAGE_BYTES = 65_536;
const LONG_JUMP = Infinity; // what Emscripten throws where C jumps back
const VALUE_BYTES = 12; // three words
const FROM_PYTHON = { exception: -1, text: 5 };
const TO_PYTHON = { text: 5 };
const SHARED_WITH_NONE = -1;

/** An exception of Python's; its message is the traceback. */
class PythonError extends Error {
  name = "PythonError";
}

/**
 * Start an interpreter with heapBytes for its objects, to begin with.
 * @param {Promise<Response>} wasm
 * @param {number} heapBytes
 */
export async function startInterpreter(wasm, heapBytes = HEAP_BYTES) {
  /** @type {Exports} */
  let c;
  const memory = () => c.memory.buffer; // which is another one when it has grown
  const files = moduleFiles(memory);
  const offered = { ...files.calls, ...support(() => c) };
  const { instance } = await WebAssembly.instantiateStreaming(wasm, importing(offered));
  c = /** @type {Exports} */ (instance.exports);
  c.emscripten_stack_init();
  c.__wasm_call_ctors();
  c.mp_js_init(STACK_WORDS, heapBytes);
  c.proxy_c_init();

  /**
   * What Python leaves as a value: its kind, and two words that depend on that.
   * @param {(value: number) => void} leave
   */
  function left(leave) {
    const value = c.malloc(VALUE_BYTES);
    leave(value);
    const words = new Int32Array(memory(), value, VALUE_BYTES / 4).slice();
    c.free(value);
    const [kind, size, address] = words;
    if (kind !== FROM_PYTHON.exception) return words;
    const [, traceback] = textAt(address, size).split("\x04"); // behind its kind
    c.free(address);
    throw new PythonError(traceback);
  }

  /**
   * The number under which Python keeps an object that it leaves.
   * @param {(value: number) => void} leave
   */
  function objectLeft(leave) {
    const [, number] = left(leave);
    return number;
  }

  /** @param {(value: number) => void} leave */
  function textLeft(leave) {
    const [kind, size, address] = left(leave);
    return kind === FROM_PYTHON.text ? textAt(address, size) : null;
  }

  /**
   * @param {number} address
   * @param {number} size
   */
  function textAt(address, size) {
    return new TextDecoder().decode(new Uint8Array(memory(), address, size));
  }

  /**
   * Put a text into the interpreter's memory, with a zero behind it.
   * @param {string} text
   */
  function put(text) {
    const bytes = new TextEncoder().encode(`${text}\0`);
    const address = c.malloc(bytes.length);
    new Uint8Array(memory(), address).set(bytes);
    return { address, size: bytes.length - 1 };
  }

  /**
   * @param {string} text
   * @param {(address: number) => void} use
   */
  function withText(text, use) {
    const { address } = put(text);
    use(address);
    c.free(address);
  }

  /**
   * @param {number} called
   * @param {string | undefined} text
   */
  function call(called, text) {
    if (text === undefined) return textLeft((value) => c.proxy_c_to_js_call(called, 0, 0, value));
    const { address, size } = put(text); // which Python frees
    const given = c.malloc(VALUE_BYTES);
    new Int32Array(memory(), given).set([TO_PYTHON.text, size, address]);
    return textLeft((value) => {
      c.proxy_c_to_js_call(called, 1, given, value);
      c.free(given);
    });
  }

  return {
    /** @param {Modules} modules */
    add: (modules) => files.add(modules),

    /**
     * Import a module that was added; returns what finds a function in it. Each is to be asked for once: what
     * Python has handed out it keeps.
     * @param {string} name
     */
    load(name) {
      const module = objectLeft((value) => withText(name, (text) => c.mp_js_do_import(text, value)));
      /** @type {(part: string) => PythonFunction} */
      return (part) => {
        const found = objectLeft((value) => (
          withText(part, (text) => c.proxy_c_to_js_lookup_attr(module, text, value))));
        return (text) => call(found, text);
      };
    },
  };
}

/**
 * What C needs of the browser beside files.
 * @param {() => Exports} exports
 * @returns {Record<string, Foreign>}
 */
function support(exports) {
  const began = Date.now();
  return {
    _emscripten_throw_longjmp() {
      throw LONG_JUMP;
    },
    emscripten_resize_heap(size) {
      const { memory } = exports();
      try {
        memory.grow(Math.ceil(((size >>> 0) - memory.buffer.byteLength) / PAGE_BYTES));
        return 1;
      } catch {
        return 0;
      }
    },
    js_check_existing: () => SHARED_WITH_NONE,
    mp_js_random_u32: () => crypto.getRandomValues(new Uint32Array(1))[0],
    mp_js_ticks_ms: () => Date.now() - began,
    mp_js_time_ms: () => Date.now(),
    invoke: invoking(exports),
  };
}

/**
 * Calls by their place in a table, to where C may jump back. Every function of Python's goes through here; what a
 * function does not take is not looked at.
 * @param {() => Exports} exports
 * @returns {Foreign}
 */
function invoking(exports) {
  /** @type {Foreign[]} */
  const known = [];
  return (place, one, two, three, four, five) => {
    const c = exports();
    const stack = c.emscripten_stack_get_current();
    try {
      known[place] ??= c.__indirect_function_table.get(place);
      return known[place](one, two, three, four, five);
    } catch (thrown) {
      c._emscripten_stack_restore(stack);
      if (thrown !== LONG_JUMP) throw thrown;
      c.setThrew(1, 0);
    }
  };
}

/**
 * What the interpreter imports by name; asking for what is not offered ends it.
 * @param {Record<string, Foreign>} offered
 */
function importing(offered) {
  const all = new Proxy(offered, {
    get: (_, /** @type {string} */ name) => (name.startsWith("invoke_") ? offered.invoke : offered[name]) ?? (() => {
      throw new Error(`the interpreter asks for ${name}, which is not offered`);
    }),
  });
  return { env: all, wasi_snapshot_preview1: all };
}
