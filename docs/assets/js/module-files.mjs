// What an interpreter finds when it imports: files that are only read, each of one module of the package.
// It asks as a program asks its system, by the calls of POSIX; layouts in memory are those of Emscripten.

/** @import { Modules } from "./types.d.ts" */

const HOME = "/lib"; // one of the folders in which the interpreter looks
const IS_FOLDER = 0o040000;
const IS_FILE = 0o100000;
const MODE_IN_STATUS = 4; // bytes behind where a status begins
const NO_SUCH_FILE = 44;
const FIRST_DESCRIPTOR = 3; // those below stand for input, output and errors
const PART_BYTES = 8; // an address and a size

/**
 * Files in what is the interpreter's memory when it is asked for.
 * @param {() => ArrayBuffer} memory
 */
export function moduleFiles(memory) {
  /** @type {Map<string, Uint8Array>} */
  const files = new Map();
  const folders = new Set();
  /** @type {Map<number, {bytes: Uint8Array, at: number}>} */
  const opened = new Map();

  /** @param {number} address */
  function textAt(address) {
    const bytes = new Uint8Array(memory(), address);
    return new TextDecoder().decode(bytes.subarray(0, bytes.indexOf(0)));
  }

  /** @param {string} name */
  function modeOf(name) {
    return folders.has(name) ? IS_FOLDER : files.has(name) ? IS_FILE : null;
  }

  return {
    /** @param {Modules} modules */
    add(modules) {
      for (const [path, bytes] of modules) {
        const whole = `${HOME}/${path}`;
        files.set(whole, bytes);
        for (let end = whole.lastIndexOf("/"); end > 0; end = whole.lastIndexOf("/", end - 1)) {
          folders.add(whole.slice(0, end));
        }
      }
    },

    /** The calls by the names under which the interpreter imports them. */
    calls: {
      /** @type {(path: number, status: number) => number} */
      __syscall_stat64(path, status) {
        const mode = modeOf(textAt(path));
        if (mode === null) return -NO_SUCH_FILE;
        new DataView(memory()).setUint32(status + MODE_IN_STATUS, mode, true);
        return 0;
      },

      /** @type {(folder: number, path: number) => number} */
      __syscall_openat(_, path) {
        const bytes = files.get(textAt(path));
        if (!bytes) return -NO_SUCH_FILE;
        let descriptor = FIRST_DESCRIPTOR;
        while (opened.has(descriptor)) descriptor += 1;
        opened.set(descriptor, { bytes, at: 0 });
        return descriptor;
      },

      /** @type {(descriptor: number, parts: number, many: number, read: number) => number} */
      fd_read(descriptor, parts, many, read) {
        const file = opened.get(descriptor);
        if (!file) throw new Error(`the interpreter reads from ${descriptor}, which is no open file`);
        const view = new DataView(memory());
        const began = file.at;
        for (let part = parts; part < parts + PART_BYTES * many; part += PART_BYTES) {
          const size = view.getUint32(part + 4, true);
          const bytes = file.bytes.subarray(file.at, file.at + size);
          new Uint8Array(memory(), view.getUint32(part, true)).set(bytes);
          file.at += bytes.length;
        }
        view.setUint32(read, file.at - began, true);
        return 0;
      },

      /**
       * What Python prints, a warning of its own for one, has no reader here.
       * @type {(descriptor: number, parts: number, many: number, written: number) => number}
       */
      fd_write(_, parts, many, written) {
        const view = new DataView(memory());
        let size = 0;
        for (let part = parts; part < parts + PART_BYTES * many; part += PART_BYTES) size += view.getUint32(part + 4, true);
        view.setUint32(written, size, true);
        return 0;
      },

      /** @type {(descriptor: number) => number} */
      fd_close(descriptor) {
        opened.delete(descriptor);
        return 0;
      },
    },
  };
}
