export { type ChargeData, type ChargeRun, chargeChart } from "./charge-chart.js";
export { CHART_THEMES, type ChartLook, type ChartMargin, type ChartTheme } from "./chart-style.js";
export type { ChartHead, ChartSpan, CurvePoint, Labelled, LabelledCurve } from "./curve.js";
export {
  type ChartBin,
  type ChartQuantile,
  type ComparedQuantity,
  type DoubtData,
  doubtChart,
  type RankedReading,
} from "./doubt-chart.js";
export { type FrontData, type FrontPoint, frontChart } from "./front-chart.js";
export { type Ramp, type RampData, type RampStep, rampChart } from "./ramp-chart.js";
export {
  type ConductorLimit,
  type CurrentMark,
  type FuseGates,
  type OpeningMark,
  type TimeCurrentData,
  timeCurrentChart,
} from "./time-current-chart.js";
