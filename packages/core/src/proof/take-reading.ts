import type { CircuitId, CoachIndex, Point, Reading } from "../record/index.js";
import type { Test } from "./proof.js";
import { saidMeans } from "./said.js";

/** A reading as a test can use it, or why it cannot. */
export type Taken =
  | { readonly kind: "amount"; readonly value: number }
  | { readonly kind: "said"; readonly value: string }
  | { readonly kind: "stray"; readonly why: string };

const stray = (why: string): Taken => ({ kind: "stray", why });

/**
 * What does this reading say to this test? A stray where its value is of another kind, it was taken somewhere else, or with something on that the test wants off:
 * then it cannot be held against what the test expects.
 */
export function takeReading(test: Test, reading: Reading, index: CoachIndex): Taken {
  if (reading.point !== undefined && !isAtTest(test, reading.point, index))
    return stray(`It was taken at ${reading.point.at}, which is not where the test ${test.id} is.`);
  switch (test.kind) {
    case "voltage-at-load":
      if (reading.kind !== "voltage" || !isNumber(reading.valueV)) return stray("The test wants volts.");
      if (reading.point !== undefined && reading.against?.at !== reading.point.at)
        return stray("The test wants both probes on the load; this was taken against another point.");
      return strayState(test, reading) ?? { kind: "amount", value: reading.valueV };
    case "current":
      if (reading.kind !== "current" || !isNumber(reading.valueA)) return stray("The test wants amperes.");
      return strayState(test, reading) ?? { kind: "amount", value: reading.valueA };
    case "address":
      if (reading.kind !== "address" || reading.address === undefined) return stray("The test wants an address.");
      return { kind: "said", value: String(reading.address) };
    case "switches":
    case "dims":
    case "stays-steady":
    case "answers":
    case "always-fed":
    case "channel-dead": {
      if (reading.said === undefined) return stray("The test wants yes or no.");
      const meant = saidMeans(reading.said);
      return meant === undefined
        ? stray(`The test wants yes or no; "${reading.said}" is neither.`)
        : { kind: "said", value: meant };
    }
    case "lamp":
      if (reading.said === undefined) return stray("The test wants what the lamp shows.");
      return { kind: "said", value: reading.said.trim().toLowerCase() };
  }
}

const isNumber = (value: number | undefined): value is number => value !== undefined && Number.isFinite(value);

function isAtTest(test: Test, point: Point, index: CoachIndex): boolean {
  if (test.circuit === undefined) return point.at === test.module;
  if (test.kind === "voltage-at-load") return point.at === test.load;
  const loads: readonly string[] = index.circuits.get(test.circuit)?.loads ?? [];
  return point.at === test.circuit || loads.includes(point.at);
}

/** Amounts are expected on battery alone, at full, with nothing else on. What the reading does not tell of its state is taken to be as asked. */
function strayState(test: Test, { state }: Reading): Taken | undefined {
  if (state === undefined) return undefined;
  if (state.chargerOn === true) return stray("It was taken with the charger on; the test wants the battery alone.");
  if (state.engineOn === true) return stray("It was taken with the engine on; the test wants the battery alone.");
  if (test.circuit !== undefined && (state.dutyRatio?.[test.circuit] ?? 1) < 1)
    return stray("It was taken dimmed; the test wants it on at full.");
  if (state.on === undefined) return undefined;
  const asked: ReadonlySet<CircuitId> = new Set(test.on ?? []);
  if (state.on === "all" || (state.on !== "none" && state.on.some((id) => !asked.has(id))))
    return stray("It was taken with other circuits on; the test wants this one alone.");
  if (test.circuit !== undefined && (state.on === "none" || !state.on.includes(test.circuit)))
    return stray("It was taken with the circuit off.");
  return undefined;
}
