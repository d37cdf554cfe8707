import type { Drawing } from "../document/blocks.js";
import { COPPER, INK, type Margin, SHEET, SOFT } from "./look.js";
import type { Measure } from "./measure.js";
import { box, n, sheet, textAt, textIn } from "./svg.js";
import { wireLine, wirePatterns } from "./wire-line.js";

export interface LoomBundle {
  readonly name: string;
  readonly circuits: readonly { readonly currentA: number | undefined; readonly margin: Margin }[];
}

export interface Loom {
  /** "440 Ah", "12.7 V": what stands in the battery. */
  readonly battery: readonly string[];
  readonly bundles: readonly LoomBundle[];
}

const WIDTH_MM = 176;
/** The cover has room for no more; a taller picture is set smaller. */
const MAX_HEIGHT_MM = 132;
const BATTERY_W = 24;
const BUS_X = 58;
const BUNDLE_X = 104;
const BUNDLE_W = 30;

/**
 * The whole coach at a glance: battery, bus bar, modules, circuits; copper and wires as wide as their amps. One scale holds for the copper, set by the
 * height of the page; a circuit is never thinner than can be seen.
 */
export function loomPicture(loom: Loom, measure: Measure): Drawing | undefined {
  const bundles = loom.bundles.filter((bundle) => bundle.circuits.length > 0);
  const sumA = (bundle: LoomBundle) => bundle.circuits.reduce((sum, circuit) => sum + (circuit.currentA ?? 0), 0);
  const totalA = bundles.reduce((sum, bundle) => sum + sumA(bundle), 0);
  const count = bundles.reduce((sum, bundle) => sum + bundle.circuits.length, 0);
  if (count === 0 || totalA <= 0) return undefined;
  const gap = Math.min(5, 40 / bundles.length);
  const rowMm = Math.max(0.4, Math.min(2.6, (MAX_HEIGHT_MM - bundles.length * gap) / count));
  const mmPerA = Math.min(0.45, 70 / totalA);
  const placed: { bundle: LoomBundle; top: number; bottom: number }[] = [];
  for (const bundle of bundles) {
    const above = placed.at(-1)?.bottom;
    const top = above === undefined ? 1 : above + gap;
    placed.push({ bundle, top, bottom: top + Math.max(8, bundle.circuits.length * rowMm) });
  }
  const height = placed.at(-1)!.bottom + 1;
  const mid = height / 2;
  const trunk = totalA * mmPerA;
  let at = mid - trunk / 2;
  let out = wirePatterns() + ribbon(BATTERY_W, mid, BUS_X, mid, trunk);
  for (const { bundle, top, bottom } of placed) {
    const w = Math.max(0.5, sumA(bundle) * mmPerA);
    out += ribbon(BUS_X + 2, at + w / 2, BUNDLE_X, (top + bottom) / 2, w);
    at += sumA(bundle) * mmPerA;
    out += bundleOf(bundle, top, bottom, measure);
  }
  out += box(BUS_X, mid - trunk / 2 - 5, 2.4, trunk + 10, { fill: INK, stroke: "none" });
  const batteryTop = mid - Math.max(14, trunk / 2 + 3);
  out += box(0.5, batteryTop, BATTERY_W, 2 * (mid - batteryTop), { fill: SHEET, widthMm: 0.6 });
  out += loom.battery
    .map((text, i) => {
      const y = mid + 1.4 + (i - (loom.battery.length - 1) / 2) * 5.4;
      return textAt(0.5 + BATTERY_W / 2, y, text, {
        sizeMm: 4,
        isStrong: i === 0,
        anchor: "middle",
        colour: i === 0 ? INK : SOFT,
      });
    })
    .join("");
  const alt = `The coach at a glance: ${loom.battery.join(", ")} feeds ${bundles.map((bundle) => `${bundle.name} with ${bundle.circuits.length} circuits and ${sumA(bundle).toFixed(1)} A`).join("; ")}.`;
  return {
    svg: sheet(WIDTH_MM, height, "The coach at a glance", out),
    alt,
    widthMm: Math.min(WIDTH_MM, (WIDTH_MM * MAX_HEIGHT_MM) / height),
  };
}

function bundleOf(bundle: LoomBundle, top: number, bottom: number, measure: Measure): string {
  const each = (bottom - top) / bundle.circuits.length;
  const wires = bundle.circuits.map(({ currentA, margin }, i) =>
    wireLine(BUNDLE_X + BUNDLE_W, WIDTH_MM - 1, top + (i + 0.5) * each, currentA, margin, each * 0.62),
  );
  const name = textIn(
    BUNDLE_X + 2,
    (top + bottom) / 2 + 0.6,
    BUNDLE_W - 4,
    bundle.name,
    { sizeMm: 3.3, isStrong: true },
    measure,
  );
  const lift = ((name.lines - 1) * 3.3 * 1.15) / 2;
  return `${wires.join("")}${box(BUNDLE_X, top, BUNDLE_W, bottom - top, { fill: SHEET, widthMm: 0.5 })}<g transform="translate(0 ${n(-lift)})">${name.svg}</g>`;
}

const ribbon = (x0: number, y0: number, x1: number, y1: number, w: number): string => {
  const c = (x0 + x1) / 2;
  const h = w / 2;
  return `<path d="M${n(x0)} ${n(y0 - h)}C${n(c)} ${n(y0 - h)} ${n(c)} ${n(y1 - h)} ${n(x1)} ${n(y1 - h)}L${n(x1)} ${n(y1 + h)}C${n(c)} ${n(y1 + h)} ${n(c)} ${n(y0 + h)} ${n(x0)} ${n(y0 + h)}Z" fill="${COPPER}"/>`;
};
