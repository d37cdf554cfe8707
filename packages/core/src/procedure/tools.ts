import type { Procedure } from "./procedure.js";
import type { StepCode } from "./step-codes.js";

const TOOLS: readonly { readonly what: string; readonly for: readonly StepCode[] }[] = [
  { what: "Camera or telephone", for: ["photograph"] },
  { what: "Marker, tape and tags", for: ["mark-connectors", "hold-feed", "isolate-supply", "label-wire"] },
  { what: "Eye protection and gloves", for: ["isolate-supply", "isolation-unknown"] },
  { what: "Voltmeter with a long lead to reach battery negative", for: ["dead-test"] },
  { what: "Insulated spanners and screwdrivers", for: ["remove-module", "fit-module", "check-screws"] },
  { what: "Fuse puller and a fuse holder marked by channel", for: ["take-fuses", "change-fuse", "unplug-wire"] },
  { what: "Pin release tool and crimper for the harness's contacts", for: ["seat-harness"] },
  {
    what: "Terminal tool, crimper and contacts or ferrules for the wires that move",
    for: ["move-wire", "rewire", "steady-feed"],
  },
  { what: "Fish tape, clips, grommets and wire of the sizes named", for: ["rewire", "steady-feed"] },
  { what: "What the controller's program is changed with", for: ["change-program"] },
  { what: "Pointed stick for the switches, not a pencil (its lead conducts)", for: ["set-bank"] },
  { what: "Caps or tape for bare feed ends", for: ["remove-module", "hold-feed", "unplug-wire"] },
  { what: "New label strips", for: ["label-module", "label-channels"] },
  { what: "Battery alarm for the time without power", for: ["detectors-lose-feed"] },
  { what: "Bucket and cloths", for: [] },
  { what: "Lamp that runs on its own battery", for: ["open-place"] },
  { what: "Clamp ammeter for direct current", for: ["run-tests"] },
];

/** What must lie ready for these steps. Common practice, no source. */
export function toolsOf(procedure: Procedure): string[] {
  const steps = procedure.sections.flatMap((section) => section.steps);
  const codes = new Set(steps.map((step) => step.code));
  const mayRun = steps.some((step) => step.cautions.some((caution) => caution.code === "water-may-run"));
  const movesPins = steps.some((step) => step.code === "seat-harness" && Number(step.parameters.pinMapRows ?? 0) > 0);
  return TOOLS.filter((tool) => {
    if (tool.for.length === 0) return mayRun;
    if (tool.for.includes("seat-harness")) return movesPins;
    return tool.for.some((code) => codes.has(code));
  }).map((tool) => tool.what);
}
