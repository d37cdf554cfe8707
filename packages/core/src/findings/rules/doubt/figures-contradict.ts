import { ratedCurrentOf } from "../../../dimming/index.js";
import { conductorCOf, wireResistance } from "../../../network/index.js";
import { COMMON_PRACTICE, figureBasis, intersect, midOf, type Span } from "../../../quantity/index.js";
import type { Cable, Load, WireRun } from "../../../record/index.js";
import type { CoachContext } from "../../context.js";
import { defineRule, type Said } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofCable, ofCircuit, ofLoad } from "../../subject.js";

/** Two ways to the same figure: what was read, and what the other figures of the record make of it. */
function told(
  of: Pick<Said, "subject"> & {
    readonly path: string;
    readonly place: string | undefined;
    readonly what: "wire" | "load";
  },
  context: CoachContext,
  read: Span,
  other: Span,
): Said {
  const isApart = intersect(read, other).kind === "refused";
  const instrument = of.what === "wire" ? "ohmmeter" : "clamp meter";
  return {
    subject: of.subject,
    verdict: isApart ? "fails" : "holds",
    parameters: {
      what: of.what,
      path: of.path,
      read: midOf(read),
      readLo: read.lo,
      readHi: read.hi,
      other: midOf(other),
      otherLo: other.lo,
      otherHi: other.hi,
      isAbove: read.lo > other.hi ? "yes" : "no",
    },
    settledBy: isApart ? [{ path: of.path, instrument, minutes: minutesFor(context.index, instrument, of.place) }] : [],
  };
}

/** A wire measured from end to end, against copper of its own length and size. */
function ofWire(
  context: CoachContext,
  subject: Said["subject"],
  run: WireRun | Cable | undefined,
  path: string,
): Said | undefined {
  if (run?.resistanceOhm === undefined || run.lengthM === undefined) return undefined;
  const { resistanceOhm: _, ...copper } = run;
  const zoneOf = (place: string) => context.index.places.get(place)?.zone;
  const made = wireResistance(copper, context.policy, conductorCOf(run, context.policy, zoneOf));
  const measured = context.resistance(run);
  if (made.kind !== "known" || measured.kind !== "known") return undefined;
  const of = { subject, path: `${path}.resistanceOhm`, place: run.place, what: "wire" } as const;
  return told(of, context, measured.value.span, made.value.span);
}

/** A load of which both amperes and watts were written down. */
function ofDraw(context: CoachContext, load: Load): Said | undefined {
  if (load.currentA === undefined || load.powerW === undefined) return undefined;
  // A guess beside a reading is no contradiction.
  if ([load.currentA, load.powerW].some((one) => !["measured", "marked"].includes(figureBasis(one)))) return undefined;
  const { currentA: _, ...byPower } = load;
  const [amps, watts] = [ratedCurrentOf(load), ratedCurrentOf(byPower)];
  if (amps.kind !== "known" || watts.kind !== "known") return undefined;
  const subject = ofLoad(context.index, load);
  const of = { subject, path: `${subject.path}.currentA`, place: load.place, what: "load" } as const;
  return told(of, context, amps.value, watts.value);
}

export const figuresContradict = defineRule(
  {
    code: "figures-contradict",
    asks: "Do two figures that say the same thing agree within their tolerances?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.circuits.values()) {
      const subject = ofCircuit(index, circuit);
      for (const end of ["out", "return"] as const) {
        const said = ofWire(context, subject, circuit[end], `${subject.path}.${end}`);
        if (said !== undefined) yield said;
      }
    }
    for (const cable of index.cables.values()) {
      const subject = ofCable(index, cable);
      const said = (cable.kind ?? "wire") === "wire" ? ofWire(context, subject, cable, subject.path) : undefined;
      if (said !== undefined) yield said;
    }
    for (const load of index.loads.values()) {
      const subject = ofLoad(index, load);
      for (const said of [ofWire(context, subject, load.tail, `${subject.path}.tail`), ofDraw(context, load)])
        if (said !== undefined) yield said;
    }
  },
);
