// What passes of a bow's record between its pages, what keeps it, and Python (`calc.record.tasks`).

import type { DBSchema } from "idb";
import type { openStore } from "./store.mjs";
import type { Chart, Pair, Problem, TreeNode } from "./types.d.ts";

/** What keeps the bows of this browser. */
export type BowStore = Awaited<ReturnType<typeof openStore>>;

/** An entry as it is kept: JSON that Python wrote, with its id. */
export interface KeptEntry {
  id: string;
  text: string;
}

/** What a list shows of a bow, as Python works it out. */
export interface Summary {
  title: string;
  tag: string;
  weights: string;
  next: string;
  level: "stop" | "ok";
  due: string;
  coats?: boolean; // laid or to lay on a bow that has not left
  entries: number;
}

/** The same as it is kept: when the bow was begun and changed, and how much of it was last saved to a file. */
export interface Head extends Summary {
  id: string;
  begun?: number;
  changed: number;
  saved?: { at: number; entries: number };
}

/** What other bows, or the air, mean for one bow: its place among the records asked about. */
export interface AcrossLine {
  place: number;
  level: "stop" | "watch" | "ok";
  text: string;
}

/** A bow that was taken out and can be brought back. */
export interface Binned {
  id: string;
  head?: Head;
}

/** A picture as it is kept. sum: SHA-256 of its bytes as its entry tells it; empty where none could be made. */
export interface KeptPhoto {
  id: string;
  bow: string;
  blob: Blob;
  thumb: Blob | null; // none where the bytes are no picture
  type: string;
  size: number;
  sum: string;
}

/** A photograph as a bow's page tells it. file: the id of its picture; beside: of the entry that it belongs to. */
export interface ToldPhoto {
  id: string;
  file: string;
  sum: string;
  caption: string;
  beside: string;
  counts: boolean;
  at: string;
  note: string;
  facts: Pair[];
}

/** What a bow's page shows of its photographs: as `calc.record.photos` tells it. */
export interface Album {
  photos: ToldPhoto[];
  intake: { id: string; label: string; photo: string; fine: boolean }[];
  ties: { id: string; words: string; fine: boolean }[];
  sheet: string[];
  begun: boolean;
  most: number;
  room: number;
  removed: string;
}

/** The rows of this browser's database. */
export interface Layout extends DBSchema {
  bows: { key: string; value: Head };
  entries: { key: string; value: KeptEntry & { bow: string }; indexes: { bow: [bow: string, id: string] } };
  photos: { key: string; value: KeptPhoto; indexes: { bow: string } };
  drafts: { key: string; value: { id: string; pairs: Pair[] } };
  bin: { key: string; value: Binned & { entries: KeptEntry[]; until: number } };
  meta: { key: string; value: { name: string; value: boolean | null } };
}

/** What a record tells of a calculator's input. */
export interface Filled {
  input: string;
  text: string;
  stale: boolean;
  since: string;
  said: string;
  how: string;
  shop: boolean;
  sheet: string;
}

/** A figure that a record does not know so; refused: why it would not take it. */
export interface Fresh {
  input: string;
  label: string;
  text: string;
  was: string;
  error: string;
  refused: string;
}

/** An entry as a bow's page tells it. */
export interface ToldEntry {
  id: string;
  moment: string;
  title: string;
  facts: Pair[];
  note: string;
  sheet: string;
  struck: boolean;
  problems: string[];
}

/** A kept answer as a bow's page tells it. */
export interface ToldAnswer {
  id: string;
  calculator: string;
  moment: string;
  headline: string;
}

/** All that a bow's page shows. */
export interface Stand {
  head: Summary;
  title: string;
  weights: string;
  next: { title: string; why: string; calculators: string[] };
  checks: TreeNode[];
  figures: TreeNode[];
  charts: Chart[];
  steps: [title: string, calculators: string[]][];
  answers: ToldAnswer[];
  returned: TreeNode[];
  timeline: ToldEntry[];
  album: Album;
  columns: string[][];
  last: Pair[];
  due: string;
}

/** A kept answer beside what its bow's record tells today. */
export interface Compared extends ToldAnswer {
  figures: string;
  changed: { input: string; was: string; now: string; since: string; stale: boolean }[];
  stale: string[];
}

/** A bow in a file. */
export interface FoundBow {
  entries: string[];
  missing: number;
  unread: { text: string; problem: string }[];
  newer: boolean;
}

/** A bow's file, or that of all bows. */
export interface BowFile {
  page: string;
  name: string;
}

/** The link for an owner, what it could not take, and messages to go with it. */
export interface Telling {
  link: string;
  left: string[];
  messages: { id: string; title: string; text: string; caution: string }[];
}

/** What Python answers to each task; to any of them also a sentence that says why not. */
export interface TaskAnswers {
  head: Summary;
  stand: Stand;
  fill: { title: string; tag: string; checks: TreeNode[]; filled: Filled[] };
  fresh: { fresh: Fresh[] };
  keep: { entries: KeptEntry[] };
  take: { errors: Problem[]; entry: string | null };
  strike: { entry: string };
  step: { text: string };
  file: BowFile;
  csv: { text: string };
  foretold: { expected: string; read: string; level: "ok" | "watch" | "" };
  compare: Compared;
  tell: Telling;
  offer: Telling;
  told: { tree?: TreeNode[]; units?: UnitSystem };
  all: BowFile;
  photos: { album: Album };
  bows: { bows: FoundBow[]; missing: number };
  across: { lines: AcrossLine[] };
  calendar: { text: string; name: string };
  sheet: { tree: TreeNode[]; link: string };
  card: { tree: TreeNode[] };
  week: { tree: TreeNode[] };
}
export type Task = keyof TaskAnswers;
export type TaskAnswer<Name extends Task> = TaskAnswers[Name] & { refused?: string };
