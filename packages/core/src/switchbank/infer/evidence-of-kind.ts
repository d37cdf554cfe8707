import { known, missing, type Outcome } from "../../quantity/index.js";
import type { CoachIndex } from "../../record/index.js";
import type { InferOptions, Installed, Sample } from "./inference.js";

/** What a record holds for `inferCode`, for one kind of module. */
export interface KindEvidence {
  readonly samples: readonly Sample[];
  readonly options: InferOptions;
  /** Modules whose address is only the one that the program uses: nobody saw them answer to it. */
  readonly addressNotSeen: readonly string[];
}

/**
 * What does the record know of the bank code of this kind? Samples are modules of which the row was read and the address was seen (`answersTo`).
 * With `trustProgram` the program's address stands in where no other was seen; without it such a module's address counts as still to be
 * found, because a module that answers to another address than meant would teach a wrong rule. Switches that the kind gives to options or to
 * nothing do not count. Missing: `bank.switches`, where neither the kind nor a row read tells how many there are.
 */
export function evidenceOfKind(index: CoachIndex, kindId: string, trustProgram = false): Outcome<KindEvidence> {
  const bank = index.moduleKinds.get(kindId)?.bank;
  const modules = [...index.modules.values()].filter((module) => module.kind === kindId);
  const switches = bank?.switches ?? Math.max(0, ...modules.map((module) => module.positionsFound?.length ?? 0));
  if (switches === 0) return missing("bank.switches");
  const samples: Sample[] = [];
  const installed: Installed[] = [];
  const addressNotSeen: string[] = [];
  for (const module of modules) {
    const name = module.name ?? module.id;
    const positions = module.positionsFound;
    if (module.answersTo === undefined && module.address !== undefined) addressNotSeen.push(name);
    // A row that was not read cannot teach a wrong rule: there the program's address serves to say which row to read.
    const address = module.answersTo ?? (trustProgram || positions === undefined ? module.address : undefined);
    if (address !== undefined && positions !== undefined && !positions.includes("?"))
      samples.push({ name, address, positions });
    else if (address !== undefined || positions !== undefined)
      installed.push({
        name,
        ...(address !== undefined && { address }),
        ...(positions !== undefined && { positions }),
      });
  }
  const elsewhere = [
    ...(bank?.options ?? []).flatMap((setting) => setting.set.map((each) => each.switch)),
    ...(bank?.unused ?? []).map((each) => each.switch),
  ];
  return known({
    samples,
    options: { switches, notCounted: [...new Set(elsewhere)].sort((a, b) => a - b), installed },
    addressNotSeen,
  });
}
