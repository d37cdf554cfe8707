import type { Block, Cell, Drawing } from "../document/blocks.js";
import type { Measure } from "../drawings/measure.js";
import { switchCard } from "../drawings/switch-card.js";
import { DO_NOT_ENERGISE, type PacketView, type StepSection, type StepView } from "./packet-view.js";

/** Sections that begin a page of their own: what comes before them must be finished. */
const NEW_PAGE: ReadonlySet<StepSection["code"]> = new Set(["prepare", "isolate", "exchange", "energise"]);

/** The steps in order, numbered through, each with its cautions, readings and way back; a bank is drawn at the step that sets it. */
export function stepBlocks(view: PacketView, measure: Measure): Block[] {
  const cards = view.switchCards.map((card) => switchCard(card, measure));
  const drawn = new Set<number>();
  let number = 0;
  const blocks: Block[] = [];
  for (const section of view.sections) {
    if (section.steps.length === 0) continue;
    blocks.push({ block: "heading", level: 1, text: section.title, newPage: NEW_PAGE.has(section.code) });
    if (section.code === "isolate") blocks.push(...isolationBlocks(view));
    if (section.code === "energise") blocks.push(...stopBlocks(view));
    for (const step of section.steps) {
      number += 1;
      const card = step.card === undefined ? undefined : cards[step.card];
      if (step.card !== undefined) drawn.add(step.card);
      blocks.push(stepBlock(step, number, card));
    }
  }
  const rest = cards.filter((_, i) => !drawn.has(i));
  if (rest.length > 0) {
    blocks.push({ block: "heading", level: 1, text: "Switch cards", newPage: true });
    for (const drawing of rest) blocks.push({ block: "drawing", drawing });
  }
  return blocks;
}

/** What can make this coach live, at a glance; the ticks stand at the steps. */
const isolationBlocks = (view: PacketView): Block[] => [
  {
    block: "table",
    columns: [
      { title: "Open in this order", share: 3 },
      { title: "By", share: 3 },
      { title: "Where", share: 2.4 },
      { title: "How", share: 4 },
    ],
    rows: view.isolation.map((s): Cell[] => [{ text: s.supply, strong: true }, s.open, s.where, s.how]),
    empty:
      "The record names no source. Find every source of this coach before any cover comes off: battery, charger, alternator, solar, generator, shore line.",
  },
];

/** What forbids power, said where power is about to come back. */
const stopBlocks = (view: PacketView): Block[] =>
  view.open
    .filter((line) => line.weight === DO_NOT_ENERGISE)
    .map((line) => ({
      block: "caution",
      text: `${DO_NOT_ENERGISE} before this is put right. ${line.what}. ${line.next}.`,
    }));

function stepBlock(step: StepView, number: number, card: Drawing | undefined): Block {
  return {
    block: "step",
    number,
    text: step.text,
    ...(step.detail === undefined ? {} : { detail: step.detail }),
    cautions: step.cautions,
    expect: step.expect,
    lamps: step.lamps,
    ...(step.rollBack === undefined ? {} : { rollBack: step.rollBack }),
    ...(card === undefined ? {} : { drawing: { ...card, widthMm: 150 } }),
  };
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
