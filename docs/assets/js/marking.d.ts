// What passes between the modules that mark points on a picture. No reader ever fetches it.

/** A place: on the picture in its pixels from its upper left corner, or on the page in the page's. */
export interface Spot {
  x: number;
  y: number;
}

/** A row of the form with a place on the picture. row: counted in its table from 0. */
export interface Mark extends Spot {
  row: number;
  label: string;
}

/** Points of one kind: a table of the form. */
export interface MarkSet {
  id: string;
  title: string;
  hint: string;
  marks: Mark[];
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
