/** What `readQuantity` and `showQuantity` can handle; each has one unit inside the record. */
export const DIMENSIONS = [
  "current",
  "power",
  "voltage",
  "length",
  "section",
  "resistance",
  "temperature",
  "capacity",
  "time",
  "frequency",
] as const;
export type Dimension = (typeof DIMENSIONS)[number];

/** One unit: how many of the record's own unit it is, where its zero lies, and how people write it. */
export interface Unit {
  readonly name: string;
  readonly dimension: Dimension;
  readonly factor: number;
  /** Added after the factor (degrees Fahrenheit). */
  readonly offset?: number;
  readonly written: RegExp;
}

const unit = (dimension: Dimension, name: string, factor: number, written: RegExp, offset = 0): Unit => ({
  dimension,
  name,
  factor,
  written,
  offset,
});

const MM2_PER_KCMIL = 0.506707479;

/*
 * Capital letters count only where they change the meaning: M and m before ohm. MA, MV and MW are read as milli, for nothing in a coach has
 * millions of amperes, and part labels are printed in capitals.
 */
export const UNITS: readonly Unit[] = [
  unit("current", "mA", 0.001, /^m\.?a(mps?|mperes?)?$|^milli-?amps?$|^milli-?amperes?$/i),
  unit("current", "A", 1, /^a(mps?|mperes?|mp\.)?\.?$/i),
  unit("power", "mW", 0.001, /^mw$|^milli-?watts?$/i),
  unit("power", "kW", 1000, /^kw$|^kilo-?watts?$/i),
  unit("power", "W", 1, /^w(atts?)?\.?$/i),
  unit("voltage", "mV", 0.001, /^mv$|^milli-?volts?$/i),
  unit("voltage", "kV", 1000, /^kv$|^kilo-?volts?$/i),
  unit("voltage", "V", 1, /^v(olts?)?\.?$/i),
  unit("length", "mm", 0.001, /^mm$|^milli-?met(re|er)s?$/i),
  unit("length", "cm", 0.01, /^cm$|^centi-?met(re|er)s?$/i),
  unit("length", "ft", 0.3048, /^'$|^ft\.?$|^foot$|^feet$/i),
  unit("length", "in", 0.0254, /^"$|^in\.?$|^inch(es)?$/i),
  unit("length", "yd", 0.9144, /^yd\.?s?$|^yards?$/i),
  unit("length", "m", 1, /^m\.?$|^mtrs?$|^met(re|er)s?$/i),
  unit(
    "section",
    "mm2",
    1,
    /^mm ?\^? ?2$|^sq\.? ?mm\.?$|^mm ?sq\.?$|^sq\.?$|^qmm$|^mmq$|^square ?(mm|milli-?met(re|er)s?)$/i,
  ),
  unit("section", "kcmil", MM2_PER_KCMIL, /^kcmils?$|^mcm$/i),
  unit("section", "cmil", MM2_PER_KCMIL / 1000, /^cmils?$|^cm$|^circular ?mils?$/i),
  unit("resistance", "µohm", 1e-6, /^[uμ]ohms?$|^micro-?ohms?$/i),
  unit("resistance", "mohm", 0.001, /^m[Oo]hms?$|^mR$|^milli-?ohms?$/),
  unit("resistance", "Mohm", 1e6, /^M[Oo]hms?$|^[Mm]eg-?ohms?$|^[Mm]ega-?ohms?$/),
  unit("resistance", "kohm", 1000, /^k(ohms?)?$|^kilo-?ohms?$/i),
  unit("resistance", "ohm", 1, /^ohms?$|^r$/i),
  unit("temperature", "F", 5 / 9, /^(°|deg\.? ?|degrees? ?)? ?f(ahrenheit)?$/i, (-32 * 5) / 9),
  unit("temperature", "C", 1, /^(°|deg\.? ?|degrees? ?)? ?c(elsius)?$/i),
  unit("temperature", "K", 1, /^K$|^kelvins?$/, -273.15),
  unit("capacity", "mAh", 0.001, /^ma[- .]?h(rs?)?$/i),
  unit("capacity", "Ah", 1, /^a[- .]?h(rs?|ours?)?\.?$|^amp[- ]?h(rs?|ours?)$/i),
  unit("time", "ms", 0.001, /^ms$|^milli-?sec(ond)?s?$/i),
  unit("time", "s", 1, /^s$|^secs?\.?$|^seconds?$/i),
  unit("time", "min", 60, /^m$|^mins?\.?$|^minutes?$|^'$/i),
  unit("time", "h", 3600, /^h$|^hrs?\.?$|^hours?$/i),
  unit("time", "d", 86400, /^d$|^days?$/i),
  unit("frequency", "kHz", 1000, /^khz$/i),
  unit("frequency", "Hz", 1, /^hz$|^hertz$|^cps$/i),
];

/** The unit that a figure of this dimension has inside the record. */
export const BASE_UNIT: Readonly<Record<Dimension, string>> = {
  current: "A",
  power: "W",
  voltage: "V",
  length: "m",
  section: "mm2",
  resistance: "ohm",
  temperature: "C",
  capacity: "Ah",
  time: "s",
  frequency: "Hz",
};

/** The unit written like this, looked for in one dimension first. */
export const unitWritten = (written: string, dimension: Dimension): Unit | undefined =>
  UNITS.find((one) => one.dimension === dimension && one.written.test(written));

/** The other dimension that a unit written like this belongs to. */
export const dimensionWritten = (written: string): Dimension | undefined =>
  UNITS.find((one) => one.written.test(written))?.dimension;

/** A larger unit followed by a smaller one: 5 ft 6 in, 3 m 20 cm, 1 h 30 min. */
export const SMALLER: Readonly<Record<string, readonly [unit: string, count: number]>> = {
  ft: ["in", 12],
  m: ["cm", 100],
  h: ["min", 60],
  min: ["s", 60],
};
