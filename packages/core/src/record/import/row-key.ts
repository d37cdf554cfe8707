import { slug } from "./words.js";

/** Cells that name a row's place. */
export type PlaceField = "circuit" | "module" | "channel";

/** Where a row's circuit is fed from. `left`: cells that say something which the place does not hold. */
export type RowPlace =
  | {
      readonly kind: "channel";
      readonly moduleText: string;
      readonly channel: number;
      readonly left: readonly PlaceField[];
    }
  | {
      readonly kind: "fuse";
      readonly name: string;
      readonly block: string | undefined;
      readonly left: readonly PlaceField[];
    }
  | { readonly kind: "none"; readonly why: string };

const MAX_CHANNEL = 64;
/** Longer than any name on a fuse block. */
const MAX_NAME = 32;
const MODULE_WORD = /^(?:(?:module|mod|mdl|panel|pnl|box|unit)\b[\s.#:-]*(?:no\.?\s*)?|m[\s.-]*(?=\d)|#\s*)(?=\S)/i;
const FUSE_BLOCK = /\bfuse\s*-?(?:block|box|panel|holder)\b|^fb\s?\d*$|^plain fuses?$/i;
const KEY = /^(?:(?:module|mod|m)\.?\s*)?([a-z]?\d{1,3}|[a-z])\s*[-./:\s]\s*(?:channel|chan|ch|c)?\s*\.?(\d{1,2})$/i;
/** What a spreadsheet makes of 3-07 when it takes it for a day: 2026-03-07, 7-Mar, Mar-07. */
const DAY =
  /^(?:\d{4}-\d{2}-\d{2}(?: .*)?|\d{1,2}-(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)|(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)-\d{2,4})$/i;
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

const none = (why: string): RowPlace => ({ kind: "none", why });

/** The cells that a channel does not hold: a circuit cell that is only a running number, a channel cell that says another channel. */
const leftBy = (cells: Cells, moduleText: string, channel: number): PlaceField[] => {
  const both = KEY.exec(cells.circuit);
  const isSame = both !== null && Number(both[2]) === channel && moduleToken(both[1] ?? "") === moduleToken(moduleText);
  const isChannelAlone = cells.channel === "" && channelIn(cells.circuit) === channel;
  return [
    ...(cells.circuit === "" || isSame || isChannelAlone ? [] : ["circuit" as const]),
    ...(cells.channel === "" || channelIn(cells.channel) === channel ? [] : ["channel" as const]),
  ];
};

interface Cells {
  readonly circuit: string;
  readonly module: string;
  readonly channel: string;
}

const channelPlace = (cells: Cells, moduleText: string, channel: number): RowPlace =>
  moduleToken(moduleText) === ""
    ? none(`"${moduleText}" names no module: write its number, or a name with letters or digits`)
    : { kind: "channel", moduleText, channel, left: leftBy(cells, moduleText, channel) };

/** What feeds a row, from its circuit, module and channel cells; `above` is the module of the rows above, where there is one. */
export function placeOfRow(written: Cells, above: string | undefined): RowPlace {
  const cells = { circuit: written.circuit.trim(), module: written.module.trim(), channel: written.channel.trim() };
  const { circuit, module } = cells;
  const both = KEY.exec(circuit);
  if (both !== null && (module === "" || cells.channel === "") && !isFuseBlock(module)) {
    const channel = channelIn(both[2] ?? "");
    if (channel !== undefined) return channelPlace(cells, module === "" ? (both[1] ?? "") : module, channel);
  }
  const position = cells.channel === "" ? circuit : cells.channel;
  const owner = module === "" ? (above ?? "") : module;
  if (position === "")
    return none("the row names no channel and no fuse: write the module and channel, or the fuse's name");
  if (DAY.test(position))
    return none(
      `"${position}" is a day: a spreadsheet turned the circuit's number into one; set the column to text and write it again`,
    );
  if (/^(?:sub[ -]?|grand )?totals?:?$|^sum:?$/i.test(position)) return none("the row is a total, not a circuit");
  if (position.length > MAX_NAME)
    return none("the circuit's cell holds a sentence, not a channel or a fuse's name: write the name alone");
  const isBlock = owner === "" || isFuseBlock(owner);
  const channel = channelIn(position);
  if (!isBlock && channel !== undefined) return channelPlace(cells, owner, channel);
  if (!isBlock && module !== "")
    return none(`"${position}" is no channel from 1 to ${MAX_CHANNEL}: write the channel's number`);
  const name = isBlock && /^\d+$/.test(position) && owner !== "" ? `${owner} ${position}` : position;
  return {
    kind: "fuse",
    name,
    block: isBlock && owner !== "" ? owner : undefined,
    left: [
      ...(circuit === "" || circuit === position ? [] : ["circuit" as const]),
      ...(module === "" || name.includes(module) ? [] : ["module" as const]),
    ],
  };
}

/** A row whose only cell starts the rows of a module or a fuse block: `MODULE 3 - rear bay`. */
export function sectionOf(text: string): { readonly owner: string; readonly rest: string } | undefined {
  const plain = text.trim();
  if (KEY.test(plain)) return undefined;
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
