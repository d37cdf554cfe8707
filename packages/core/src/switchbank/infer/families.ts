import { switchClasses } from "./columns.js";
import { codedValue, Family, type FamilyShape } from "./family.js";
import type { InferOptions } from "./inference.js";

/** One thing known of the code: this address exists, and its row stands like this (undefined: nobody looked). */
export interface Evidence {
  readonly name: string;
  readonly address: number;
  readonly positions: string | undefined;
}

/** Switches that may count. */
export const candidateSwitches = (options: InferOptions): number[] =>
  Array.from({ length: options.switches }, (_, i) => i + 1).filter((number) => !options.notCounted?.includes(number));

/** Every shape that the options allow. One switch reads the same in binary and in Gray, so Gray is left out there. */
export function shapesOf(options: InferOptions): FamilyShape[] {
  const codings = [...new Set(options.codings ?? (["binary", "gray"] as const))];
  const most = candidateSwitches(options).length;
  const counting = [...new Set(options.counting ?? Array.from({ length: most }, (_, i) => i + 1))]
    .filter((count) => count >= 1 && count <= most)
    .sort((a, b) => a - b);
  return codings.flatMap((coding) =>
    [...new Set(options.firstAddresses ?? [0, 1])].flatMap((firstAddress) =>
      counting
        .filter((count) => !(coding === "gray" && count === 1 && codings.includes("binary")))
        .map((count) => ({ coding, firstAddress, counting: count }))
        .filter((shape) => options.maxAddress === undefined || codedValue(shape, options.maxAddress) !== undefined),
    ),
  );
}

const isRead = (positions: string | undefined): positions is string =>
  positions !== undefined && /[01]/.test(positions);

/** The families that fit all the evidence, none of them empty; with `firstOnly`, the first one found, to ask whether there is any. */
export function familiesOf(options: InferOptions, evidence: readonly Evidence[], firstOnly = false): Family[] {
  const read = evidence.filter((each) => isRead(each.positions));
  const classes = switchClasses(
    candidateSwitches(options),
    read.map((each) => each.positions!),
  );
  const families: Family[] = [];
  for (const shape of shapesOf(options)) {
    if (evidence.some((each) => codedValue(shape, each.address) === undefined)) continue;
    const family = new Family(
      shape,
      classes,
      read.map((each) => codedValue(shape, each.address)!),
    );
    if (family.rules === 0n) continue;
    families.push(family);
    if (firstOnly) break;
  }
  return families;
}
