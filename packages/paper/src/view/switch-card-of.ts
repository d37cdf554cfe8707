import type { Bank, CoachIndex, Module, ModuleKind } from "@fusebook/core/record";
import { readBank } from "@fusebook/core/switchbank";
import type { CardSwitch, SwitchCard } from "../drawings/switch-card.js";
import { moduleName } from "./names.js";

const POSITION = { "1": "on", "0": "off" } as const;

/** What each switch is for, from the kind's sheet. */
function doesOf(bank: Bank, number: number, blockName: (id: string) => string): string {
  const code = bank.address;
  if (code?.kind === "weights") {
    const own = code.switches.find((one) => one.switch === number);
    if (own !== undefined) return `address: counts ${own.weight} when ${own.onMeans === 1 ? "ON" : "OFF"}`;
  }
  if (code?.kind === "table" && code.switches.includes(number)) return "address, by the table of the sheet";
  if (bank.options?.some((option) => option.set.some((one) => one.switch === number))) {
    const blocks = [...new Set(bank.options.flatMap((option) => option.enables))].map(blockName);
    return `dimming${blocks.length === 0 ? "" : `: with the other dimming switches, chooses among ${blocks.join(" and ")}`}`;
  }
  const unused = bank.unused?.find((one) => one.switch === number);
  if (unused !== undefined) return `not used: keep ${unused.position === 1 ? "ON" : "OFF"}`;
  return "use not known: leave as found";
}

/**
 * The card of a module's bank standing at `positions`; undefined where the kind has no bank on record. `enables` are the dim blocks which that
 * setting enables.
 */
export function switchCardOf(
  index: CoachIndex,
  module: Module,
  kind: ModuleKind | undefined,
  positions: string | undefined,
  enables: readonly string[] | undefined,
): SwitchCard | undefined {
  const bank = kind?.bank;
  if (kind === undefined || bank === undefined) return undefined;
  const blockName = (id: string) => (kind.dimBlocks ?? []).find((block) => block.id === id)?.name ?? id;
  const reading = readBank(bank, { address: module.address, enables: enables ?? [] });
  const stands = positions ?? (reading.kind === "known" ? reading.value.positions : "");
  const switches = Array.from(
    { length: bank.switches },
    (_, i): CardSwitch => ({
      number: i + 1,
      printed: bank.printed?.[i],
      position: POSITION[stands[i] as "0" | "1"] ?? "unknown",
      does: doesOf(bank, i + 1, blockName),
    }),
  );
  const gives: string[] = [];
  if (module.address !== undefined) gives.push(`Address ${module.address}`);
  if ((kind.dimBlocks ?? []).length > 0 && enables !== undefined)
    gives.push(enables.length === 0 ? "Nothing dims" : `May dim: ${enables.map(blockName).join("; ")}`);
  return {
    title: moduleName(index, module),
    subtitle: `${kind.name}, label upright as it hangs`,
    onIs: bank.onIs,
    switches,
    gives,
  };
}
