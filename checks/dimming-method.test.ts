import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import {
  capacitorInput,
  filamentPulseRatio,
  flickerLimits,
  lightnessOf,
  lightOfDuty,
  onTimeDrop,
  powerOfDuty,
} from "@fusebook/core/dimming";
import { fitLamp } from "@fusebook/core/network";
import type { Outcome } from "@fusebook/core/quantity";
import { describe, expect, it } from "vitest";

const PAGE = fileURLToPath(new URL("../docs/method/dimming.md", import.meta.url));

const knownOf = <T>(outcome: Outcome<T>): T => {
  if (outcome.kind !== "known") throw new Error(JSON.stringify(outcome));
  return outcome.value;
};

/** The answers of the page's worked example, in its order, with the places they are printed to. */
function printed(): { what: string; value: number; places: number }[] {
  const page = readFileSync(PAGE, "utf8");
  const example = page.split("## Worked example")[1]!.split("\n## ")[0]!;
  return example
    .split("\n")
    .filter((line) => line.startsWith("| ") && !line.startsWith("| what"))
    .map((line) => {
      const cells = line.split("|").map((cell) => cell.trim());
      const number = /^[\d.]+/.exec(cells[3]!)![0];
      return { what: cells[1]!, value: Number(number), places: number.split(".")[1]?.length ?? 0 };
    });
}

describe("docs/method/dimming.md, worked example", () => {
  const led = knownOf(
    onTimeDrop({
      supplyV: 12.6,
      loopOhm: 0.2,
      model: { kind: "led", forwardV: 9, resistanceOhm: 1.6 },
      dutyRatio: 0.25,
    }),
  );
  const driver = knownOf(
    capacitorInput({
      supplyV: 13,
      loopOhm: 0.05,
      capacitanceF: 1e-3,
      powerW: 9.9,
      dropOutV: 8,
      pwmHz: 250,
      dutyRatio: 0.5,
    }),
  );
  const exactly = (value: number) => ({ value, basis: "measured" as const, plusMinus: 0 });
  const fit = knownOf(
    fitLamp(
      [
        { voltageV: exactly(12), currentA: exactly(1) },
        { voltageV: exactly(13.5), currentA: exactly(1.5) },
      ],
      { class: "led-resistor", nominalV: 12 },
    ),
  );
  if (fit.kind !== "led") throw new Error(fit.kind);
  const limits = flickerLimits(220);
  const computed = [
    led.onA,
    led.dropV,
    led.meanA,
    led.rmsA,
    led.wireHeatW,
    knownOf(lightnessOf(0.25)),
    limits.lowRiskRatio! * 100,
    limits.noEffectRatio! * 100,
    filamentPulseRatio(0.25),
    knownOf(lightOfDuty("filament", 0.25)).luminanceRatio * 100,
    knownOf(powerOfDuty("filament", 0.25)) * 100,
    driver.highV,
    driver.lowV,
    driver.peakA,
    fit.resistorOhm.nominal,
    fit.forwardV.nominal,
  ];

  it("has an answer of the code for every row", () => {
    expect(printed()).toHaveLength(computed.length);
  });

  it.each(printed().map((row, i) => [row.what, row, computed[i]!] as const))("%s", (_, row, value) => {
    // Half a unit of the last place printed, and one for the rounding of a middle result.
    expect(Math.abs(value - row.value)).toBeLessThanOrEqual(1.5 * 10 ** -row.places);
  });
});
