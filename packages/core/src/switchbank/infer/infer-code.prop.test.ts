import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { encodeAddress } from "../encode-address.js";
import { inferCode } from "./infer-code.js";
import type { Coding, Inference, InferOptions, Sample, WeightsCode } from "./inference.js";

/** A rule as plain data of this test: switch and polarity of each bit. Nothing of the code under test is used to make or to judge one. */
interface PlainRule {
  readonly coding: Coding;
  readonly first: number;
  readonly seats: readonly { readonly switch: number; readonly on: 0 | 1 }[];
}

const plainCoded = (rule: PlainRule, address: number): number | undefined => {
  const value = address - rule.first;
  if (value < 0 || value >= 2 ** rule.seats.length) return undefined;
  if (rule.coding === "binary") return value;
  // Gray by its definition: each bit is the sum of the value's bit and the next higher one.
  let gray = 0;
  for (let bit = 0; bit < rule.seats.length; bit++) {
    const sum = (Math.floor(value / 2 ** bit) % 2) + (Math.floor(value / 2 ** (bit + 1)) % 2);
    if (sum === 1) gray += 2 ** bit;
  }
  return gray;
};

const plainRow = (rule: PlainRule, address: number, switches: number): string | undefined => {
  const coded = plainCoded(rule, address);
  if (coded === undefined) return undefined;
  const row = Array.from({ length: switches }, () => "?");
  rule.seats.forEach((seat, bit) => {
    const counts = Math.floor(coded / 2 ** bit) % 2 === 1;
    row[seat.switch - 1] = String(counts ? seat.on : 1 - seat.on);
  });
  return row.join("");
};

const agree = (a: string, b: string): boolean =>
  [...a].every((sign, i) => sign === "?" || b[i] === "?" || sign === b[i]);

/** Every rule there is on so many switches, one after the other. */
function everyRule(switches: number, firsts: readonly number[], codings: readonly Coding[]): PlainRule[] {
  const rules: PlainRule[] = [];
  const grow = (coding: Coding, first: number, seats: PlainRule["seats"]): void => {
    // On one switch the two codings are the same rule.
    if (seats.length > 0 && !(seats.length === 1 && coding === "gray" && codings.includes("binary")))
      rules.push({ coding, first, seats });
    for (let number = 1; number <= switches; number++)
      if (!seats.some((seat) => seat.switch === number))
        for (const on of [0, 1] as const) grow(coding, first, [...seats, { switch: number, on }]);
  };
  for (const coding of codings) for (const first of firsts) grow(coding, first, []);
  return rules;
}

const asCode = (rule: PlainRule): WeightsCode => ({
  kind: "weights",
  coding: rule.coding,
  firstAddress: rule.first,
  switches: rule.seats.map((seat, bit) => ({ switch: seat.switch, weight: 2 ** bit, onMeans: seat.on })),
});

const nameOf = (code: WeightsCode): string =>
  `${code.coding} ${code.firstAddress} ${[...code.switches]
    .sort((a, b) => a.weight - b.weight)
    .map((each) => `${each.switch}${each.onMeans === 1 ? "+" : "-"}`)
    .join(" ")}`;

const infer = (samples: readonly Sample[], options: InferOptions): Inference => {
  const outcome = inferCode(samples, options);
  if (outcome.kind !== "known") throw new Error(JSON.stringify(outcome));
  return outcome.value;
};

const anyRule = (switches: number): fc.Arbitrary<PlainRule> =>
  fc
    .record({
      coding: fc.constantFrom<Coding>("binary", "gray"),
      first: fc.constantFrom(0, 1),
      order: fc.shuffledSubarray(
        Array.from({ length: switches }, (_, i) => i + 1),
        { minLength: 1, maxLength: switches },
      ),
      on: fc.array(fc.constantFrom<0 | 1>(0, 1), { minLength: switches, maxLength: switches }),
    })
    .map(({ coding, first, order, on }) => ({
      // On one switch the two codings are the same rule.
      coding: order.length === 1 ? "binary" : coding,
      first,
      seats: order.map((number, i) => ({ switch: number, on: on[i]! })),
    }));

/** A rule and what somebody read of a few modules: switches that do not count stand anyhow, some were not read. */
const ruleAndReads = (switches: number, mayBeUnread: boolean) =>
  fc
    .record({
      rule: anyRule(switches),
      picks: fc.array(fc.nat(), { maxLength: 5 }),
      noise: fc.array(fc.nat(), { minLength: 8, maxLength: 8 }),
      unread: fc.array(fc.nat(), { minLength: 8, maxLength: 8 }),
    })
    .map(({ rule, picks, noise, unread }) => {
      const reads = picks.map((pick, i) => {
        const address = rule.first + (pick % 2 ** rule.seats.length);
        const row = [...plainRow(rule, address, switches)!].map((sign, s) => {
          if (mayBeUnread && ((unread[i]! >> s) & 3) === 3) return "?";
          return sign === "?" ? String((noise[i]! >> s) & 1) : sign;
        });
        return { address, positions: row.join(""), name: `m${i}` };
      });
      return { rule, reads };
    });

const allRules = new Map(
  [1, 2, 3, 4].map((switches) => [switches, everyRule(switches, [0, 1], ["binary", "gray"])] as const),
);

describe("inferCode against every rule tried one after the other", () => {
  it.each([
    [3, false],
    [3, true],
    [4, false],
    [4, true],
  ])("on %d switches (some unread: %s) it counts, lists and predicts the same", (switches, mayBeUnread) => {
    fc.assert(
      fc.property(ruleAndReads(switches, mayBeUnread), ({ rule, reads }) => {
        const fitting = allRules.get(switches)!.filter((each) =>
          reads.every((read) => {
            const row = plainRow(each, read.address, switches);
            return row !== undefined && agree(row, read.positions);
          }),
        );
        const got = infer(reads, { switches, listAtMost: 20_000 });
        expect(got.rules).toBe(fitting.length);
        expect(got.rulesText).toBe(String(fitting.length));
        expect(got.isListComplete).toBe(true);
        const names = got.listed.map(nameOf);
        expect(names.sort()).toEqual(fitting.map((each) => nameOf(asCode(each))).sort());
        expect(names).toContain(nameOf(asCode(rule)));
        for (const prediction of got.predictions) {
          const rows = fitting.map((each) => plainRow(each, prediction.address, switches));
          expect(prediction.reachedBy).toBe(rows.every((row) => row !== undefined) ? "all" : "some");
          const wanted = Array.from(
            { length: switches },
            (_, s) => new Set(rows.flatMap((row) => (row && row[s] !== "?" ? [row[s]] : []))),
          );
          expect(prediction.positions).toBe(wanted.map((set) => (set.size === 1 ? [...set][0] : "?")).join(""));
          expect(prediction.open).toEqual(wanted.flatMap((set, s) => (set.size === 2 ? [s + 1] : [])));
        }
        // Every seat told for a weight is one that some rule has, and none is left out.
        for (const family of got.families) {
          const here = fitting.filter(
            (each) =>
              each.coding === family.coding &&
              each.first === family.firstAddress &&
              each.seats.length === family.counting,
          );
          expect(family.rules).toBe(here.length);
          family.weights.forEach(({ may }, bit) => {
            const told = may.map((seat) => `${seat.switch}/${seat.onMeans}`).sort();
            const had = [...new Set(here.map((each) => `${each.seats[bit]!.switch}/${each.seats[bit]!.on}`))].sort();
            expect(told).toEqual(had);
          });
        }
      }),
      { seed: 21 + switches, numRuns: switches === 3 ? 120 : 50 },
    );
  });

  it.each([
    [3, false],
    [3, true],
  ])(
    "on %d switches (some unread: %s) it expects the same number of rules after each look",
    (switches, mayBeUnread) => {
      fc.assert(
        fc.property(ruleAndReads(switches, mayBeUnread), fc.nat(), fc.nat(7), ({ rule, reads }, pick, rowValue) => {
          const known = reads.slice(0, 2);
          const address = rule.first + (pick % 2 ** rule.seats.length);
          const row = rowValue.toString(2).padStart(switches, "0");
          const installed = [
            { name: "row unknown", address },
            { name: "address unknown", positions: row },
          ];
          const fitting = allRules.get(switches)!.filter((each) => {
            const fits = known.every((read) => {
              const its = plainRow(each, read.address, switches);
              return its !== undefined && agree(its, read.positions);
            });
            return fits && plainRow(each, address, switches) !== undefined;
          });
          const got = infer(known, { switches, installed, listAtMost: 1 });
          expect(got.rules).toBe(fitting.length);
          // Reading the row: every full row there is, weighted by how likely each rule makes it.
          let afterRow = 0;
          for (let seen = 0; seen < 2 ** switches; seen++) {
            const seenRow = seen.toString(2).padStart(switches, "0");
            const left = fitting.filter((each) => agree(plainRow(each, address, switches)!, seenRow));
            const chance = left.reduce((sum, each) => sum + 2 ** -(switches - each.seats.length), 0) / fitting.length;
            afterRow += chance * left.length;
          }
          // Finding the address: every address each rule reads off the row.
          let afterAddress = 0;
          for (let seen = 0; seen <= 9; seen++) {
            const left = fitting.filter((each) => {
              const its = plainRow(each, seen, switches);
              return its !== undefined && agree(its, row);
            });
            afterAddress += (left.length / fitting.length) * left.length;
          }
          const lookAt = (look: "positions" | "address") => got.lookNext.find((each) => each.look === look);
          for (const [look, expected] of [
            ["positions", afterRow],
            ["address", afterAddress],
          ] as const) {
            const found = lookAt(look);
            if (expected > fitting.length * (1 - 1e-6)) expect(found).toBeUndefined();
            else {
              expect(found?.isExact).toBe(true);
              expect(found?.expectedRules).toBeCloseTo(expected, 6);
            }
          }
          expect(got.lookNext.map((each) => each.expectedRules)).toEqual(
            got.lookNext.map((each) => each.expectedRules).sort((a, b) => a - b),
          );
        }),
        { seed: 31, numRuns: 100 },
      );
    },
  );
});

describe("any bank code survives encode and infer", () => {
  it("keeps the true rule among the consistent ones, whatever was read", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 10 }).chain((n) => ruleAndReads(n, true).map((r) => ({ ...r, n }))),
        ({ rule, reads, n }) => {
          const got = infer(reads, { switches: n, listAtMost: 1 });
          expect(got.rules).toBeGreaterThan(0);
          const family = got.families.find(
            (each) =>
              each.coding === rule.coding && each.firstAddress === rule.first && each.counting === rule.seats.length,
          );
          rule.seats.forEach((seat, bit) => {
            expect(family?.weights[bit]?.may).toContainEqual({ switch: seat.switch, onMeans: seat.on });
          });
        },
      ),
      { seed: 41, numRuns: 200 },
    );
  });

  it("predicts one row for every address, the true one, when all addresses were seen", () => {
    fc.assert(
      fc.property(anyRule(6), fc.constantFrom("0", "1"), (rule, rest) => {
        const code = asCode(rule);
        const addresses = Array.from({ length: 2 ** rule.seats.length }, (_, i) => rule.first + i);
        const samples = addresses.map((address) => {
          const row = Array.from<unknown, string>({ length: 6 }, () => rest);
          const positions = encodeAddress(code, address);
          if (positions.kind !== "known") throw new Error("encode");
          for (const each of positions.value) row[each.switch - 1] = String(each.position);
          return { address, positions: row.join("") };
        });
        const got = infer(samples, { switches: 6, maxAddress: addresses.at(-1), counting: [rule.seats.length] });
        expect(got.rules).toBe(1);
        for (const address of addresses) {
          const prediction = got.predictions.find((each) => each.address === address)!;
          expect(prediction.isSettled).toBe(true);
          expect(prediction.positions).toBe(plainRow(rule, address, 6));
        }
      }),
      { seed: 42, numRuns: 100 },
    );
  });
});

describe("samples that contradict each other", () => {
  it("names smallest sets: no rule fits a set, some rule fits it less any one", () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ address: fc.integer({ min: 0, max: 8 }), row: fc.nat(7) }), {
          minLength: 2,
          maxLength: 6,
        }),
        (list) => {
          const samples = list.map(({ address, row }, i) => ({
            address,
            positions: row.toString(2).padStart(3, "0"),
            name: `m${i}`,
          }));
          const isPossible = (some: readonly Sample[]) =>
            allRules.get(3)!.some((rule) =>
              some.every((read) => {
                const row = plainRow(rule, read.address, 3);
                return row !== undefined && agree(row, read.positions);
              }),
            );
          const got = infer(samples, { switches: 3 });
          expect(got.rules > 0).toBe(isPossible(samples));
          expect(got.conflicts.length > 0).toBe(!isPossible(samples));
          for (const conflict of got.conflicts) {
            const set = conflict.at.map((i) => samples[i]!);
            expect(conflict.names).toEqual(set.map((each) => each.name));
            expect(isPossible(set)).toBe(false);
            for (const each of set) expect(isPossible(set.filter((other) => other !== each))).toBe(true);
          }
          for (const each of samples)
            if (!isPossible(samples))
              expect(got.suspects.includes(each.name)).toBe(isPossible(samples.filter((other) => other !== each)));
        },
      ),
      { seed: 51, numRuns: 150 },
    );
  });
});
