import { gaugeNumber, type Source } from "../quantity/index.js";
import { sourceOf, theTable } from "./catalogue.js";
import { gaugeRow } from "./conductors.js";
import { notPublished, numberAt, type Published, published, type Sourced, sourceFor } from "./table.js";

/** NEC 240.4(D): AWG to the largest device, A. */
const SMALL_CONDUCTOR: ReadonlyMap<number, readonly [maxA: number, clause: string]> = new Map([
  [18, [7, "240.4(D)(1)"]],
  [16, [10, "240.4(D)(2)"]],
  [14, [15, "240.4(D)(3)"]],
  [12, [20, "240.4(D)(5)"]],
  [10, [30, "240.4(D)(7)"]],
]);

/** The largest device that may protect a small conductor, A, whatever its ampacity: NEC 240.4(D). Refused for sizes that the clause does not name. */
export const necSmallConductorMaxA = (size: string): Published<number> => {
  const row = SMALL_CONDUCTOR.get(gaugeNumber(size) ?? Number.NaN);
  return row === undefined
    ? notPublished("size-not-in-clause", `NEC 240.4(D) names no device for ${size}`)
    : published(row[0], sourceOf("nec-lv-rv", row[1]));
};

/** The most a small conductor may carry on and on, A: NEC 240.4(D)(1) and (2), 18 and 16 AWG only. */
export const necSmallConductorContinuousA = (size: string): Published<number> => {
  const gauge = gaugeNumber(size);
  if (gauge === 18) return published(5.6, sourceOf("nec-lv-rv", "240.4(D)(1)"));
  if (gauge === 16) return published(8, sourceOf("nec-lv-rv", "240.4(D)(2)"));
  return notPublished("size-not-in-clause", `NEC 240.4(D) limits no continuous load for ${size}`);
};

/** The old low-voltage table of the RV article, largest device, A. From memory: shown as such, never ground for `stop`. */
export const necLowVoltageMaxA = (size: string): Published<number> => {
  const table = theTable("nec-lv-ocp");
  const row = gaugeRow(table, "wire_awg", size);
  return row === undefined
    ? notPublished("size-not-listed", `the low-voltage table names no device for ${size}`)
    : published(numberAt(table, row, "ampacity_and_max_ocp_A")!, sourceFor(table, row));
};

/** Standard device ratings up to 200 A: NEC 240.6(A). */
export const necStandardDevices = (): Sourced<readonly number[]> => ({
  value: [10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200],
  source: { ...sourceOf("nec-lv-rv", "240.6(A)"), edition: "2023" },
});

/** Device rating over continuous load (three hours or more): 1.25, NEC 210.20(A). */
export const necContinuousFactor = (): Sourced<number> => ({ value: 1.25, source: sourceOf("nec-lv-rv", "210.20(A)") });

/** How much a device may exceed the conductor's ampacity, below 50 V. */
export const ceilingRatio = (rule: "nec" | "marine" | "road-vehicle"): Sourced<number> => {
  if (rule === "nec") return { value: 1, source: sourceOf("nec-lv-rv", "552.10(E)(1)") };
  if (rule === "marine") return { value: 1.5, source: sourceOf("cfr183-ocp", "183.455 (a)-(d)") };
  const source: Source = {
    id: "cfr183-ocp",
    name: "a state transport department's vehicle-electrical specification",
    clause: "as noted under 33 CFR 183.455",
    how: "seen",
  };
  return { value: 1.25, source };
};

/** How far from where the supply connects may the device be, m, along the conductor? */
export const maxProtectionDistanceM = (rule: "nec" | "marine", isSheathed = false): Sourced<number> => {
  if (rule === "nec") return { value: 0.45, source: sourceOf("nec-lv-rv", "552.10(E)(4)") };
  return { value: isSheathed ? 1.02 : 0.178, source: sourceOf("cfr183-ocp") };
};

export const CONTACT_LOADS = ["lamp", "inductive", "resistive", "motor"] as const;
export type ContactLoad = (typeof CONTACT_LOADS)[number];

/** How many times the steady current must a switch or relay contact be rated for? FAA AC 43.13-1B table 11-4, its 12 V or 28 V column. */
export const contactFactor = (load: ContactLoad, nominalV: 12 | 24): Published<number> => {
  const table = theTable("faa-t11-4");
  const row = table.rows.find((one) => String(one[0]).startsWith(load));
  if (row === undefined) return notPublished("contact-load-unknown", `no contact factor for ${load}`);
  return published(numberAt(table, row, nominalV === 12 ? "12V" : "28V")!, sourceFor(table, row));
};

/** The drop that may be planned for, as a share of nominal volts: ABYC E-11 11.14.2.6 as quoted. */
export const maxDropRatio = (circuit: "critical" | "general"): Sourced<number> => ({
  value: circuit === "critical" ? 0.03 : 0.1,
  source: sourceOf("abyc-vdrop"),
});

/** K of the published marine drop tables, ohm circular mil per foot; copper at about 29 C. */
export const MARINE_K_OHM_CMIL_PER_FT = 10.75;

/** The most a ground return through structure may measure, ohm: FAA AC 43.13-1B 11-66. */
export const maxGroundReturnOhm = (): Sourced<number> => ({
  value: 0.005,
  source: sourceOf("faa-drop-rules", "11-66"),
});
