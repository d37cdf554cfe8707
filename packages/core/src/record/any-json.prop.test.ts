import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  danglingReferences,
  faultText,
  indexRecord,
  jsonSchemaOf,
  openRecord,
  readRecord,
  writeRecord,
} from "./index.js";

const demo: unknown = JSON.parse(
  readFileSync(new URL("../../../../fixtures/demo/marsh-wren.fusebook.json", import.meta.url), "utf8"),
);

const SEED = 20_070_611;
const JSON_RUNS = 8_000;
const MUTATION_RUNS = 10_000;
const TEXT_RUNS = 2_000;

type Path = (string | number)[];
const paths: Path[] = [];
const collect = (value: unknown, path: Path): void => {
  if (path.length > 0) paths.push(path);
  if (Array.isArray(value)) value.forEach((item, i) => void collect(item, [...path, i]));
  else if (typeof value === "object" && value !== null)
    for (const [name, item] of Object.entries(value)) collect(item, [...path, name]);
};

/** A part of the demo that is small enough to be copied 10,000 times, with every collection in it. */
const seedRecord = (): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(demo as Record<string, unknown>).map(([name, value]) => [
      name,
      Array.isArray(value) ? value.slice(0, name === "circuits" || name === "loads" ? 2 : 1) : value,
    ]),
  );
collect(seedRecord(), []);
const SEED_TEXT = JSON.stringify(seedRecord());

type Mutation = { at: number; how: "set" | "remove" | "rename" | "swap"; value: unknown; name: string };

const mutated = (mutations: readonly Mutation[]): unknown => {
  const document: unknown = JSON.parse(SEED_TEXT);
  for (const { at, how, value, name } of mutations) {
    const path = paths[at % paths.length] ?? [];
    let holder: unknown = document;
    for (const key of path.slice(0, -1))
      holder = typeof holder === "object" && holder !== null ? (holder as Record<string, unknown>)[key] : undefined;
    if (typeof holder !== "object" || holder === null) continue;
    const fields = holder as Record<string, unknown>;
    const key = String(path.at(-1));
    if (how === "remove" && !Array.isArray(fields)) delete fields[key];
    else if (how === "rename" && !Array.isArray(fields))
      Object.defineProperty(fields, name, { value: fields[key], enumerable: true, writable: true, configurable: true });
    else if (how === "swap") fields[key] = [fields[key]];
    else fields[key] = value;
  }
  return document;
};

const anyName = fc.oneof(fc.constantFrom("__proto__", "constructor", "toString", "id", "format", "value"), fc.string());
const anyValue = fc.oneof(
  fc.jsonValue({ maxDepth: 2 }),
  fc.constantFrom<unknown>(-1, 0, 0.5, 65, 1e308, -0, "", "m1", "fusebook/2", [], {}, null, {
    value: 1,
    basis: "measured",
  }),
);
const mutation: fc.Arbitrary<Mutation> = fc.record({
  at: fc.nat(),
  how: fc.constantFrom("set", "remove", "rename", "swap"),
  value: anyValue,
  name: anyName,
});

const ajv = new Ajv2020({ strict: false, validateFormats: false });
const validate = ajv.compile(jsonSchemaOf());

const FORM = /: wanted .+, got .+; .+ \[[a-z-]+\]$/s;

const hasProtoKey = (document: unknown): boolean => {
  let isThere = false;
  JSON.stringify(document, (key, value) => {
    if (key === "__proto__") isThere = true;
    return value;
  });
  return isThere;
};

/** Plain throws: an assertion library costs more than the work under test, 20,000 times over. */
const must = (isSo: boolean, what: () => string): void => {
  if (!isSo) throw new Error(what());
};

/** Read or refused with faults that say something; and what was read can be looked up, checked and written. True where it was read. */
const isJudged = (document: unknown): boolean => {
  const outcome = readRecord(document);
  if (outcome.kind === "refused") {
    must(outcome.faults.length > 0, () => "refused without a fault");
    for (const fault of outcome.faults) must(FORM.test(faultText(fault)), () => faultText(fault));
  } else {
    indexRecord(outcome.record);
    danglingReferences(outcome.record);
    writeRecord(outcome.record);
  }
  // A second reader of the published schema agrees, but for what only our reader bounds.
  const isBounded = outcome.kind === "refused" && outcome.faults.some((fault) => fault.code.startsWith("too-"));
  const isRead = outcome.kind === "read";
  // The schema library passes over a key named __proto__ in a map; such a document is not compared.
  must(
    isBounded || validate(document) === isRead || hasProtoKey(document),
    () => `we: ${isRead}, the validator: ${!isRead}`,
  );
  return isRead;
};

describe("any JSON whatsoever is refused or accepted, never a crash, and a general-purpose validator agrees", () => {
  it(`${JSON_RUNS} documents of any JSON`, () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), (document) => void isJudged(document)),
      {
        seed: SEED,
        numRuns: JSON_RUNS,
      },
    );
  });

  it(`${MUTATION_RUNS} mutations of a real record`, () => {
    let read = 0;
    fc.assert(
      fc.property(fc.array(mutation, { minLength: 1, maxLength: 4 }), (mutations) => {
        if (isJudged(mutated(mutations))) read += 1;
      }),
      { seed: SEED, numRuns: MUTATION_RUNS },
    );
    // Both answers must be tried, or the property says little.
    expect(read).toBeGreaterThan(MUTATION_RUNS / 20);
    expect(read).toBeLessThan((MUTATION_RUNS * 19) / 20);
  });

  it(`${TEXT_RUNS} texts cut, spliced and garbled`, () => {
    const text = writeRecord(seedRecord() as never);
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(40), fc.string(), fc.boolean(), (at, cut, put, isCutOff) => {
        const garbled = isCutOff ? text.slice(0, at) + put : text.slice(0, at) + put + text.slice(at + cut);
        const outcome = openRecord(garbled);
        if (outcome.kind === "refused")
          for (const fault of outcome.faults) must(FORM.test(faultText(fault)), () => faultText(fault));
      }),
      { seed: SEED, numRuns: TEXT_RUNS },
    );
  });
});

describe("what is written opens as the same record", () => {
  it("unknown fields, at any depth and of any name, survive reading and writing", () => {
    fc.assert(
      fc.property(
        fc.nat(),
        fc.dictionary(fc.oneof(anyName, fc.string()), fc.jsonValue({ maxDepth: 3 }), { maxKeys: 4 }),
        (at, unknown) => {
          const document = structuredClone(seedRecord());
          const objects = paths.filter((path) => path.every((key) => key !== "headings"));
          let holder: unknown = document;
          for (const key of objects[at % objects.length] ?? [])
            if (typeof holder === "object" && holder !== null) holder = (holder as Record<string, unknown>)[key];
          const target = (
            typeof holder === "object" && holder !== null && !Array.isArray(holder) ? holder : document
          ) as Record<string, unknown>;
          for (const [name, value] of Object.entries(unknown))
            if (!Object.hasOwn(target, `x${name}`)) target[`x${name}`] = value;
          if (!Object.hasOwn(target, "__proto__"))
            Object.defineProperty(target, "__proto__", {
              value: 1,
              enumerable: true,
              writable: true,
              configurable: true,
            });
          const outcome = readRecord(document);
          if (outcome.kind === "refused") return;
          const text = writeRecord(outcome.record);
          expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(document)));
          const again = openRecord(text);
          expect(again.kind === "read" ? writeRecord(again.record) : again.faults).toBe(text);
        },
      ),
      { seed: SEED, numRuns: 500 },
    );
  });

  it("gives one text for one content, whatever the order its fields were set in", () => {
    const shuffled = (value: unknown): unknown =>
      Array.isArray(value)
        ? value.map(shuffled)
        : typeof value === "object" && value !== null
          ? Object.fromEntries(
              Object.entries(value)
                .reverse()
                .map(([name, inner]) => [name, shuffled(inner)]),
            )
          : value;
    expect(writeRecord(shuffled(demo) as never)).toBe(writeRecord(demo as never));
  });
});
