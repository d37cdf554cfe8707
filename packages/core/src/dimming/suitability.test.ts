import { describe, expect, it } from "vitest";
import { LOAD_CLASSES, type Load } from "../record/index.js";
import { steadyOf } from "./steady.js";
import { NEVER_DIMMED, suitabilityOf } from "./suitability.js";

const load = (fields: Partial<Load>): Load => ({ id: "l1", name: "a load", ...fields }) as Load;

describe("suitabilityOf", () => {
  it("gives every class an answer with a reason and a source", () => {
    for (const each of LOAD_CLASSES) {
      const answer = suitabilityOf({ class: each });
      expect(["yes", "no", "only-if"]).toContain(answer.may);
      expect(answer.code).not.toBe("class-unknown");
      expect(answer.source.how).toBe("practice");
    }
  });

  it("never reads an unknown class as yes, whatever else is stated", () => {
    expect(suitabilityOf({}).may).toBe("unknown");
    expect(suitabilityOf({ allowsPwm: true }).may).toBe("unknown");
    expect(suitabilityOf({ hasOwnSwitch: true }).may).toBe("unknown");
  });

  it("dims filament lamps and LEDs on resistors without a question", () => {
    expect(suitabilityOf({ class: "filament" })).toMatchObject({ may: "yes", code: "glows-down" });
    expect(suitabilityOf({ class: "led-resistor" })).toMatchObject({ may: "yes", code: "follows-duty" });
    expect(suitabilityOf({ class: "led-linear" }).may).toBe("yes");
  });

  it("dims a switch-mode driver only where the record states that it may", () => {
    expect(suitabilityOf({ class: "led-driver" })).toMatchObject({ may: "only-if", code: "repeated-inrush" });
    expect(suitabilityOf({ class: "led-driver", allowsPwm: true })).toMatchObject({
      may: "yes",
      code: "stated-on-record",
      parameters: { class: "led-driver", classSays: "repeated-inrush" },
    });
    expect(suitabilityOf({ class: "led-driver", allowsPwm: false })).toMatchObject({
      may: "no",
      code: "statement-forbids",
    });
  });

  it("frees a class that is never dimmed by a statement or reading that is named, the detector never", () => {
    const pwmEvidence = { from: "maker", name: "sheet of the fan, page 2" } as const;
    for (const each of NEVER_DIMMED) {
      const freed = suitabilityOf({ class: each, allowsPwm: true, pwmEvidence });
      expect(freed.may).toBe(each === "detector" ? "no" : "yes");
      expect(freed.code).toBe(each === "detector" ? "life-safety" : "stated-on-record");
      if (each !== "detector") expect(freed.parameters).toMatchObject({ from: "maker", named: pwmEvidence.name });
    }
  });

  it("frees nothing by a statement that names no source", () => {
    for (const each of NEVER_DIMMED) {
      const told = suitabilityOf({ class: each, allowsPwm: true });
      expect(told.may).toBe("no");
      expect(told.code).toBe(each === "detector" ? "life-safety" : "statement-unnamed");
      expect(steadyOf(load({ class: each, allowsPwm: true })).must).toBe("yes");
    }
  });

  it("takes a plain contact in the lamp for what it is, and never dims a touch control", () => {
    const with_ = (ownSwitchKind: "contact" | "electronic") =>
      suitabilityOf({ class: "led-resistor", hasOwnSwitch: true, ownSwitchKind });
    expect(with_("contact")).toMatchObject({ may: "yes", code: "follows-duty" });
    expect(with_("electronic")).toMatchObject({ may: "no", code: "own-switch-electronic" });
    expect(steadyOf(load({ class: "filament", hasOwnSwitch: true, ownSwitchKind: "electronic" })).must).toBe("yes");
  });

  it("asks for a look where the lamp has a switch of its own and nobody said which", () => {
    expect(suitabilityOf({ class: "led-resistor", hasOwnSwitch: true })).toMatchObject({
      may: "only-if",
      code: "own-switch",
    });
    expect(suitabilityOf({ class: "pump", hasOwnSwitch: true }).may).toBe("no");
  });

  it("lets a statement forbid what the class would allow", () => {
    expect(suitabilityOf({ class: "led-resistor", allowsPwm: false }).may).toBe("no");
  });
});

describe("steadyOf", () => {
  it("keeps steady what PWM is not for, and what the owner wishes steady", () => {
    expect(steadyOf(load({ class: "fan" }))).toMatchObject({ must: "yes", code: "moves" });
    expect(steadyOf(load({ class: "filament", wish: "must-stay-steady" }))).toMatchObject({
      must: "yes",
      code: "wished-steady",
    });
    expect(steadyOf(load({ class: "filament" })).must).toBe("no");
  });

  it("lets the job's wish win over the load's own", () => {
    expect(steadyOf(load({ class: "filament", wish: "must-stay-steady" }), "must-dim").must).toBe("no");
    expect(steadyOf(load({ class: "filament", wish: "must-dim" }), "must-stay-steady").must).toBe("yes");
  });

  it("leaves a load of unknown class unknown, unless it is wished steady", () => {
    expect(steadyOf(load({})).must).toBe("unknown");
    expect(steadyOf(load({ wish: "must-stay-steady" })).must).toBe("yes");
  });
});
