import { cableFaultOf, type ProspectiveAtDevice, prospectiveAtFuse } from "../../../protection/index.js";
import { type Figure, figureValue, type Outcome, spanOf } from "../../../quantity/index.js";
import { against } from "../../against.js";
import type { CoachContext } from "../../context.js";
import { defineRule, type Said } from "../../define-rule.js";
import { minutesFor, readingsThatSettle } from "../../settle.js";
import { PART_SHEET } from "../../sources.js";
import { ofCable, ofCircuit } from "../../subject.js";

/** One device against what a short right behind it drives through it; where its print is not read, what it must be able to break. */
function* told(
  context: CoachContext,
  subject: Said["subject"],
  path: string,
  interruptA: Figure | undefined,
  prospective: Outcome<ProspectiveAtDevice>,
): Iterable<Said> {
  if (prospective.kind !== "known") return;
  const { currentA, span } = prospective.value;
  const evidence = [
    { path: subject.path, label: "short-circuit-current", unit: "A", value: currentA, span },
  ] as const satisfies Said["evidence"];
  if (interruptA === undefined) {
    yield {
      subject,
      verdict: "open",
      severity: "note",
      parameters: { limit: currentA, limitLo: span.lo, limitHi: span.hi },
      limit: { value: currentA, unit: "A", sense: "at-least" },
      evidence,
      settledBy: [{ path, instrument: "look", minutes: minutesFor(context.index, "look", undefined) }],
    };
    return;
  }
  const result = against(
    { value: figureValue(interruptA), span: spanOf(interruptA, "rating") },
    { value: currentA, span, unit: "A", sense: "at-least" },
  );
  yield {
    subject,
    ...result,
    severity: result.verdict === "fails" ? "mend" : "watch",
    evidence,
    settledBy:
      result.verdict === "open"
        ? readingsThatSettle(
            context.index,
            [...context.index.supplies.values()]
              .filter((supply) => supply.kind === "battery")
              .map((supply) => ({
                path: `${context.index.pathOf("supplies", supply.id)}.internalResistanceOhm`,
                figure: supply.internalResistanceOhm,
                instrument: "voltmeter",
                place: supply.place,
              })),
          )
        : [],
  };
}

export const interruptUnderFault = defineRule(
  {
    code: "interrupt-under-fault",
    asks: "Can each fuse break the greatest current that a short right behind it can drive?",
    severity: "mend",
    source: PART_SHEET,
  },
  function* (context) {
    const { index } = context;
    const atSupply = new Set([...index.supplies.values()].flatMap((supply) => supply.node ?? []));
    for (const cable of index.cables.values()) {
      if (cable.protection === undefined) continue;
      const { interruptA } = cable.protection;
      // Of the many devices that nobody read, only those at a battery's own terminal are asked after: there the current is greatest.
      const isFirst = atSupply.has(context.wiring().positive.sourceEnd.get(cable.id) as never);
      if (interruptA === undefined && !isFirst) continue;
      const subject = ofCable(index, cable);
      const short = cableFaultOf(index, cable.id);
      const prospective: Outcome<ProspectiveAtDevice> =
        short.kind === "known" ? { kind: "known", value: short.value.atSource } : short;
      yield* told(context, subject, `${subject.path}.protection.interruptA`, interruptA, prospective);
    }
    for (const circuit of index.circuits.values()) {
      const interruptA = circuit.isSpare === true ? undefined : circuit.fuse?.interruptA;
      if (interruptA === undefined) continue;
      const subject = ofCircuit(index, circuit);
      const prospective = prospectiveAtFuse(index, circuit.id);
      yield* told(context, subject, `${subject.path}.fuse.interruptA`, interruptA, prospective);
    }
  },
);
