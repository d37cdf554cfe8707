import type { Option } from "./option.js";

const PRIME = 0x100000001b3n;
const MASK = 0xffffffffffffffffn;

/** FNV-1a, 64 bits, over UTF-16 code units. Public domain; used for a short stable name only. */
function fnv1a(text: string): bigint {
  let hash = 0xcbf29ce484222325n;
  for (let i = 0; i < text.length; i++) hash = ((hash ^ BigInt(text.charCodeAt(i))) * PRIME) & MASK;
  return hash;
}

/** The same choices have the same id, on any machine and in any order. */
export function planIdOf(options: readonly Option[]): string {
  const said = options
    .filter((option) => option.isTouched)
    .map((option) => {
      const fuses = option.fuses.map((fuse) => `${fuse.circuit}:${fuse.toA}`).sort();
      return `${option.module.id}=${option.isReplaced ? "fit" : "set"} ${option.key} ${fuses.join(" ")}`;
    })
    .sort();
  return said.length === 0 ? "p-as-found" : `p-${fnv1a(said.join("; ")).toString(16).padStart(16, "0").slice(0, 12)}`;
}
