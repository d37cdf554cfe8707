import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type DiagramLink, type DiagramNode, layDiagram } from "./diagram-layout.js";

const link = (from: string, to: string): DiagramLink => ({ from, to, text: "", fuse: "", disconnect: "" });

/** A coach with a trunk of bars, branches, modules and further sources anywhere, and a few links that close rings. */
const coach = fc
  .record({
    parents: fc.array(fc.nat(), { minLength: 1, maxLength: 12 }),
    ends: fc.array(fc.nat(), { maxLength: 20 }),
    sources: fc.array(fc.nat(), { maxLength: 5 }),
    rings: fc.array(fc.tuple(fc.nat(), fc.nat()), { maxLength: 3 }),
  })
  .map(({ parents, ends, sources, rings }) => {
    const bars = parents.map((_, i) => `b${i}`);
    const at = (pick: number) => bars[pick % bars.length]!;
    const node = (id: string, kind: DiagramNode["kind"]): DiagramNode => ({ id, kind, name: id, detail: "" });
    return {
      nodes: [
        node("battery", "battery"),
        ...bars.map((id) => node(id, "bar")),
        ...ends.map((_, i) => node(`e${i}`, "end")),
        ...sources.map((_, i) => node(`s${i}`, "source")),
      ],
      links: [
        link("battery", "b0"),
        ...parents.slice(1).map((pick, i) => link(bars[pick % (i + 1)]!, bars[i + 1]!)),
        ...ends.map((pick, i) => link(at(pick), `e${i}`)),
        ...sources.map((pick, i) => link(`s${i}`, at(pick))),
        ...rings.map(([a, b]) => link(at(a), at(b))),
      ],
    };
  });

describe("the single-line diagram's layout", () => {
  it("gives every conductor its own lane, lets none run through a bar, and says every conductor once: drawn or in words", () => {
    fc.assert(
      fc.property(coach, ({ nodes, links }) => {
        const layout = layDiagram(nodes, links);
        expect(layout.links.length + layout.notDrawn.length).toBe(links.length);
        const isSource = (node: DiagramNode) => node.kind === "source" || node.kind === "battery";
        const layerOf = (node: DiagramNode) => layout.layerOf.get(node.id)!;
        const sideLanes = layout.links.filter(({ child }) => isSource(child)).map(({ lane }) => lane);
        expect(new Set(sideLanes).size).toBe(sideLanes.length);
        const rightLanes = layout.links
          .filter(({ parent, child }) => !isSource(child) && child.kind === "end" && !isSource(parent))
          .map(({ lane }) => lane);
        expect(new Set(rightLanes).size).toBe(rightLanes.length);
        for (const { lane, parent, child } of layout.links) {
          const [left, right] = isSource(child) ? [0, layerOf(parent)] : [layerOf(parent), layerOf(child)];
          for (const bar of nodes) {
            if (bar.kind !== "bar" || bar === parent || bar === child || !layout.layerOf.has(bar.id)) continue;
            const [first, last] = layout.spanOf.get(bar.id)!;
            const isInTheWay = layerOf(bar) > left && layerOf(bar) < right && first <= lane && lane <= last;
            expect(isInTheWay, `${parent.id} to ${child.id} through ${bar.id}`).toBe(false);
          }
        }
      }),
      { seed: 20260502, numRuns: 400 },
    );
  });
});
