import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type CoachRecord, danglingReferences, referencesOf } from "./index.js";
import { RECORD_SHAPE, type Shape } from "./schema/shape.js";

const demo = JSON.parse(
  readFileSync(new URL("../../../../fixtures/demo/marsh-wren.fusebook.json", import.meta.url), "utf8"),
) as CoachRecord;

const record = (fields: Record<string, unknown>): CoachRecord =>
  ({ format: "fusebook/1", id: "x", coach: { name: "x" }, ...fields }) as unknown as CoachRecord;

describe("references of a record", () => {
  it("finds nothing dangling in the demo, and many references", () => {
    expect(danglingReferences(demo)).toEqual([]);
    expect(referencesOf(demo).length).toBeGreaterThan(300);
  });

  it("names each reference that leads nowhere by the path of its field", () => {
    const faults = danglingReferences(
      record({
        modules: [{ id: "m1", kind: "k9", place: "p9", feedNode: "n9" }],
        cables: [{ id: "w1", from: "n1", to: "n2", protection: {}, disconnect: { name: "d", place: "p8" } }],
        circuits: [
          { id: "c1", module: "m2", loads: ["l1", "l2"], out: { place: "p7" }, return: { node: "n7" }, photos: ["a1"] },
        ],
        loads: [{ id: "l1", name: "lamp", tail: { node: "n6" } }],
        controls: [{ id: "b1", name: "button", does: [{ action: "switch", circuits: ["c1", "c9"] }] }],
        readings: [
          {
            id: "r1",
            kind: "voltage",
            point: { at: "c1" },
            against: { at: "x9" },
            state: { on: ["c8"], dutyRatio: { c1: 1, c7: 0.5 } },
          },
        ],
        network: { trunk: [{ at: "m1" }, { at: "b9" }], terminators: [{ at: "m1" }] },
        jobs: [
          {
            id: "j1",
            title: "t",
            wishes: [{ load: "l9", wish: "none" }],
            constraints: { lockedModules: ["m9"], forbiddenKinds: ["k8"] },
          },
        ],
      }),
    );
    expect(faults.every((fault) => fault.code === "dangling")).toBe(true);
    expect(faults.map(({ path, id, target }) => `${path} ${id} ${target}`)).toEqual([
      "cables[0].from n1 nodes",
      "cables[0].to n2 nodes",
      "cables[0].disconnect.place p8 places",
      "modules[0].kind k9 moduleKinds",
      "modules[0].place p9 places",
      "modules[0].feedNode n9 nodes",
      "circuits[0].module m2 modules",
      "circuits[0].out.place p7 places",
      "circuits[0].return.node n7 nodes",
      "circuits[0].loads[1] l2 loads",
      "circuits[0].photos[0] a1 attachments",
      "loads[0].tail.node n6 nodes",
      "controls[0].does[0].circuits[1] c9 circuits",
      "readings[0].against.at x9 any",
      "readings[0].state.on[0] c8 circuits",
      "readings[0].state.dutyRatio.c7 c7 circuits",
      "jobs[0].wishes[0].load l9 loads",
      "jobs[0].constraints.lockedModules[0] m9 modules",
      "jobs[0].constraints.forbiddenKinds[0] k8 moduleKinds",
    ]);
  });

  it("names the second thing with the same id in one collection, and not the same id in two collections", () => {
    const faults = danglingReferences(
      record({
        loads: [
          { id: "a", name: "1" },
          { id: "b", name: "2" },
          { id: "a", name: "3" },
        ],
        nodes: [{ id: "a", kind: "stud", name: "s" }],
      }),
    );
    expect(faults).toEqual([{ path: "loads[2].id", id: "a", target: "loads", code: "duplicate-id" }]);
  });

  it("looks a dim block up in the kind it belongs to", () => {
    const kind = (id: string, block: string) => ({
      id,
      name: id,
      channels: 8,
      dimBlocks: [{ id: block, channels: [1] }],
      bank: { switches: 1, options: [{ enables: ["b1"], set: [] }] },
    });
    const chosen = { modules: [{ module: "m1", kind: "k2", enables: ["b1", "b2"] }] };
    const faults = danglingReferences(
      record({
        moduleKinds: [kind("k1", "b1"), kind("k2", "b2")],
        modules: [{ id: "m1" }],
        jobs: [{ id: "j1", title: "t", chosen }],
      }),
    );
    expect(faults.map((fault) => fault.path)).toEqual([
      "moduleKinds[1].bank.options[0].enables[0]",
      "jobs[0].chosen.modules[0].enables[0]",
    ]);
  });

  it("knows every field of the schema that holds an id: a new one is found without being listed", () => {
    const found: string[] = [];
    const walk = (shape: Shape, path: string): void => {
      if (shape.idOf !== undefined) found.push(`${path} -> ${shape.idOf}`);
      if (shape.item !== undefined) walk(shape.item, `${path}[]`);
      for (const [name, inner] of shape.fields ?? []) walk(inner, path === "" ? name : `${path}.${name}`);
    };
    walk(RECORD_SHAPE, "");
    expect(found).toContain("circuits[].return.node -> nodes");
    expect(found).toContain("jobs[].chosen.fuses[].circuit -> circuits");
    expect(found).toContain("moduleKinds[].fitsInPlaceOf[] -> moduleKinds");
    expect(found).toContain("readings[].state.on[] -> circuits");
    const own = found.filter((line) => /^[a-zA-Z]+\[\]\.id ->/.test(line));
    expect(own).toHaveLength(12);
  });
});
