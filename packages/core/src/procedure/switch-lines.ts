import type { CoachIndex } from "../record/index.js";
import type { Step } from "./procedure.js";

/** Each switch of a bank by what is printed at it and which way its lever goes. */
export function switchLines(step: Step, after: CoachIndex): string {
  const module = after.modules.get(step.module ?? "");
  const bank = after.moduleKinds.get(module?.kind ?? "")?.bank;
  const positions = String(step.parameters.positions ?? "");
  if (bank === undefined || positions === "") return "";
  const opposite = { up: "down", down: "up", left: "right", right: "left" } as const;
  const on = bank.onIs;
  const lines = [...positions].map((sign, i) => {
    const printed = bank.printed?.[i] ?? String(i + 1);
    if (sign === "?") return `${printed} not known`;
    const word = sign === "1" ? "ON" : "OFF";
    return on === undefined ? `${printed} ${word}` : `${printed} ${word} (${sign === "1" ? on : opposite[on]})`;
  });
  return `Switch by switch, part upright: ${lines.join(", ")}.${on === undefined ? " Which way is ON is not on record: look for the mark." : ""}`;
}
