import { steadyOf, suitabilityOf } from "../dimming/index.js";
import { type CoachContext, contextOf, isDimmedToday } from "../findings/index.js";
import type { Spanned } from "../network/index.js";
import type { Outcome } from "../quantity/index.js";
import type { Circuit, CircuitId, CoachIndex, Module } from "../record/index.js";
import { asksWords, circuitPlaceWords, modulePlaceWords } from "./asks.js";
import { cautionsOf } from "./cautions.js";
import { expectedAmounts } from "./expected-amounts.js";
import { type MovedWires, movedOnRecord } from "./moved-wires.js";
import type { Test, TestKind } from "./proof.js";
import { alwaysOn, feedsDetector } from "./test-state.js";
import { alwaysFedTest, answersTest, deadChannelTests } from "./wire-tests.js";
import { wishOf } from "./wish-of.js";

const NOT_KNOWN = { said: "not known" } as const;
const YES = { said: "yes" } as const;

/**
 * Which tests prove this coach channel by channel? By module in the order of the record, its address first, then its channels; plain fuses last. A spare has
 * none. A circuit with a detector, and one that is always on, is not switched off: it is read for power only. A test whose figures are missing stands with `needs`.
 * Amounts are for the circuit alone on battery, at the battery voltage on record. `moved`: wires that the work has put elsewhere; where absent, those of the plans
 * chosen in the record's unsigned jobs.
 */
export function testsOf(index: CoachIndex, moved: MovedWires = movedOnRecord(index)): Test[] {
  const context = contextOf(index);
  const steady = alwaysOn(index);
  const tests: Test[] = [];
  for (const module of index.modules.values()) {
    tests.push(addressTest(index, module));
    for (const circuit of index.circuitsOfModule.get(module.id) ?? [])
      if (circuit.isSpare !== true) tests.push(...circuitTests(context, circuit, steady, moved));
    tests.push(...deadChannelTests(index, module.id, moved));
  }
  for (const circuit of index.circuits.values()) {
    const isOnModule = circuit.module !== undefined && index.modules.has(circuit.module);
    if (!isOnModule && circuit.isSpare !== true && (circuit.loads ?? []).length > 0)
      tests.push(...circuitTests(context, circuit, steady, moved));
  }
  return tests;
}

function addressTest(index: CoachIndex, module: Module): Test {
  const { address } = module;
  return {
    id: `t-${module.id}-address`,
    module: module.id,
    kind: "address",
    asks: asksWords("address", modulePlaceWords(module), []),
    where: modulePlaceWords(module),
    expected: address === undefined ? NOT_KNOWN : { said: String(address) },
    needs: address === undefined ? [`${index.pathOf("modules", module.id)}.address`] : [],
  };
}

function circuitTests(
  context: CoachContext,
  circuit: Circuit,
  steady: readonly CircuitId[],
  moved: MovedWires,
): Test[] {
  const { index } = context;
  const place = circuitPlaceWords(index, circuit);
  const cautions = cautionsOf(index, circuit);
  const hasDetector = feedsDetector(index, circuit);
  const amounts = expectedAmounts(index, circuit, steady);
  const base = (kind: TestKind) => ({
    id: `t-${circuit.id}-${kind}`,
    circuit: circuit.id,
    ...(circuit.module === undefined ? {} : { module: circuit.module }),
    kind,
    where: place,
    cautions,
  });
  const said = (kind: TestKind, needs: readonly string[] = []): Test => ({
    ...base(kind),
    asks: asksWords(kind, place, cautions),
    expected: needs.length === 0 ? YES : NOT_KNOWN,
    needs,
  });
  const amount = (kind: TestKind, unit: "V" | "A", found: Outcome<Spanned>): Test => {
    const load = amounts.load === undefined ? undefined : index.loads.get(amounts.load);
    return {
      ...base(kind),
      asks: asksWords(kind, kind === "current" || load === undefined ? place : `${place}, at ${load.name}`, cautions),
      expected: found.kind === "known" ? { span: found.value.span, nominal: found.value.nominal, unit } : NOT_KNOWN,
      needs: found.kind === "missing" ? found.needs : [],
      ...(load === undefined || kind === "current" ? {} : { load: load.id }),
      on: amounts.on,
      ...(found.kind === "refused" ? { cannot: found.because } : {}),
      ...(found.kind === "known" && amounts.without.length > 0 ? { without: amounts.without } : {}),
    };
  };
  const loadsNeed = (circuit.loads ?? []).length === 0 ? [`${index.pathOf("circuits", circuit.id)}.loads`] : [];
  const answers = answersTest(index, circuit, moved);
  const fed = alwaysFedTest(index, circuit, moved);
  const tests: Test[] = [...(answers === undefined ? [] : [answers]), ...(fed === undefined ? [] : [fed])];
  // What has no switch is not switched: it is read for power.
  if (!hasDetector && fed === undefined && !steady.includes(circuit.id)) tests.push(said("switches", loadsNeed));
  tests.push(amount("voltage-at-load", "V", amounts.voltage), amount("current", "A", amounts.current));
  const dims = hasDetector ? undefined : dimsNeeds(context, circuit);
  if (dims !== undefined) tests.push(said("dims", dims));
  const keeps = steadyNeeds(index, circuit);
  if (keeps !== undefined) tests.push(said("stays-steady", keeps));
  return tests;
}

/** What a `dims` test lacks; undefined where there is none: the channel does not dim, or one of its loads may not. */
function dimsNeeds(context: CoachContext, circuit: Circuit): readonly string[] | undefined {
  const { index } = context;
  const loads = (circuit.loads ?? []).flatMap((id) => index.loads.get(id) ?? []);
  if (loads.length === 0) return undefined;
  if (
    loads.some(
      (load) => ["no", "unknown"].includes(suitabilityOf(load).may) || wishOf(index, load) === "must-stay-steady",
    )
  )
    return undefined;
  const dimmed = isDimmedToday(context, circuit);
  if (dimmed.kind === "missing") return dimmed.needs;
  return dimmed.kind === "known" && dimmed.value ? [] : undefined;
}

/** What a `stays-steady` test lacks; undefined where there is none: no transistor output, or no load that must stay steady. */
function steadyNeeds(index: CoachIndex, circuit: Circuit): readonly string[] | undefined {
  const module = circuit.module === undefined ? undefined : index.modules.get(circuit.module);
  const kind = module?.kind === undefined ? undefined : index.moduleKinds.get(module.kind);
  if (kind?.output !== "pwm" && kind?.output !== "mixed") return undefined;
  const unknown: string[] = [];
  for (const id of circuit.loads ?? []) {
    const load = index.loads.get(id);
    if (load === undefined) continue;
    const { must } = steadyOf(load, wishOf(index, load));
    if (must === "yes") return [];
    if (must === "unknown") unknown.push(`${index.pathOf("loads", load.id)}.class`);
  }
  return unknown.length > 0 ? unknown : undefined;
}
