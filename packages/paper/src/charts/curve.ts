/** A point of a curve in the units of its chart's axes. */
export type CurvePoint = readonly [x: number, y: number];

/** Two ends of what may be, lo <= hi; a figure known exactly has the same twice. */
export interface ChartSpan {
  readonly lo: number;
  readonly hi: number;
}

/** What every line, band and mark of a chart says about itself in the legend. */
export interface Labelled {
  /** Whole words: "10 A blade fuse, channel 3". */
  readonly label: string;
  /** Small type under it: value, basis, source ("marked", "ISO 8820-3"). */
  readonly note?: string;
  /** The figure rests on memory, not on a source that was seen: the picture says so beside it and in the caption. */
  readonly isFromMemory?: boolean;
}

export interface LabelledCurve extends Labelled {
  /** In the order they are to be joined; at least two. */
  readonly points: readonly CurvePoint[];
}

export interface ChartHead {
  readonly title: string;
  readonly subtitle?: string;
  /** Sentences in small type at the foot: conditions, what was left out. */
  readonly caption?: readonly string[];
}
