import { showQuantity } from "../quantity/index.js";
import type { Caution } from "./procedure.js";

/** A hazard in plain sentences: what can happen, and what the body does about it. Common practice, no source, unless the words name one. */
export function cautionWords(caution: Caution): string {
  const at = caution.parameters;
  const loads = String(at.loads ?? "the loads of this module");
  switch (caution.code) {
    case "burn-and-arc": {
      const drives =
        typeof at.prospectiveA === "number"
          ? `can drive about ${showQuantity(at.prospectiveA, "current", "metric")} into a dead short (open-circuit volts over internal resistance)`
          : "can drive far more current into a dead short than any tool stands; how much is not on record";
      return `Burns and arcs: ${at.battery ?? "the battery"} ${drives}. Take off rings, watch and chains, use insulated tools, wear eye protection, and let no tool bridge the posts.`;
    }
    case "battery-gas":
      return `Battery gas: ${at.battery ?? "the battery"} may give off explosive gas. Air the bay first, keep flames and sparks away, wear eye protection; acid burns the skin.`;
    case "many-sources":
      return `Several sources: ${at.count ?? "more than one"} supplies can make this coach live (${at.supplies ?? "see the record"}). Opening one does not make it dead.`;
    case "something-moves":
      return `Something may move: ${loads}. Have people, hands and pets clear, and somebody at it who can call stop.`;
    case "water-may-run":
      return `Water may run: ${loads}. Taps and dump valves shut, a bucket ready, and somebody watching.`;
    case "heat-may-start":
      return `Heat may start: ${loads}. Nothing that burns near it; a heater that burns gas stays shut off at its own gas valve, which only a licensed person works on.`;
    case "engine-or-generator-may-start":
      return `An engine, generator or inverter may start by itself: ${loads}. Hands and clothing clear of belts and fans, no exhaust into a closed space, and mains outlets may become live.`;
    case "mains-nearby":
      return `Mains nearby: ${at.what ?? "this place"}. Leave every mains cover shut; the mains side is for a licensed electrician only.`;
    case "life-safety":
      return `Detectors: ${loads}. While they have no power they warn nobody: keep people out, or leave a battery alarm in place. Never bypass, dim or switch a detector.`;
    case "capacitor-charge":
      return "Stored charge: inverters, controllers and dimmers keep a charge after they are cut off. Wait, measure, and never short it out with a tool.";
    case "hidden-lines":
      return `Hidden lines: behind panels may lie mains cable, gas and water pipe, tanks. Follow the old wire's way, look and feel before anything is pulled, drilled or screwed, and go no further where mains or gas is near: that is for a licensed person.`;
    case "static":
      return `Static: ${at.module ?? "the new module"} holds electronics. Touch bare metal of the coach first and do not touch its pins.`;
  }
}
