import { describe, expect, it } from "vitest";
import { findingsOf, verdictsOf } from "../../test-coach.js";

/** Four channels; switch 1 at 1 lets channels 1 and 2 dim. */
const kind = (more: object = {}) => ({
  id: "D4",
  name: "D4",
  channels: 4,
  output: "pwm",
  dimBlocks: [{ id: "b1", channels: [1, 2] }],
  bank: {
    switches: 1,
    options: [
      { enables: [], set: [{ switch: 1, position: 0 }] },
      { enables: ["b1"], set: [{ switch: 1, position: 1 }] },
    ],
  },
  ...more,
});

/** One module with these loads on channels 1, 2, 3 ..., each on a circuit of its own: c1, c2, c3 ... */
const coach = (positionsFound: string | undefined, loads: object[], more: object = {}) => ({
  moduleKinds: [kind(more)],
  modules: [{ id: "m1", kind: "D4", ...(positionsFound === undefined ? {} : { positionsFound }) }],
  circuits: loads.map((_, i) => ({ id: `c${i + 1}`, module: "m1", channel: i + 1, loads: [`l${i + 1}`] })),
  loads: loads.map((load, i) => ({ id: `l${i + 1}`, name: `Load ${i + 1}`, ...load })),
});

describe("steady-load-on-dim-block", () => {
  const loads = [{ class: "pump" }, { class: "led-resistor" }, { class: "pump" }];
  it("fails for a pump on a channel that dims today, holds for a lamp there and for a pump off the block", () => {
    expect(verdictsOf("steady-load-on-dim-block", coach("1", loads))).toEqual(["c1 fails", "c2 holds", "c3 holds"]);
  });
  it("holds for all while the block is not enabled", () => {
    expect(verdictsOf("steady-load-on-dim-block", coach("0", loads))).toEqual(["c1 holds", "c2 holds", "c3 holds"]);
  });
  it("is open for what must stay steady while the option switch was not read", () => {
    const found = findingsOf("steady-load-on-dim-block", coach(undefined, loads));
    expect(found.map((f) => f.verdict)).toEqual(["open", "holds", "open"]);
    expect(found[0]?.settledBy).toMatchObject([{ path: "modules[0].positionsFound", instrument: "look" }]);
  });
  it("is open for a load of unknown sort, fails for a lamp that the owner wants steady", () => {
    const found = findingsOf(
      "steady-load-on-dim-block",
      coach("1", [{}, { class: "filament", wish: "must-stay-steady" }]),
    );
    expect(found.map((f) => f.verdict)).toEqual(["open", "fails"]);
    expect(found[0]?.settledBy).toMatchObject([{ path: "loads[0].class" }]);
  });
  it("holds on a kind that only switches, whatever its positions", () => {
    expect(verdictsOf("steady-load-on-dim-block", coach(undefined, [{ class: "pump" }], { output: "relay" }))).toEqual([
      "c1 holds",
    ]);
  });
});

describe("dimmed-load-not-suited", () => {
  it("is open for a driver lamp that dims today, fails where its maker forbids PWM, holds for a plain LED", () => {
    const found = (load: object) => verdictsOf("dimmed-load-not-suited", coach("1", [load]));
    expect(found({ class: "led-driver" })).toEqual(["l1 open"]);
    expect(found({ class: "led-driver", allowsPwm: false })).toEqual(["l1 fails"]);
    expect(found({ class: "led-resistor" })).toEqual(["l1 holds"]);
    expect(verdictsOf("dimmed-load-not-suited", coach("0", [{ class: "led-driver" }]))).toEqual([]);
  });
});

describe("mixed-circuit", () => {
  const mixed = (...classes: (string | undefined)[]) => ({
    circuits: [{ id: "c1", fusePosition: { name: "F1" }, loads: classes.map((_, i) => `l${i}`) }],
    loads: classes.map((name, i) => ({ id: `l${i}`, name: `L${i}`, ...(name === undefined ? {} : { class: name }) })),
  });
  it("fails for a fan beside a lamp, holds for two lamps or two fans, is open beside an unknown load", () => {
    expect(verdictsOf("mixed-circuit", mixed("filament", "fan"))).toEqual(["c1 fails"]);
    expect(verdictsOf("mixed-circuit", mixed("filament", "led-resistor"))).toEqual(["c1 holds"]);
    expect(verdictsOf("mixed-circuit", mixed("fan", "pump"))).toEqual(["c1 holds"]);
    expect(verdictsOf("mixed-circuit", mixed("filament", undefined))).toEqual(["c1 open"]);
    expect(verdictsOf("mixed-circuit", mixed("filament"))).toEqual([]);
  });
});

describe("dimmed-channel-over-rating", () => {
  const draws = (value: number, plusMinus: number) =>
    coach("1", [{ class: "led-resistor", currentA: { value, basis: "measured", plusMinus } }], { ratedDimmedA: 6 });
  it("compares the current in the pulse, the whole span of it, with the dimmed rating of 6 A", () => {
    expect(verdictsOf("dimmed-channel-over-rating", draws(5, 0.5))).toEqual(["c1 holds"]);
    expect(verdictsOf("dimmed-channel-over-rating", draws(7, 0.5))).toEqual(["c1 fails"]);
    expect(verdictsOf("dimmed-channel-over-rating", draws(6, 0.5))).toEqual(["c1 open"]);
  });
});

describe("flicker-risk", () => {
  // IEEE 1789: an LED on a resistor swings fully, so low risk needs 0.08 % x f >= 100 %, that is f >= 1250 Hz.
  const at = (pwmHz: object | number, load: object) => verdictsOf("flicker-risk", coach("1", [load], { pwmHz }));
  const exact = (value: number) => ({ value, basis: "measured", plusMinus: 0 });
  it("fails for a plain LED at 220 Hz, holds above 1250 Hz, is open across it and for a lamp whose filter is not known", () => {
    expect(at(exact(220), { class: "led-resistor" })).toEqual(["m1 fails"]);
    expect(at(exact(1300), { class: "led-resistor" })).toEqual(["m1 holds"]);
    expect(at({ value: 1250, basis: "measured", plusMinus: 50 }, { class: "led-resistor" })).toEqual(["m1 open"]);
    expect(at(exact(220), { class: "filament" })).toEqual(["m1 open"]);
  });
});

describe("wish-against-load", () => {
  it("fails for a pump, is open for a driver lamp and an unknown load, holds for a filament; a job's wish counts too", () => {
    const wished = (load: object) =>
      verdictsOf("wish-against-load", { loads: [{ id: "l1", name: "L", wish: "nice-to-dim", ...load }] });
    expect(wished({ class: "pump" })).toEqual(["l1 fails"]);
    expect(wished({ class: "led-driver" })).toEqual(["l1 open"]);
    expect(wished({})).toEqual(["l1 open"]);
    expect(wished({ class: "filament" })).toEqual(["l1 holds"]);
    expect(
      verdictsOf("wish-against-load", {
        loads: [
          { id: "l1", name: "Pump", class: "pump" },
          { id: "l2", name: "Fan", class: "fan" },
        ],
        jobs: [{ id: "j1", title: "Dim", wishes: [{ load: "l2", wish: "must-dim" }] }],
      }),
    ).toEqual(["l2 fails"]);
  });
});
