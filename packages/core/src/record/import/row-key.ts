import { slug } from "./words.js";

/** Where a row's circuit is fed from. */
export type RowPlace =
  | {
      readonly kind: "channel";
      readonly moduleText: string;
      readonly channel: number;
      /** False where the circuit cell says something that the place does not hold. */
      readonly usesCircuit: boolean;
    }
  | { readonly kind: "fuse"; readonly name: string; readonly block: string | undefined; readonly usesCircuit: boolean }
  | { readonly kind: "none"; readonly why: string };

const MAX_CHANNEL = 64;
const MODULE_WORD = /^(?:(?:module|mod|mdl|panel|pnl|box|unit)\b[\s.#:-]*(?:no\.?\s*)?|m[\s.-]*(?=\d)|#\s*)(?=\S)/i;
const FUSE_BLOCK = /\bfuse\s*-?(?:block|box|panel|holder)\b|^fb\s?\d*$|^plain fuses?$/i;
const KEY = /^(?:(?:module|mod|m)\.?\s*)?([a-z]?\d{1,3}|[a-z])\s*[-./:\s]\s*(?:channel|chan|ch|c)?\s*\.?(\d{1,2})$/i;
const CHANNEL = /^(?:channel|chan|ch|output|out|c)?\s*[#.]?\s*(\d{1,2})(?:\.0)?$/i;

/** A module's name without the word for it: `Mod 3`, `M3`, `#3` and `03` are `3`; `Left rear` is `left-rear`. */
export const moduleToken = (text: string): string =>
  slug(
    text
      .trim()
      .replace(MODULE_WORD, "")
      .replace(/^(\d+)\.0$/, "$1"),
  ).replace(/^0+(?=\d)/, "");

/** The id of a module by its token. */
export const moduleIdOf = (token: string): string => (/^\d|^[a-z]$/.test(token) ? `m${token}` : `m-${token}`);

export const isFuseBlock = (text: string): boolean => FUSE_BLOCK.test(text.trim());

const channelIn = (text: string): number | undefined => {
  const digits = CHANNEL.exec(text.trim())?.[1];
  const channel = digits === undefined ? 0 : Number(digits);
  return channel >= 1 && channel <= MAX_CHANNEL ? channel : undefined;
};

/** What feeds a row, from its circuit, module and channel cells; `above` is the module of the rows above, where there is one. */
export function placeOfRow(
  cells: { readonly circuit: string; readonly module: string; readonly channel: string },
  above: string | undefined,
): RowPlace {
  const circuit = cells.circuit.trim();
  const module = cells.module.trim();
  const position = cells.channel.trim() || circuit;
  const both = KEY.exec(circuit);
  if (both !== null && (module === "" || cells.channel.trim() === "") && !isFuseBlock(module)) {
    const channel = Number(both[2]);
    if (channel >= 1 && channel <= MAX_CHANNEL)
      return {
        kind: "channel",
        moduleText: module === "" ? (both[1] ?? "") : module,
        channel,
        usesCircuit: module === "" || moduleToken(both[1] ?? "") === moduleToken(module),
      };
  }
  const usesCircuit = circuit === "" || position === circuit;
  const owner = module === "" ? (above ?? "") : module;
  if (position === "")
    return {
      kind: "none",
      why: "the row names no channel and no fuse: write the module and channel, or the fuse's name",
    };
  const channel = channelIn(position);
  if (owner !== "" && !isFuseBlock(owner) && channel !== undefined)
    return { kind: "channel", moduleText: owner, channel, usesCircuit };
  if (owner === "" || isFuseBlock(owner)) {
    const isBare = /^\d+$/.test(position);
    return {
      kind: "fuse",
      name: isBare && owner !== "" ? `${owner} ${position}` : position,
      block: owner === "" ? undefined : owner,
      usesCircuit,
    };
  }
  if (module === "") return { kind: "fuse", name: position, block: undefined, usesCircuit };
  return { kind: "none", why: `"${position}" is no channel from 1 to ${MAX_CHANNEL}: write the channel's number` };
}

/** A row whose only cell starts the rows of a module or a fuse block: `MODULE 3 - rear bay`. */
export function sectionOf(text: string): { readonly owner: string; readonly rest: string } | undefined {
  const plain = text.trim();
  const module = /^((?:module|mod|mdl|panel|box)\.?\s*#?\s*(?:no\.?\s*)?[a-z0-9]{1,4})\b[\s:,;–-]*(.*)$/is.exec(plain);
  if (module !== null && /\d|\b[a-z]$/i.test(module[1] ?? "")) return { owner: module[1] ?? "", rest: module[2] ?? "" };
  return isFuseBlock(plain) ? { owner: plain, rest: "" } : undefined;
}

/** The key a row is known by: `3.07`, or the fuse's name. */
export const keyOf = (place: Exclude<RowPlace, { kind: "none" }>): string =>
  place.kind === "channel" ? `${moduleToken(place.moduleText)}.${String(place.channel).padStart(2, "0")}` : place.name;

/** The id of the circuit of a row's key. */
export const circuitIdOf = (place: Exclude<RowPlace, { kind: "none" }>): string =>
  place.kind === "channel"
    ? `c${moduleIdOf(moduleToken(place.moduleText)).slice(1)}.${String(place.channel).padStart(2, "0")}`
    : `c-${slug(place.name) || "fuse"}`;
