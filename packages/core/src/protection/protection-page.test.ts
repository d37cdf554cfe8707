import { describe, expect, it } from "vitest";
import { protectionOf, sureOpeningA } from "./index.js";
import { smallCoach } from "./small-coach.js";

const exact = (value: number) => ({ value, basis: "measured", plusMinus: 0 });

/** The worked example of docs/method/protection.md, line by line; its arithmetic stands on the page. */
describe("the page's worked example", () => {
  const lamp = {
    id: "l1",
    name: "Lamp",
    class: "led-resistor",
    currentA: exact(1),
    tail: { gauge: "24 AWG", insulationC: 80, resistanceOhm: exact(0.03) },
  };
  const told = protectionOf(smallCoach({ out: { resistanceOhm: exact(0.05) }, loads: [lamp] }), "c1");
  if (told.kind !== "known" || told.value.ends.kind !== "known") throw new Error("the example is not told");
  const { fuse, atFuse } = told.value;
  const [run, tail] = told.value.ends.value;

  it("157.5 A at the far end, opened by the slowest fuse in 14.5 ms, 360 A2s let through", () => {
    expect(run!.end.currentA).toBeCloseTo(157.5, 9);
    expect(run!.clearing.latestS).toBeCloseTo(0.0145, 4);
    const wire = run!.conductors.find((one) => one.conductor.part === "wire")!;
    expect(wire.letThroughA2s).toBeCloseTo(360, 6);
    expect(Math.abs(wire.limitA2s - 13_134)).toBeLessThan(5);
    expect(wire.verdict).toBe("holds");
  });

  it("114.5 A at the lamp, whose 24 AWG stands 485 A2s", () => {
    expect(tail!.end.currentA).toBeCloseTo(114.545, 3);
    const own = tail!.conductors.find((one) => one.conductor.part === "tail")!;
    expect(Math.abs(own.limitA2s - 485)).toBeLessThan(2);
    expect(own.verdict).toBe("holds");
  });

  it("20 A open it in 5 s, 1050 A flow right behind it", () => {
    if (fuse.kind !== "known" || atFuse.kind !== "known") throw new Error("the fuse is not told");
    expect(sureOpeningA(fuse.value, 5)).toBeCloseTo(20, 9);
    expect(atFuse.value.currentA).toBeCloseTo(1050, 6);
  });
});
