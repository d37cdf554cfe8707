import { describe, expect, it } from "vitest";
import { findingsOf, verdictsOf } from "../../test-coach.js";
import { findingLine } from "../../words/finding-words.js";

const exactly = (value: number) => ({ value, basis: "measured", plusMinus: 0 });

/** One module whose channels 1 and 2 dim today, wired all the way: 12.6 V, 0.25 ohm or so. One circuit to a load. */
const coach = (loads: object[], more: object = {}) => ({
  supplies: [
    {
      id: "s1",
      name: "Bank",
      kind: "battery",
      node: "plus",
      returnNode: "minus",
      openCircuitV: exactly(12.6),
      internalResistanceOhm: exactly(0.01),
    },
  ],
  nodes: [
    { id: "plus", name: "plus", kind: "busbar" },
    { id: "minus", name: "minus", kind: "busbar" },
  ],
  moduleKinds: [
    {
      id: "D4",
      name: "D4",
      channels: 4,
      output: "pwm",
      pwmHz: exactly(220),
      minDutyRatio: 0.05,
      ratedDimmedA: 6,
      onResistanceOhm: exactly(0.02),
      quiescentA: exactly(0),
      dimBlocks: [{ id: "b1", channels: [1, 2] }],
      bank: {
        switches: 1,
        options: [
          { enables: [], set: [{ switch: 1, position: 0 }] },
          { enables: ["b1"], set: [{ switch: 1, position: 1 }] },
        ],
      },
      ...more,
    },
  ],
  modules: [{ id: "m1", kind: "D4", feedNode: "plus", positionsFound: "1" }],
  circuits: loads.map((_, i) => ({
    id: `c${i + 1}`,
    module: "m1",
    channel: i + 1,
    fuse: { ratedA: 2, resistanceOhm: exactly(0.02) },
    out: { resistanceOhm: exactly(0.1) },
    return: { resistanceOhm: exactly(0.1), node: "minus" },
    loads: [`l${i + 1}`],
  })),
  loads: loads.map((load, i) => ({ id: `l${i + 1}`, name: `Load ${i + 1}`, ratedV: exactly(12), ...load })),
});
const driver = (inputCapacitanceF?: number) => ({
  class: "led-driver",
  currentA: exactly(0.5),
  dropOutV: exactly(8),
  allowsPwm: true,
  ...(inputCapacitanceF === undefined ? {} : { inputCapacitanceF: exactly(inputCapacitanceF) }),
});

describe("driver-inrush-over-rating", () => {
  it("fails where the capacitor is known and every pulse is above the dimmed rating of 6 A", () => {
    // 6 W off 220 uF through pauses of 4.3 ms at a twentieth of duty: it drains to its drop-out of 8 V, so (12.6 - 7.92) / 0.25 = 18.7 A.
    const [found] = findingsOf("driver-inrush-over-rating", coach([driver(220e-6)]));
    expect(found).toMatchObject({ verdict: "fails", severity: "watch" });
    expect(found?.evidence[0]?.span?.hi).toBeCloseTo(18.72, 1);
  });
  it("says that the class figure is from memory where nobody read the capacitor, and asks for it", () => {
    const [found] = findingsOf("driver-inrush-over-rating", coach([driver()], { ratedDimmedA: 16 }));
    expect(found?.verdict).toBe("open");
    expect(found?.alsoRestsOn?.[0]?.how).toBe("memory");
    expect(found?.settledBy[0]?.path).toBe("loads[0].inputCapacitanceF");
    expect(findingLine(found!, "metric")).toContain("class figure from memory");
  });
  it("says nothing of lamps without a driver, nor of a block that is not enabled", () => {
    expect(verdictsOf("driver-inrush-over-rating", coach([{ class: "filament", currentA: 1 }]))).toEqual([]);
    const off = {
      ...coach([driver(220e-6)]),
      modules: [{ id: "m1", kind: "D4", feedNode: "plus", positionsFound: "0" }],
    };
    expect(verdictsOf("driver-inrush-over-rating", off)).toEqual([]);
  });
});

describe("driver-pulse-heating", () => {
  it("compares the root mean square of the pulses, not their mean, with the fuse", () => {
    // A driver of 0.5 A rated, on a fuse of 2 A: its large capacitor draws over 2 A root mean square when dimmed low.
    const found = findingsOf("driver-pulse-heating", coach([driver(4e-3), driver(20e-6)]));
    expect(found.map(({ verdict }) => verdict)).toEqual(["fails", "holds"]);
  });
});

describe("driver-stops-when-dimmed", () => {
  it("fails where its capacitor runs dry at the lowest duty, holds where a large one lasts, is open where it is not known", () => {
    expect(verdictsOf("driver-stops-when-dimmed", coach([driver(220e-6)]))).toEqual(["c1 fails"]);
    expect(verdictsOf("driver-stops-when-dimmed", coach([driver(5e-3)], { minDutyRatio: 0.5 }))).toEqual(["c1 holds"]);
    expect(verdictsOf("driver-stops-when-dimmed", coach([driver()], { minDutyRatio: 0.5 }))).toEqual(["c1 open"]);
  });
});

describe("own-switch-on-dimmed", () => {
  const with_ = (more: object) =>
    verdictsOf("own-switch-on-dimmed", coach([{ class: "led-resistor", hasOwnSwitch: true, ...more }]));
  it("is open until somebody looks, fails for a touch switch, holds for a contact or where PWM was seen to be taken", () => {
    expect(with_({})).toEqual(["l1 open"]);
    expect(with_({ ownSwitchKind: "electronic" })).toEqual(["l1 fails"]);
    expect(with_({ ownSwitchKind: "contact" })).toEqual(["l1 holds"]);
    expect(with_({ allowsPwm: true })).toEqual(["l1 holds"]);
  });
  it("is the only one to ask about such a switch", () => {
    const parts = coach([{ class: "led-resistor", hasOwnSwitch: true }]);
    expect(verdictsOf("dimmed-load-not-suited", parts)).toEqual([]);
  });
});

describe("dims-not-deep", () => {
  it("fails for an LED whose lowest duty still looks a third as bright, holds for a filament at the same duty", () => {
    // L* of a tenth is 37.8 (CIE pairs); a filament at a tenth gives 0.1^1.7 = 2 % of its light, L* 15.5.
    const parts = coach([{ class: "led-resistor" }, { class: "filament" }], { minDutyRatio: 0.1 });
    expect(verdictsOf("dims-not-deep", parts)).toEqual(["l1 fails", "l2 holds"]);
  });
});

describe("class-guessed", () => {
  it("is open for a guessed class where the channel may dim or the owner wishes it, silent where nobody asks", () => {
    const guessed = { class: "led-resistor", classBasis: "assumed" };
    expect(verdictsOf("class-guessed", coach([guessed, { class: "filament" }, guessed]))).toEqual([
      "l1 open",
      "l2 holds",
    ]);
    const [found] = findingsOf("class-guessed", coach([{}, {}, { ...guessed, wish: "must-dim" }]));
    expect(found).toMatchObject({ verdict: "open", settledBy: [{ path: "loads[2].classBasis", instrument: "look" }] });
  });
});

describe("load-readings-contradict", () => {
  const reading = (voltageV: number, currentA: number) => ({
    voltageV: exactly(voltageV),
    currentA: exactly(currentA),
  });
  const told = (load: object) => findingsOf("load-readings-contradict", { loads: [{ id: "l1", name: "L", ...load }] });
  it("fails where amps fall as volts rise, naming the readings; holds where one lamp can give both", () => {
    const falls = told({ class: "led-resistor", drawReadings: [reading(12, 2), reading(13.5, 1)] })[0]!;
    expect(falls.verdict).toBe("fails");
    expect(findingLine(falls, "metric")).toContain("readings 1 and 2");
    expect(told({ class: "led-resistor", drawReadings: [reading(12, 1), reading(13.5, 1.5)] })[0]?.verdict).toBe(
      "holds",
    );
    expect(told({ class: "led-driver", drawReadings: [reading(12, 1), reading(12.5, 0.96)] })[0]?.verdict).toBe(
      "holds",
    );
  });
  it("fails where the label says another current at the rated volts", () => {
    const [found] = told({
      class: "filament",
      ratedV: 12,
      currentA: exactly(5),
      drawReadings: [reading(12, 1.7)],
    });
    expect(found).toMatchObject({ verdict: "fails", parameters: { why: "label-differs" } });
    expect(findingLine(found!, "metric")).toContain("1.7 A by its readings, 5 A by its label");
  });
  it("is open where nobody knows what the load is, and silent where nothing was read", () => {
    expect(told({ drawReadings: [reading(12, 1)] })[0]).toMatchObject({ verdict: "open" });
    expect(told({ class: "filament" })).toEqual([]);
  });
});

describe("flicker-risk of a driver", () => {
  it("is open while its capacitor is not known, holds where it runs through the pauses, fails where it goes out", () => {
    const at = (farad?: number) => verdictsOf("flicker-risk", coach([driver(farad)], { minDutyRatio: 0.3 }));
    expect(at()).toEqual(["m1 open"]);
    expect(at(5e-3)).toEqual(["m1 holds"]);
    expect(at(20e-6)).toEqual(["m1 fails"]);
  });
});
