import { fieldWords } from "@fusebook/core/findings";
import { methodWords, type Test, type TestKind, testKindWords } from "@fusebook/core/proof";
import { showQuantity, type UnitChoice } from "@fusebook/core/quantity";
import type { CoachIndex, ModuleId } from "@fusebook/core/record";
import type { CheckGroup } from "../document/blocks.js";
import type { PacketView } from "../packet/packet-view.js";
import { feedsOf, fuseNumber, moduleName } from "./names.js";
import { shownSpan } from "./shown-figure.js";

export const DIMENSION = { V: "voltage", A: "current", ohm: "resistance" } as const;

/** The test sheet of the modules that a job touches, and of other circuits that it makes: methods once, then circuit by circuit. */
export function testsOn(
  tests: readonly Test[],
  touched: ReadonlySet<ModuleId>,
  made: ReadonlySet<string>,
  index: CoachIndex,
  units: UnitChoice,
): Pick<PacketView, "tests" | "testMethods" | "testsNote"> {
  const mine = tests.filter(
    (test) =>
      (test.module !== undefined && touched.has(test.module)) || (test.circuit !== undefined && made.has(test.circuit)),
  );
  const groups = new Map<string, Test[]>();
  for (const test of mine) {
    const key = test.circuit ?? test.module ?? test.id;
    groups.set(key, [...(groups.get(key) ?? []), test]);
  }
  const kinds = [...new Set(mine.map((test) => test.kind))];
  const left = tests.length - mine.length;
  return {
    testMethods: kinds.map((kind: TestKind) => [testKindWords(kind), methodWords(kind)]),
    tests: [...groups.values()].map((group) => groupOf(group, index, units)),
    testsNote:
      left === 0
        ? ""
        : `Only what this job touches is tested here; ${left} more tests of the coach are not on this sheet.`,
  };
}

function groupOf(tests: readonly Test[], index: CoachIndex, units: UnitChoice): CheckGroup {
  const first = tests[0]!;
  const module = first.module === undefined ? undefined : index.modules.get(first.module);
  const circuit = first.circuit === undefined ? undefined : index.circuits.get(first.circuit);
  const named =
    circuit === undefined
      ? module === undefined
        ? (first.where ?? "")
        : moduleName(index, module)
      : feedsOf(index, circuit);
  return {
    number:
      circuit === undefined
        ? (module?.id ?? "")
        : `${module === undefined ? "" : `${module.id}.`}${fuseNumber(circuit)}`,
    where: named,
    cautions: [...new Set(tests.flatMap((test) => test.cautions ?? []))],
    lines: tests.map((test) => lineOf(test, units)),
  };
}

function lineOf(test: Test, units: UnitChoice): CheckGroup["lines"][number] {
  const what = `${testKindWords(test.kind)}${test.channel === undefined ? "" : `: channel ${test.channel}`}`;
  const { expected } = test;
  if (test.cannot !== undefined) return { what, expected: "–", span: test.cannot, unit: "" };
  if (test.needs.length > 0) {
    const needs = [...new Set(test.needs.map(fieldWords))].join("; ");
    return { what, expected: "not known", span: `wanted first: ${needs}`, unit: "" };
  }
  if ("said" in expected) return { what, expected: expected.said, span: "", unit: "" };
  const show = (value: number) => showQuantity(value, DIMENSION[expected.unit], units);
  return {
    what,
    expected: show(expected.nominal),
    span: shownSpan(expected.span, DIMENSION[expected.unit], units),
    unit: expected.unit,
  };
}
