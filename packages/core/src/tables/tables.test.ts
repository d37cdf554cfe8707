import { describe, expect, it } from "vitest";
import {
  allTables,
  ambientFactorByLaw,
  bladeColdOhm,
  bladeColour,
  bladeGates,
  cartridgeFamilies,
  cartridgeGates,
  ceilingRatio,
  cfr183Ampacity,
  cfr183EngineFactor,
  chargeOfLead,
  contactFactor,
  faaAmpacity,
  frameBits,
  howOfRow,
  iec60228OhmPerKm,
  iso6722OhmPerKm,
  iso10133Ampacity,
  j1939Addresses,
  lifepo4V,
  marineBundleFactor,
  maxProtectionDistanceM,
  necAmbientFactor,
  necBundleFactor,
  necLowVoltageMaxA,
  necOhmPerKm75C,
  necSmallConductorContinuousA,
  necSmallConductorMaxA,
  openCircuitOfLead,
  saeAreaMm2,
  saeSizes,
  showConductor,
  sourceOf,
  standardFuses,
  tableById,
  terminatedOhm,
  terminator,
  trunkLimits,
  withstandFactor,
} from "./index.js";

describe("the published tables", () => {
  it("there are 42, each with its own id, a source, and as many cells in a row as columns", () => {
    const tables = allTables();
    expect(tables).toHaveLength(42);
    expect(new Set(tables.map((table) => table.id)).size).toBe(42);
    for (const table of tables) {
      expect(table.source.name.length).toBeGreaterThan(0);
      expect(table.source.where.length).toBeGreaterThan(0);
      expect(table.rows.length).toBeGreaterThan(0);
      for (const row of table.rows) expect(row, table.id).toHaveLength(table.columns.length);
    }
  });

  it("is found by its id, and an id that is no table's is not", () => {
    expect(tableById("cfr183-t5")?.title).toContain("amperage");
    expect(tableById("nothing")).toBeUndefined();
  });

  it("what a row says of how it is known wins over what the table says, and memory anywhere in it is memory", () => {
    const colours = tableById("blade-colour")!;
    expect(colours.source.how).toBe("memory");
    expect(colours.rows.map((row) => howOfRow(colours, row))).toEqual([
      ...["memory", "memory", "seen", "memory", "memory", "seen", "seen", "seen", "memory", "memory", "seen"],
      ...["memory", "memory"],
    ]);
    const physical = tableById("can-phys")!;
    expect(howOfRow(physical, physical.rows[4]!)).toBe("memory");
    expect(bladeColour(10)).toMatchObject({ value: "red", source: { how: "seen" } });
    expect(bladeColour(20)).toMatchObject({ value: "yellow", source: { how: "memory" } });
  });

  it("these tables are from memory as a whole, and say so", () => {
    const recalled = allTables().filter((table) => table.source.how === "memory");
    expect(recalled.map((table) => table.id).sort()).toEqual([
      "blade-colour",
      "blade-times",
      "cfr183-engine",
      "flicker-def",
      "fuse-drop",
      "iso10133",
      "iso6722",
      "nec-lv-ocp",
    ]);
  });

  it("a source carries edition and clause, and a clause asked for replaces the table's", () => {
    expect(sourceOf("nec-adjust")).toEqual({
      id: "nec-adjust",
      name: "NFPA 70",
      edition: "2023",
      clause: "Table 310.15(C)(1)",
      how: "seen",
    });
    expect(sourceOf("nec-lv-rv", "240.4(D)").clause).toBe("240.4(D)");
  });
});

describe("ampacity", () => {
  it("an insulation class between two columns takes the lower, one under the table is refused", () => {
    expect(cfr183Ampacity("14", 105)).toMatchObject({ value: 35, source: { id: "cfr183-t5", how: "seen" } });
    expect(cfr183Ampacity("14", 100)).toMatchObject({ value: 30 });
    expect(cfr183Ampacity("14", 250)).toMatchObject({ value: 45 });
    expect(cfr183Ampacity("14", 50)).toMatchObject({ kind: "refused", code: "insulation-under-table" });
    expect(cfr183Ampacity("20", 105)).toMatchObject({ kind: "refused", code: "size-not-listed" });
    expect(cfr183Ampacity("0", 105)).toMatchObject({ value: 285 });
  });

  it("of the engine-space factors only the one for 105 C was seen", () => {
    expect(cfr183EngineFactor(105)).toMatchObject({ value: 0.85, source: { how: "seen" } });
    expect(cfr183EngineFactor(110)).toMatchObject({ value: 0.85 });
    expect(cfr183EngineFactor(80)).toMatchObject({ value: 0.78, source: { how: "memory" } });
    expect(cfr183EngineFactor(40)).toMatchObject({ kind: "refused" });
  });

  it("air between two whole degrees belongs to the hotter band; cold air earns nothing; air hotter than the insulation is refused", () => {
    expect(necAmbientFactor(30, 75)).toMatchObject({ value: 1 });
    expect(necAmbientFactor(-10, 75)).toMatchObject({ value: 1 });
    expect(necAmbientFactor(30.5, 75)).toMatchObject({ value: 0.94 });
    expect(necAmbientFactor(40, 105)).toMatchObject({ value: 0.91 });
    expect(necAmbientFactor(60, 60)).toMatchObject({ kind: "refused", code: "ambient-over-insulation" });
    expect(necAmbientFactor(90, 90)).toMatchObject({ kind: "refused", code: "ambient-over-insulation" });
    expect(ambientFactorByLaw(105, 105)).toMatchObject({ kind: "refused" });
    expect(ambientFactorByLaw(20, 105)).toMatchObject({ value: 1, source: { how: "computed" } });
  });

  it("bundles: NEC from four on, the marine guideline from three on, none below", () => {
    const nec = [1, 3, 4, 6, 7, 20, 21, 40, 41, 200].map((count) => necBundleFactor(count));
    expect(nec.map((one) => one.kind === "known" && one.value)).toEqual([
      ...[1, 1, 0.8, 0.8, 0.7, 0.5, 0.45, 0.4, 0.35, 0.35],
    ]);
    const marine = [1, 2, 3, 4, 7, 24, 25].map((count) => marineBundleFactor(count));
    expect(marine.map((one) => one.kind === "known" && one.value)).toEqual([1, 1, 0.7, 0.6, 0.5, 0.5, 0.4]);
    expect(necBundleFactor(0)).toMatchObject({ kind: "refused" });
    expect(necBundleFactor(Number.NaN)).toMatchObject({ kind: "refused" });
  });

  it("metric small-craft figures are marked as memory, aircraft figures as seen", () => {
    expect(iso10133Ampacity(2.5, 105)).toMatchObject({ value: 35, source: { how: "memory" } });
    expect(iso10133Ampacity(2.5, 90)).toMatchObject({ value: 30 });
    expect(iso10133Ampacity(2.4, 90)).toMatchObject({ kind: "refused" });
    expect(faaAmpacity("14", 105)).toMatchObject({ value: 10, source: { how: "seen" } });
  });
});

describe("conductors", () => {
  it("an SAE gauge is looked up, not computed, and a size without one is refused", () => {
    expect(saeAreaMm2("15")).toMatchObject({ kind: "refused", code: "gauge-not-listed" });
    expect(saeSizes()).toEqual(["18", "16", "14", "12", "10", "8", "6", "4", "2", "1", "1/0", "2/0", "3/0", "4/0"]);
  });

  it("18 AWG stranded is from memory in the NEC table, the other sizes were seen", () => {
    expect(necOhmPerKm75C("18", "stranded")).toMatchObject({ kind: "known", source: { how: "memory" } });
    expect(necOhmPerKm75C("16", "stranded")).toMatchObject({ kind: "known", source: { how: "seen" } });
    expect(necOhmPerKm75C("6", "solid")).toMatchObject({ kind: "refused" });
  });

  it("metric sizes by class and tinning; road-vehicle cable from memory; sizes not listed are refused", () => {
    expect(iec60228OhmPerKm(2.5)).toMatchObject({ value: 7.98, source: { clause: "Table 3" } });
    expect(iec60228OhmPerKm(2.5, 2, true)).toMatchObject({ value: 7.56, source: { clause: "Table 2" } });
    expect(iec60228OhmPerKm(2.4)).toMatchObject({ kind: "refused" });
    expect(iso6722OhmPerKm(2.5)).toMatchObject({ value: 7.6, source: { how: "memory" } });
  });

  it("is shown in the system it was written in, the other beside it", () => {
    const awg14 = { system: "awg", size: "14" } as const;
    expect(showConductor(awg14, "us")).toBe("14 AWG");
    expect(showConductor(awg14, "both")).toBe("14 AWG (2.08 mm²)");
    expect(showConductor(awg14, "metric")).toBe("2.08 mm² (14 AWG)");
    expect(showConductor({ system: "sae", size: "14" }, "both")).toBe("14 SAE (1.88 mm²)");
    expect(showConductor({ system: "mm2", size: "2.5" }, "metric")).toBe("2.5 mm²");
    expect(showConductor({ system: "mm2", size: "2.5" }, "us")).toBe("2.5 mm² (near 14 AWG)");
    expect(showConductor({ system: "sae", size: "15" }, "both")).toBe("15 SAE");
    expect(showConductor({ system: "mm2", size: "red" }, "us")).toBe("red mm²");
  });
});

describe("fuses and devices", () => {
  it("blade sizes run from 1 A to 40 A", () => {
    expect(standardFuses().map((fuse) => fuse.ratedA)).toEqual([1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40]);
    expect(bladeColour(12)).toMatchObject({ kind: "refused", code: "rating-not-standard" });
  });

  it("the time gates of blade fuses are from memory, and faster at a higher multiple", () => {
    const { value, source } = bladeGates();
    expect(source.how).toBe("memory");
    expect(value.map((gate) => gate.ratio)).toEqual([1.1, 1.35, 1.6, 2, 3.5, 6]);
    const longest = value.map((gate) => gate.maxS ?? Number.POSITIVE_INFINITY);
    expect([...longest].sort((a, b) => b - a)).toEqual(longest);
    expect(value.at(-1)).toEqual({ ratio: 6, maxS: 0.1 });
  });

  it("the gates of small cartridge fuses in seconds", () => {
    expect(cartridgeGates("UL 248-14 fast")).toMatchObject({
      value: [
        { ratio: 1.1, minS: 14400 },
        { ratio: 1.35, maxS: 3600 },
        { ratio: 2, maxS: 120 },
      ],
    });
    expect(cartridgeFamilies()).toContain("IEC F");
    const lowest = cartridgeGates("IEC F");
    expect(lowest.kind === "known" && lowest.value.map((gate) => [gate.ratio, gate.minS, gate.maxS])).toEqual([
      [2.1, undefined, 1800],
      [2.75, 0.05, 2],
      [4, 0.01, 0.3],
      [10, undefined, 0.02],
    ]);
    expect(cartridgeGates("wood")).toMatchObject({ kind: "refused" });
  });

  it("cold resistance of a blade fuse: order of magnitude, from memory, falling with the rating, refused outside 5 to 30 A", () => {
    expect(bladeColdOhm(10)).toMatchObject({ value: 0.0075, source: { how: "memory" } });
    const between = bladeColdOhm(7.5);
    expect(between.kind === "known" && between.value > 0.0075 && between.value < 0.018).toBe(true);
    expect(bladeColdOhm(3)).toMatchObject({ kind: "refused" });
    expect(bladeColdOhm(40)).toMatchObject({ kind: "refused" });
  });

  it("small conductors: 240.4(D) was seen, the old low-voltage table is from memory, and they differ", () => {
    const seen = ["18", "16", "14", "12", "10"].map((size) => necSmallConductorMaxA(size));
    expect(seen.map((one) => one.kind === "known" && one.value)).toEqual([7, 10, 15, 20, 30]);
    expect(seen[0]).toMatchObject({ source: { clause: "240.4(D)(1)", how: "seen" } });
    expect(necSmallConductorMaxA("8")).toMatchObject({ kind: "refused" });
    const recalled = ["18", "16", "14", "12", "10"].map((size) => necLowVoltageMaxA(size));
    expect(recalled.map((one) => one.kind === "known" && one.value)).toEqual([6, 8, 15, 20, 30]);
    expect(recalled[0]).toMatchObject({ source: { how: "memory" } });
    expect(necSmallConductorContinuousA("18")).toMatchObject({ value: 5.6 });
    expect(necSmallConductorContinuousA("14")).toMatchObject({ kind: "refused" });
  });

  it("the three ceilings of device over conductor name three sources", () => {
    expect([ceilingRatio("nec"), ceilingRatio("road-vehicle"), ceilingRatio("marine")].map((one) => one.value)).toEqual(
      [...[1, 1.25, 1.5]],
    );
    expect(ceilingRatio("marine").source.name).toContain("33 CFR 183.455");
  });

  it("how far the device may be: 450 mm by NEC, 178 mm by the marine rule, 1.02 m in a sheath", () => {
    expect(maxProtectionDistanceM("nec").value).toBe(0.45);
    expect(maxProtectionDistanceM("marine").value).toBe(0.178);
    expect(maxProtectionDistanceM("marine", true).value).toBe(1.02);
  });

  it("a contact that switches lamps at 12 V must be rated five times their current", () => {
    expect(contactFactor("lamp", 12)).toMatchObject({ value: 5, source: { id: "faa-t11-4" } });
    expect(contactFactor("motor", 24)).toMatchObject({ value: 3 });
  });

  it("withstand factors: published where there is one, computed for vehicle wire, and 60 C rubber from memory", () => {
    expect(withstandFactor("PVC 70 C")).toMatchObject({ value: { factor: 115 }, source: { how: "seen" } });
    expect(withstandFactor("PVC 105 C automotive (assumed 105->160)")).toMatchObject({
      value: { factor: 87.6 },
      source: { how: "computed" },
    });
    expect(withstandFactor("60 C rubber")).toMatchObject({ source: { how: "memory" } });
    expect(withstandFactor("paper")).toMatchObject({ kind: "refused" });
  });
});

describe("batteries and the two-wire network", () => {
  it("a rested lead-acid battery: straight between the table's points, refused outside it", () => {
    expect(openCircuitOfLead(0.5)).toMatchObject({ value: 12.24 });
    const between = openCircuitOfLead(0.625);
    expect(between.kind === "known" && between.value).toBeCloseTo(12.345, 12);
    expect(openCircuitOfLead(0)).toMatchObject({ value: 11.89 });
    expect(openCircuitOfLead(1.01)).toMatchObject({ kind: "refused" });
    const charge = chargeOfLead(12.345);
    expect(charge.kind === "known" && charge.value).toBeCloseTo(0.625, 9);
    expect(chargeOfLead(13.2)).toMatchObject({ kind: "refused", code: "voltage-out-of-range" });
    expect(lifepo4V("nominal")).toMatchObject({ value: 12.8 });
  });

  it("a bit rate between two listed ones takes the limits of the faster", () => {
    expect(trunkLimits(250)).toMatchObject({ value: { trunkM: 250, stubM: 11, allStubsM: 55 } });
    expect(trunkLimits(200)).toMatchObject({ value: { trunkM: 250 } });
    expect(trunkLimits(10)).toMatchObject({ value: { trunkM: 5000 } });
    expect(trunkLimits(2000)).toMatchObject({ kind: "refused" });
    expect(trunkLimits(0)).toMatchObject({ kind: "refused" });
  });

  it("two terminators measure 60 ohm, one 120, three 40", () => {
    expect([1, 2, 3].map((count) => terminatedOhm(count))).toMatchObject([
      { value: 120 },
      { value: 60 },
      { value: 40 },
    ]);
    expect(terminatedOhm(0)).toMatchObject({ kind: "refused" });
    // The row quotes 108 to 132 as seen and 100 to 130 from memory: the cell's weakest word does not count, its how column does.
    expect(terminator()).toMatchObject({ value: { ohm: 120, minOhm: 108, maxOhm: 132 }, source: { how: "seen" } });
    expect(j1939Addresses().value).toEqual({ first: 0, last: 253, none: 254, all: 255 });
  });

  it("a frame carries at most eight bytes", () => {
    expect(frameBits(9, 29)).toMatchObject({ kind: "refused" });
    expect(frameBits(1.5, 29)).toMatchObject({ kind: "refused" });
  });
});
