import type { Block, Cell } from "../document/blocks.js";
import { DO_NOT_ENERGISE, type PacketView } from "./packet-view.js";

/** First page: who asked for what, in their words, what it costs, and the line that says yes. */
export function jobBlocks(view: PacketView): Block[] {
  const { job, head, estimate } = view;
  const total = estimate.totals.at(-1);
  const blocks: Block[] = [
    { block: "heading", level: 1, text: "Job sheet" },
    { block: "paragraph", text: job.title, manner: "lead" },
    {
      block: "facts",
      labelMm: 34,
      pairs: [
        ["Coach", { text: head.coach, strong: true }],
        ["Date", head.date],
        ["Papers", head.id],
        ...(total === undefined ? [] : [["Estimate", { text: total[1], strong: true, under: total[0] }] as const]),
      ],
    },
  ];
  if (job.ownerWords)
    blocks.push(
      { block: "heading", level: 2, text: "The owner's words" },
      { block: "paragraph", text: job.ownerWords, manner: "quote" },
    );
  if (job.complaint)
    blocks.push({ block: "heading", level: 2, text: "What is asked" }, { block: "paragraph", text: job.complaint });
  blocks.push({ block: "heading", level: 2, text: "What is proposed" });
  for (const statement of view.proposed.statement) blocks.push({ block: "paragraph", text: statement });
  const stops = view.open.filter((line) => line.weight === DO_NOT_ENERGISE).length;
  if (stops > 0)
    blocks.push({
      block: "caution",
      text: `${stops === 1 ? "One thing" : `${stops} things`} on this coach must be put right before power comes back; see “Still open”.`,
    });
  blocks.push(
    { block: "heading", level: 2, text: "Approval" },
    { block: "paragraph", text: "I have read what is proposed and the estimate, and ask for the work to be done." },
    { block: "fields", fields: ["Owner, signature", "Date", "Most to be spent without asking again"] },
  );
  if (view.notices.length > 0)
    blocks.push({ block: "heading", level: 2, text: "Limits of this work" }, { block: "list", items: view.notices });
  return blocks;
}

/** What changes, what it gives, what it does not give and why, what it costs and what to bring. */
export function proposalBlocks(view: PacketView): Block[] {
  const { proposed, estimate } = view;
  const blocks: Block[] = [
    { block: "heading", level: 1, text: "Proposal and estimate", newPage: true },
    {
      block: "table",
      columns: [
        { title: "Module", share: 3 },
        { title: "Fitted now", share: 2 },
        { title: "After", share: 2 },
        { title: "What is done", share: 5 },
      ],
      rows: proposed.modules.map((m) => [{ text: m.module, strong: true }, m.from, m.to, m.does]),
      empty: "No module is touched.",
    },
  ];
  if (proposed.dims.length > 0)
    blocks.push(
      { block: "heading", level: 2, text: "These lights will dim" },
      { block: "paragraph", text: `${proposed.dims.join(", ")}.` },
    );
  if (proposed.unmet.length > 0)
    blocks.push(
      { block: "heading", level: 2, text: "Not met, and why" },
      {
        block: "table",
        columns: [
          { title: "Asked for", share: 2 },
          { title: "What stops it", share: 5 },
        ],
        rows: proposed.unmet.map((u) => [
          { text: u.wish, strong: true },
          u.because.map((because) => `${because}.`).join("\n"),
        ]),
        empty: "",
      },
    );
  blocks.push(...wireChangeBlocks(view), ...fuseChangeBlocks(view));
  blocks.push(
    { block: "heading", level: 2, text: "Estimate" },
    {
      block: "table",
      columns: [
        { title: "What", share: 1 },
        { title: "Quantity", align: "right" },
        { title: "Each", align: "right" },
        { title: "Total", align: "right" },
      ],
      rows: [
        ...estimate.lines.map((l): Cell[] => [l.what, l.quantity, l.each, l.total]),
        ...estimate.totals.map(([what, amount]): Cell[] => [
          { text: what, strong: true },
          "",
          "",
          { text: amount, strong: true },
        ]),
      ],
      empty: "Nothing is priced.",
    },
  );
  for (const note of estimate.notes) blocks.push({ block: "paragraph", text: note, manner: "soft" });
  blocks.push(
    { block: "heading", level: 2, text: "Parts to bring" },
    {
      block: "table",
      columns: [
        { title: "" },
        { title: "Part", share: 3 },
        { title: "Quantity", align: "right" },
        { title: "Note", share: 3 },
      ],
      rows: view.parts.map((p): Cell[] => [{ tick: true }, p.part, p.quantity, p.note]),
      empty: "No parts.",
    },
  );
  if (view.tools.length > 0)
    blocks.push({ block: "heading", level: 2, text: "Tools" }, { block: "list", items: view.tools });
  return blocks;
}

function fuseChangeBlocks(view: PacketView): Block[] {
  if (view.fuseChanges.length === 0) return [];
  return [
    { block: "heading", level: 2, text: "Fuses to change" },
    {
      block: "table",
      columns: [{ title: "Circuit", share: 3 }, { title: "From" }, { title: "To" }, { title: "Why", share: 5 }],
      rows: view.fuseChanges.map((f) => [f.circuit, f.from, f.to, f.because]),
      empty: "",
    },
  ];
}

function wireChangeBlocks(view: PacketView): Block[] {
  if (view.wireChanges.length === 0) return [];
  return [
    { block: "heading", level: 2, text: "Wires to move" },
    {
      block: "table",
      columns: [
        { title: "What it feeds", share: 3 },
        { title: "From", share: 4 },
        { title: "To", share: 4 },
        { title: "Fuse with it" },
      ],
      rows: view.wireChanges.map((wire): Cell[] => [{ text: wire.what, strong: true }, wire.from, wire.to, wire.fuse]),
      empty: "",
    },
  ];
}
