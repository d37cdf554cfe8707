import { digitsOf, gaugeNumber, type ReadGauge, type UnitChoice } from "../quantity/index.js";
import { areaOfGaugeMm2 } from "./conductor-law.js";
import { saeAreaMm2 } from "./conductors.js";

const areaOf = (conductor: Pick<ReadGauge, "system" | "size">): number | undefined => {
  if (conductor.system === "mm2") return Number(conductor.size);
  const gauge = gaugeNumber(conductor.size);
  if (conductor.system === "awg") return gauge === undefined ? undefined : areaOfGaugeMm2(gauge);
  const area = saeAreaMm2(conductor.size);
  return area.kind === "known" ? area.value : undefined;
};

/** The gauge whose copper comes nearest, by ratio of areas. */
const nearestGauge = (areaMm2: number): string => {
  const sizes = [
    "4/0",
    "3/0",
    "2/0",
    "1/0",
    "1",
    "2",
    "3",
    "4",
    "6",
    "8",
    "10",
    "12",
    "14",
    "16",
    "18",
    "20",
    "22",
    "24",
  ];
  const distance = (size: string) => Math.abs(Math.log(areaOfGaugeMm2(gaugeNumber(size)!) / areaMm2));
  return sizes.reduce((best, size) => (distance(size) < distance(best) ? size : best));
};

/**
 * How is a conductor size written for a reader? As it is where its own system is asked for; `both` adds the other in brackets:
 * `14 AWG (2.08 mm²)`. A metric size in US units names the nearest AWG as such: `2.5 mm² (near 14 AWG)`, never as if it were one.
 */
export const showConductor = (conductor: Pick<ReadGauge, "system" | "size">, units: UnitChoice): string => {
  const area = areaOf(conductor);
  const metric = area === undefined ? undefined : `${digitsOf(area)} mm²`;
  if (conductor.system === "mm2") {
    if (metric === undefined || area === undefined || !(area > 0)) return `${conductor.size} mm²`;
    return units === "metric" ? metric : `${metric} (near ${nearestGauge(area)} AWG)`;
  }
  const own = `${conductor.size} ${conductor.system.toUpperCase()}`;
  if (units === "us" || metric === undefined) return own;
  return units === "metric" ? `${metric} (${own})` : `${own} (${metric})`;
};
