import type { Option } from "./option.js";
import type { CircuitMove, FuseChange, Rewire, SteadyFeed } from "./plan.js";

/** FNV-1a over UTF-16 code units, 32 bits, with its own multiplier for a second, independent half. For a short stable name only. */
function hash32(text: string, basis: number, multiplier: number): number {
  let hash = basis;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), multiplier);
  return hash >>> 0;
}

const hex = (value: number): string => value.toString(16).padStart(8, "0");

const said = new WeakMap<Option, string>();

/** One option in words of the id; a front asks for the same few many times. */
function saidOf(option: Option): string {
  const known = said.get(option);
  if (known !== undefined) return known;
  const fuses = option.fuses.map((fuse) => `${fuse.circuit}:${fuse.toA}`).sort();
  const words = `${option.module.id}=${option.isReplaced ? "fit" : "set"} ${option.key} ${fuses.join(" ")}`;
  said.set(option, words);
  return words;
}

/** The same choices have the same id, on any machine and in any order. */
export function planIdOf(
  options: readonly Option[],
  wires: {
    readonly moves: readonly CircuitMove[];
    readonly steadyFeeds: readonly SteadyFeed[];
    readonly rewires: readonly Rewire[];
    readonly fuses: readonly FuseChange[];
  } = { moves: [], steadyFeeds: [], rewires: [], fuses: [] },
): string {
  const onWires = [
    ...wires.moves.map((move) => `${move.circuit}>${move.to.module}.${move.to.channel}`),
    ...wires.steadyFeeds.map((feed) => `${feed.load}!${feed.circuit}:${feed.fuseA}`),
    ...wires.rewires.map((rewire) => `${rewire.circuit}~${rewire.toGauge}`),
    ...wires.fuses.map((fuse) => `${fuse.circuit}:${fuse.toA}`),
  ];
  const onModules = options.filter((option) => option.isTouched).map(saidOf);
  const all = [...onModules, ...onWires].sort().join("; ");
  if (all === "") return "p-as-found";
  return `p-${hex(hash32(all, 0x811c9dc5, 0x01000193))}${hex(hash32(all, 0x9e3779b9, 0x85ebca6b)).slice(0, 4)}`;
}
