import type { Block, Cell, ExpectedLine } from "../document/blocks.js";
import type { Measure } from "../drawings/measure.js";
import { switchCard } from "../drawings/switch-card.js";
import type { PacketView } from "./packet-view.js";

/** What to open on this coach, in order, and the reading that shows it is dead. */
export function isolationBlocks(view: PacketView): Block[] {
  const { isolation } = view;
  const blocks: Block[] = [
    { block: "heading", level: 1, text: "Make it dead", newPage: true },
    {
      block: "paragraph",
      text: "Open every source below, in this order. Then prove that the coach is dead with a meter that you have just tried on a live battery. Try the meter again afterwards.",
      manner: "lead",
    },
    {
      block: "table",
      columns: [
        { title: "" },
        { title: "Source", share: 3 },
        { title: "Open", share: 3 },
        { title: "Where", share: 3 },
        { title: "How", share: 4 },
      ],
      rows: isolation.supplies.map((s): Cell[] => [
        { tick: true },
        { text: s.supply, strong: true },
        s.open,
        s.where,
        s.how,
      ]),
      empty:
        "The record names no source. Find every source of this coach before any cover comes off: battery, charger, alternator, solar, generator, shore line.",
    },
  ];
  for (const note of isolation.notes) blocks.push({ block: "caution", text: note });
  blocks.push(
    { block: "heading", level: 2, text: "Dead test" },
    expectTable(
      isolation.deadTest,
      "No dead test could be worked out from the record. Measure from every feeder stud and module feed to battery negative: each must read 0 V.",
    ),
  );
  return blocks;
}

const expectTable = (lines: readonly ExpectedLine[], empty: string): Block => ({
  block: "table",
  columns: [
    { title: "Measure", share: 6 },
    { title: "Expected", align: "right" },
    { title: "Within", align: "right" },
    { title: "Read", share: 2, align: "right" },
  ],
  rows: lines.map((e): Cell[] => [e.what, { text: e.value, strong: true }, e.span, { field: e.unit }]),
  empty,
});

/** The steps in order, numbered through, each with its cautions, readings and way back; a bank is drawn at the step that sets it. */
export function stepBlocks(view: PacketView, measure: Measure): Block[] {
  const cards = view.switchCards.map((card) => switchCard(card, measure));
  const drawn = new Set<number>();
  let number = 0;
  const blocks: Block[] = [];
  for (const section of view.sections) {
    if (section.steps.length === 0) continue;
    if (number === 0) blocks.push({ block: "heading", level: 1, text: "Steps", newPage: true });
    blocks.push({ block: "heading", level: 2, text: section.title });
    for (const step of section.steps) {
      number += 1;
      const card = step.card === undefined ? undefined : cards[step.card];
      if (step.card !== undefined) drawn.add(step.card);
      blocks.push({
        block: "step",
        number,
        text: step.text,
        ...(step.detail === undefined ? {} : { detail: step.detail }),
        cautions: step.cautions,
        expect: step.expect,
        lamps: step.lamps,
        ...(step.rollBack === undefined ? {} : { rollBack: step.rollBack }),
        ...(card === undefined ? {} : { drawing: { ...card, widthMm: 150 } }),
      });
    }
  }
  const rest = cards.filter((_, i) => !drawn.has(i));
  if (rest.length > 0) {
    blocks.push({ block: "heading", level: 1, text: "Switch cards", newPage: true });
    for (const drawing of rest) blocks.push({ block: "drawing", drawing });
  }
  return blocks;
}

/** Old pin to new pin, where the kinds differ. */
export function pinMapBlocks(view: PacketView): Block[] {
  if (view.pinMaps.length === 0) return [];
  const blocks: Block[] = [{ block: "heading", level: 1, text: "Old pin to new pin", newPage: true }];
  for (const map of view.pinMaps) {
    blocks.push(
      { block: "heading", level: 2, text: map.title },
      {
        block: "table",
        columns: [
          { title: "" },
          { title: "Circuit", share: 4 },
          { title: "Old pin", share: 2 },
          { title: "New pin", share: 2 },
        ],
        rows: map.rows.map((r): Cell[] => [
          { tick: true },
          r.circuit,
          { text: r.from, strong: true },
          { text: r.to, strong: true },
        ]),
        empty: "The sheets of the two kinds name no pins. Mark every wire before it is unplugged.",
      },
    );
    if (map.note) blocks.push({ block: "paragraph", text: map.note, manner: "soft" });
  }
  return blocks;
}
