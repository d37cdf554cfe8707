import type { Option } from "./option.js";

/** FNV-1a over UTF-16 code units, 32 bits, with its own multiplier for a second, independent half. For a short stable name only. */
function hash32(text: string, basis: number, multiplier: number): number {
  let hash = basis;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), multiplier);
  return hash >>> 0;
}

const hex = (value: number): string => value.toString(16).padStart(8, "0");

/** The same choices have the same id, on any machine and in any order. */
export function planIdOf(options: readonly Option[]): string {
  const said = options
    .filter((option) => option.isTouched)
    .map((option) => {
      const fuses = option.fuses.map((fuse) => `${fuse.circuit}:${fuse.toA}`).sort();
      return `${option.module.id}=${option.isReplaced ? "fit" : "set"} ${option.key} ${fuses.join(" ")}`;
    })
    .sort()
    .join("; ");
  if (said === "") return "p-as-found";
  return `p-${hex(hash32(said, 0x811c9dc5, 0x01000193))}${hex(hash32(said, 0x9e3779b9, 0x85ebca6b)).slice(0, 4)}`;
}
