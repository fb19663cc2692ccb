// What passes between the modules that mark points on a picture. No reader ever fetches it.

/** A place: on the picture in its pixels from its upper left corner, or on the page in the page's. */
export interface Spot {
  x: number;
  y: number;
}

/** A row of the form with a place on the picture. row: counted in its table from 0. how: what set it, if the row says. */
export interface Mark extends Spot {
  row: number;
  label: string;
  how: string;
}

/** Points of one kind: a table of the form. draws: whether they can be drawn to what the picture shows. */
export interface MarkSet {
  id: string;
  title: string;
  hint: string;
  marks: Mark[];
  draws: boolean;
}

/** A part of the picture: where it begins, pixels to a sample, samples in a row, their brightness row by row. */
export interface Patch {
  left: number;
  top: number;
  step: number;
  wide: number;
  gray: number[];
}

/** What Python found of a mark; without a place nothing was clear, or nothing looked for. */
export interface FoundMark {
  x?: number;
  y?: number;
  how?: string;
  rises?: number;
  said: string;
}

/** What Python makes of the marks, to lay over the picture. */
export interface PictureLine {
  points: Spot[];
  kind: "curve" | "grid";
}

/** What stands on the picture: marks of the set that is marked now, those of the others, the chosen one, lines. */
export interface Sight {
  now: Mark[];
  others: Mark[];
  chosen: Mark | null;
  lines: PictureLine[];
}
