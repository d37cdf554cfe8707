#!/usr/bin/env node
import { mkdir } from "node:fs/promises";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { type Endurance, enduranceOf } from "@fusebook/core/endurance";
import { checkRecord, findingWords } from "@fusebook/core/findings";
import { applyPlan } from "@fusebook/core/plan";
import { judge, testsOf } from "@fusebook/core/proof";
import {
  type CoachIndex,
  importSurvey,
  indexRecord,
  policyOf,
  proposeMapping,
  writeRecord,
} from "@fusebook/core/record";
import { demoAfterwards, demoBaseRecord, demoFiles, demoReadings, withAfterwards } from "@fusebook/fixtures";
import { readGrid } from "@fusebook/intake";
import { jsonText } from "./columns.js";
import { countsOf, worded } from "./commands/check.js";
import { percentWords, upTo } from "./hours-words.js";
import { realIo } from "./io.js";
import { money } from "./money.js";
import { bookFor, packetFor } from "./papers.js";
import { planMeant } from "./plan-pick.js";
import { recordWith } from "./plan-record.js";
import { searchPlans } from "./plan-search.js";
import { planLines } from "./plan-text.js";

/** The date on the demo's papers, so that they are the same at every run. */
const DEMO_DATE = "2026-05-09";

/** How long an evening on battery lasts before and after the plan, where the record can tell. */
function hoursLine(before: CoachIndex, after: CoachIndex): string | undefined {
  const [now, then] = [before, after].map((each) => enduranceOf(each, "evening", {}));
  if (now?.kind !== "known" || then?.kind !== "known") return undefined;
  const said = ({ hours, horizonH }: Endurance): string =>
    `${upTo(hours.nominal, horizonH)} (${upTo(hours.span.lo, horizonH)} to ${upTo(hours.span.hi, horizonH)})`;
  return `an evening on battery down to ${percentWords(now.value.reserveRatio)}: ${said(now.value)} as it is, ${said(then.value)} after the plan`;
}

/** The whole job on the invented demo coach: import, check, plan, packet, proof, book. Everything goes to `out/`. */
async function job(folder: string): Promise<void> {
  const io = realIo();
  const written: string[] = [];
  const keep = async (name: string, content: Uint8Array | string): Promise<void> => {
    await io.write(join(folder, name), content, true);
    written.push(name);
  };
  const say = (line = ""): void => io.out(line);
  await mkdir(folder, { recursive: true });

  const survey = demoFiles().find((file) => file.name.endsWith(".csv"));
  if (survey === undefined) throw new Error("the demo has no survey");
  const read = await readGrid(survey.content, survey.name);
  if (read.kind === "refused") throw new Error(read.faults.map((fault) => fault.message).join("; "));
  const base = demoBaseRecord();
  const imported = importSurvey(base, read.grid, proposeMapping(read.grid, base.survey?.mappings), {});
  const record = withAfterwards(imported.record, demoAfterwards());
  const index = indexRecord(record);
  const { currency, unitsShown: units } = policyOf(record);
  await keep("marsh-wren.fusebook.json", writeRecord(record));
  say(`${record.coach.name}: an invented coach, to show the whole job`);
  say(
    `Survey    ${imported.report.rows} rows typed by hand became ${imported.report.circuits} circuits; ${imported.report.unread.filter((cell) => cell.code !== "blank").length} cells could not be read and are kept as text`,
  );

  const findings = checkRecord(index);
  const counts = countsOf(findings);
  await keep("findings.json", jsonText(findings.map((finding) => worded(finding, units))));
  say(
    `Findings  ${counts.stop} stop, ${counts.mend} to mend, ${counts.watch} to watch, ${counts.note} to note; ${counts.open} open, each with the reading that settles it`,
  );
  const worst = findings
    .filter((each) => each.verdict === "fails")
    .map((each) => `${each.severity.padEnd(5)} ${findingWords(each, units).title}: ${each.subject.name}`);
  for (const line of [...new Set(worst)].slice(0, 4)) say(`          ${line}`);

  const asked = record.jobs?.[0];
  const front = await searchPlans(index, asked, io);
  const plan = planMeant(front, front.picks[0]?.name ?? "");
  await keep("plans.json", jsonText(front));
  say(
    `Plan      ${front.plans.length} plans worth choosing from, 0 to ${Math.max(...front.plans.map((each) => each.dims.length))} lights dimmed; proposed: ${plan.dims.length} lights dimmed, ${plan.modulesTouched} modules changed, ${plan.wiresMoved === 1 ? "1 wire" : `${plan.wiresMoved} wires`} moved, ${plan.minutes} min, ${money(plan.costCents, currency)}`,
  );
  if (plan.unmet.length > 0)
    say(`          ${plan.unmet.length} wishes stay unmet; the packet says which rule stops each`);

  const evening = hoursLine(index, indexRecord(applyPlan(record, plan)));
  if (evening !== undefined) say(`Hours     ${evening}`);

  const packet = await packetFor({ before: index, plan, job: asked, date: DEMO_DATE, units });
  await keep("packet.pdf", packet.pdf);
  say(`Packet    job sheet, isolation, steps, switch cards, labels at true size, test sheet`);

  const after = applyPlan(recordWith(record, asked, plan, false), plan);
  const afterIndex = indexRecord(after);
  await keep("marsh-wren-after.fusebook.json", writeRecord(after));
  const proof = judge(testsOf(afterIndex), demoReadings(), afterIndex);
  await keep("proof.json", jsonText(proof));
  const judged = (verdict: string): number => proof.judged.filter((each) => each.verdict === verdict).length;
  say(
    `Proof     ${judged("holds")} tests hold, ${judged("fails")} fail, ${judged("open")} open, ${proof.unproved.length} not yet read`,
  );
  const stops = proof.signingStoppedBy;
  say(
    proof.maySign
      ? "          The job may be signed."
      : `          Not to be signed yet: ${stops.length} things stand in the way, named in proof.json; first ${stops[0] ?? ""}`,
  );

  const why = asked?.title ?? "asked for";
  const changes = [
    ...plan.modules
      .filter((choice) => choice.isTouched)
      .map((choice) => ({
        what: `${afterIndex.modules.get(choice.module)?.name ?? choice.module}: ${choice.from ?? "unknown"} out, ${choice.to} in`,
        why,
      })),
    ...planLines({ ...plan, modules: [], fuses: [] }, index, currency)
      .slice(1)
      .map((line) => ({ what: line.trim(), why })),
  ];
  await keep(
    "book.pdf",
    await bookFor({ record: after, findings: checkRecord(afterIndex), proof, changes, date: DEMO_DATE, units }),
  );
  say(`Book      as-built book with the fuse map, and the record inside the PDF`);
  say();
  say(
    "Deeper    fusebook doubt (what to read next), solve, fuse, dim and hours take this record too: docs/commands.md",
  );
  say(`Written to ${relative(process.cwd(), folder) || "."}/: ${written.join(", ")}`);
}

await job(join(fileURLToPath(new URL("../../..", import.meta.url)), "out"));
