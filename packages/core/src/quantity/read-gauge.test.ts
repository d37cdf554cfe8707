import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type GaugeOptions, gaugeNumber, gaugeSize, readGauge } from "./index.js";

const read = (text: string, options?: GaugeOptions) => {
  const got = readGauge(text, options);
  return got.kind === "read" ? `${got.system} ${got.size}` : got.code;
};

describe("what people write for a wire size", () => {
  it.each([
    ["14ga", "awg 14"],
    ["14 ga.", "awg 14"],
    ["14g", "awg 14"],
    ["14 gauge wire", "awg 14"],
    ["14 AWG", "awg 14"],
    ["14-AWG", "awg 14"],
    ["AWG 14", "awg 14"],
    ["AWG14", "awg 14"],
    ["#14", "awg 14"],
    ["No. 14", "awg 14"],
    ["14 SAE", "sae 14"],
    ["SAE 14", "sae 14"],
    ["16/2 SAE", "sae 16"],
    ["1/0", "awg 1/0"],
    ["0 AWG", "awg 1/0"],
    ["00", "awg 2/0"],
    ["4/0 AWG", "awg 4/0"],
    ["0000 AWG", "awg 4/0"],
    ["2.5mm²", "mm2 2.5"],
    ["2.5sq", "mm2 2.5"],
    ["2,5 mm2", "mm2 2.5"],
    ["2.5 sq mm", "mm2 2.5"],
    ["3G2.5", "mm2 2.5"],
  ])("%s is %s", (text, size) => {
    expect(read(text)).toBe(size);
  });

  it.each([
    ["14", "unit-missing"],
    ["2.5", "unit-missing"],
    ["2.5 mm", "ambiguous-unit"],
    ["7/0", "out-of-range"],
    ["55 AWG", "out-of-range"],
    ["14-2", "ambiguous-number"],
    ["15A", "wrong-dimension"],
    ["0 mm2", "out-of-range"],
    ["5000 mm2", "out-of-range"],
    ["1,500 mm2", "ambiguous-number"],
    ["", "empty"],
    ["red", "not-a-number"],
  ])("%s is unread: %s", (text, code) => {
    expect(read(text)).toBe(code);
  });

  it("a bare number is a gauge or square millimetres only where the caller says so", () => {
    expect(read("14", { bareIs: "awg" })).toBe("awg 14");
    expect(read("14", { bareIs: "sae" })).toBe("sae 14");
    expect(read("4", { bareIs: "mm2" })).toBe("mm2 4");
    expect(read("2.5", { bareIs: "awg" })).toBe("unit-missing");
  });

  it("says whether AWG or SAE was written, for `gauge` alone is the policy's to decide", () => {
    expect(readGauge("14 AWG")).toMatchObject({ isSystemStated: true });
    expect(readGauge("14ga")).toMatchObject({ isSystemStated: false });
    expect(readGauge("14 ga", { bareIs: "sae" })).toMatchObject({ system: "sae", isSystemStated: false });
    expect(readGauge("14 AWG", { bareIs: "sae" })).toMatchObject({ system: "awg", isSystemStated: true });
  });

  it("a cable of several conductors keeps their number; a doubt keeps its mark", () => {
    expect(readGauge("14/2")).toMatchObject({ size: "14", conductors: 2 });
    expect(readGauge("2 x 1.5 mm2")).toMatchObject({ sectionMm2: 1.5, conductors: 2 });
    expect(readGauge("14 AWG?")).toMatchObject({ size: "14", basis: "assumed" });
  });

  it("every gauge from 4/0 to 40 is read back as it is written", () => {
    fc.assert(
      fc.property(fc.integer({ min: -3, max: 40 }), fc.constantFrom("awg", "sae"), (gauge, system) => {
        expect(gaugeNumber(gaugeSize(gauge))).toBe(gauge);
        const got = readGauge(`${gaugeSize(gauge)} ${system.toUpperCase()}`);
        expect(got).toMatchObject({ kind: "read", system, size: gaugeSize(gauge) });
      }),
      { seed: 20260502, numRuns: 500 },
    );
  });
});
