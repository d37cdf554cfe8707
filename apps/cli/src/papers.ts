import type { Finding } from "@fusebook/core/findings";
import type { Plan } from "@fusebook/core/plan";
import type { ProofReport } from "@fusebook/core/proof";
import { type CoachIndex, type CoachRecord, indexRecord, type Job, writeRecord } from "@fusebook/core/record";
import { bookPdf, bookViewOf, loadPaperEngine, packetInputsOf, packetPdf, packetViewOf } from "@fusebook/paper";
import { Misuse } from "./misuse.js";
import type { Units } from "./records.js";

const setOrSay = (
  name: string,
  setting: { kind: "set"; pdf: Uint8Array } | { kind: "refused"; faults: readonly string[] },
): Uint8Array => {
  if (setting.kind === "set") return setting.pdf;
  throw new Misuse(`the ${name} could not be set:\n${setting.faults.map((fault) => `  ${fault}`).join("\n")}`);
};

/** The work packet of a plan as a PDF, and the labels whose text does not fit at true size. */
export async function packetFor(inputs: {
  readonly before: CoachIndex;
  readonly plan: Plan;
  readonly job: Job | undefined;
  readonly date: string;
  readonly units: Units;
}): Promise<{ readonly pdf: Uint8Array; readonly unfit: readonly string[] }> {
  const setting = await packetPdf(
    await loadPaperEngine(),
    packetViewOf(packetInputsOf({ ...inputs, id: `${inputs.before.record.id}-${inputs.plan.id}` })),
  );
  return {
    pdf: setOrSay("packet", setting),
    unfit: setting.unfitLabels.map(
      (label) =>
        `label strip ${label.strip}, ${label.head}: "${label.text}" does not fit at true size; the sheet lists it whole`,
    ),
  };
}

/** The as-built book of a record as a PDF, with the record inside. */
export async function bookFor(inputs: {
  readonly record: CoachRecord;
  readonly findings: readonly Finding[];
  readonly proof?: ProofReport;
  readonly changes?: readonly { readonly what: string; readonly why: string }[];
  readonly date: string;
  readonly units: Units;
}): Promise<Uint8Array> {
  const { record } = inputs;
  const view = bookViewOf({
    index: indexRecord(record),
    findings: inputs.findings,
    ...(inputs.proof === undefined ? {} : { proof: inputs.proof }),
    ...(inputs.changes === undefined ? {} : { changes: inputs.changes }),
    recordBytes: new TextEncoder().encode(writeRecord(record)),
    date: inputs.date,
    id: `${record.id}-book`,
    units: inputs.units,
  });
  return setOrSay("book", await bookPdf(await loadPaperEngine(), view));
}
