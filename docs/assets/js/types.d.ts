// What passes between the modules of the site: between page, workers and Python. No reader ever fetches it.

/** An input's id with its text, as typed. */
export type Pair = [name: string, text: string];

export type UnitSystem = "imperial" | "metric";

/** A text, or [tag, attributes, ...children]. */
export type TreeNode = string | number | TreeElement;
export type TreeElement = [tag: string, attributes: Record<string, string | number>, ...children: TreeNode[]];

/** What is wrong, and where: row and column in a table of rows. */
export interface Problem {
  message: string;
  field?: string | null;
  row?: number | null;
  column?: string | null;
  /** Typing on can mend it. */
  unfinished?: boolean;
}

/** What of a form is typed into or chosen from. */
export type Control = HTMLInputElement | HTMLSelectElement;

/** A file that comes with an outcome. */
export interface OutcomeFile {
  name: string;
  type: string;
  text: string;
}

export interface ChartLine {
  label: string;
  style: string;
  xs: number[];
  ys: number[];
}

export interface Chart {
  id: string;
  title: string;
  x: { label: string };
  y: { label: string };
  lines: ChartLine[];
}

/** A calculator's answer. */
export interface Answer {
  errors: Problem[];
  notes: string[];
  folds: string[];
  standing: Record<string, string>;
  tree: TreeNode[] | null;
  charts: Chart[];
  files: OutcomeFile[];
  kept: { results?: [id: string, value: string | number][]; checks?: [id: string, level: string][] };
}

/** A question to a calculator, or to a bow's record. */
export interface CalculatorRequest {
  calculator: string;
  pairs: Pair[];
  standing: Record<string, string>;
}
/** A question to what a calculator finds beside its answer. */
export interface FindRequest {
  calculator: string;
  find: Record<string, unknown>;
}
export interface TaskRequest {
  task: string;
  units: UnitSystem;
  [more: string]: unknown;
}
export type Asked = CalculatorRequest | FindRequest | TaskRequest;

/** What the engine makes of a request: an answer, or a sentence that says why there is none. */
export interface Told {
  answer?: unknown;
  error?: string;
  failed?: string;
}

/** Why an engine, or a part of it, is not there. */
export type Cause = "connection" | "missing" | "damaged" | "policy" | "old" | "unknown";

/** Addresses of the engine's files. */
export interface EngineFiles {
  /** The small engine's interpreter without what no calculator should call, and the whole one. */
  wasm: string;
  whole: string;
  calc: string;
  pyodide: string;
  sources: string;
}

/** `calc.answer` as an interpreter hands it over. */
export interface PythonAnswer {
  begin(request: string): void;
  advance(): string;
}

/** A function of Python's, from a text or nothing to a text or nothing. */
export type PythonFunction = (text?: string) => string | null;

/** What both engines share. */
export interface PythonEngine {
  start(files: EngineFiles): Promise<void>;
  prepare(calculator: string): Promise<void>;
  /** Have a calculator that is there read before it is asked. */
  read?(calculator: string): void;
  run(request: string): () => string;
}

/** Modules of a package, compiled, with their paths. */
export type Modules = [path: string, bytes: Uint8Array][];

/** A job that this browser remembers of a calculator; an earlier release knew no moment and nobody's names. */
export interface Job {
  id: string;
  link: string;
  moment: number | null;
  headline: string;
  own: string[] | null;
}

/** A place where the theme tells of pages and addresses. */
interface Told$<Value> {
  next(value: Value): void;
  subscribe(hear: (value: Value) => void): void;
}

declare global {
  interface Window {
    document$?: Told$<Document>;
    location$?: Told$<URL>;
    /** The engine's worker that a shared link's page starts in its head, and what it has said since. */
    startedEngine?: { worker: Worker; heard: string[] } | null;
  }
}
