import { describe, expect, it } from "vitest";
import { DEFAULT_POLICY, type FullPolicy } from "../record/index.js";
import { ampacityOf, deviceCeilingOf, fuseSizesAtMost, protectionDistanceOf } from "./index.js";

const nec: FullPolicy = { ...DEFAULT_POLICY };
const marine: FullPolicy = { ...DEFAULT_POLICY, conductorRule: "marine", bundling: "none" };
const road: FullPolicy = { ...DEFAULT_POLICY, conductorRule: "road-vehicle", bundling: "none" };
const value = <T>(outcome: { kind: string; value?: T }): T => {
  expect(outcome.kind).toBe("known");
  return outcome.value as T;
};

describe("ampacity of a conductor", () => {
  it("33 CFR 183 table 5: 14 AWG at 105 C carries 35 A in 30 C air", () => {
    expect(value(ampacityOf({ gauge: "14 AWG", insulationC: 105, bundleCount: 1 }, nec)).ampacityA).toBe(35);
  });
  it("air and bundle take their factors: 12 AWG at 75 C in 40 C air among five is 25 x 0.88 x 0.80 (NEC)", () => {
    const found = value(ampacityOf({ gauge: "12 AWG", insulationC: 75, bundleCount: 5, zone: "bay" }, nec));
    expect(found.ampacityA).toBeCloseTo(25 * 0.88 * 0.8, 9);
    expect(found.factors.map((one) => one.name)).toEqual(["ambient", "bundle"]);
  });
  it("a marine engine space takes 0.85 at 105 C: 12 AWG 45 A becomes 38.25 A", () => {
    expect(
      value(ampacityOf({ gauge: "12 AWG", insulationC: 105, bundleCount: 1, zone: "engine" }, marine)).ampacityA,
    ).toBeCloseTo(38.25, 9);
  });
  it("insulation unknown counts as the lowest class, up to the highest, and says what would settle it", () => {
    const found = value(ampacityOf({ gauge: "14 AWG", bundleCount: 1 }, nec));
    expect(found).toMatchObject({ ampacityA: 20, isInsulationKnown: false, wouldSettle: ["insulationC"] });
    expect(found.span.lo).toBe(20);
    expect(found.span.hi).toBeCloseTo(45, 9);
  });
  it("a bundle of unknown size is doubted down to the first row that derates", () => {
    const found = value(ampacityOf({ gauge: "8 AWG", insulationC: 75 }, nec));
    expect(found.span).toEqual({ lo: 65 * 0.8, hi: 65 });
  });
  it("a metric section enters at the next AWG size that holds no more copper: 2.5 mm² as 14", () => {
    expect(value(ampacityOf({ sectionMm2: 2.5, insulationC: 75, bundleCount: 1 }, nec)).gauge).toBe("14");
  });
  it("no size is missing, a size thinner than the table is refused, air hotter than the insulation is refused", () => {
    expect(ampacityOf({}, nec)).toEqual({ kind: "missing", needs: ["gauge"] });
    expect(ampacityOf({ gauge: "24 AWG", insulationC: 75 }, nec).kind).toBe("refused");
    expect(
      ampacityOf(
        { gauge: "14 AWG", insulationC: 60, zone: "hot" },
        { ...nec, zoneAmbientC: { ...nec.zoneAmbientC, hot: 65 } },
      ).kind,
    ).toBe("refused");
  });
});

describe("largest device for a conductor", () => {
  it.each([
    ["18", 7],
    ["16", 10],
    ["14", 15],
    ["12", 20],
    ["10", 30],
  ])("NEC 240.4(D): %s AWG at most %d A", (gauge, maxA) => {
    expect(value(deviceCeilingOf({ gauge: `${gauge} AWG`, insulationC: 105, bundleCount: 1 }, nec))).toMatchObject({
      maxA,
      because: "small-conductor",
    });
  });
  it("larger than 10 AWG: not above the ampacity", () => {
    expect(value(deviceCeilingOf({ gauge: "6 AWG", insulationC: 75, bundleCount: 1 }, nec))).toMatchObject({
      maxA: 95,
      because: "ampacity",
    });
  });
  it("33 CFR 183.455: 150 % of the table, 14 AWG at 105 C at most 52.5 A", () => {
    expect(value(deviceCeilingOf({ gauge: "14 AWG", insulationC: 105 }, marine)).maxA).toBe(52.5);
  });
  it("road vehicle: 125 % and the next size, 14 AWG at 60 C: 25 A; 16 AWG: 18.75 A goes up to 20 A", () => {
    expect(value(deviceCeilingOf({ gauge: "14 AWG", insulationC: 60 }, road)).maxA).toBe(25);
    expect(value(deviceCeilingOf({ gauge: "16 AWG", insulationC: 60 }, road)).maxA).toBe(20);
  });
  it("a run that is not on record is missing", () => {
    expect(deviceCeilingOf(undefined, nec, "circuits[3].out.")).toEqual({
      kind: "missing",
      needs: ["circuits[3].out.gauge"],
    });
  });
  it("blade sizes up to a rating, smallest first", () => {
    expect(fuseSizesAtMost(15)).toEqual([1, 2, 3, 4, 5, 7.5, 10, 15]);
    expect(fuseSizesAtMost(0.5)).toEqual([]);
  });
  it("the device stands within 450 mm (NEC), 178 mm or sheathed 1.02 m (33 CFR) of the source", () => {
    expect(protectionDistanceOf(nec).maxM).toBe(0.45);
    expect(protectionDistanceOf(marine).maxM).toBe(0.178);
    expect(protectionDistanceOf(marine, true).maxM).toBe(1.02);
  });
});
