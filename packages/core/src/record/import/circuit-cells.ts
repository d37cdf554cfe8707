import { type Dimension, type Figure, type ReadGauge, readGauge } from "../../quantity/index.js";
import type { NotedText } from "../schema/figure.js";
import type { Circuit, WireRun } from "../schema/types.js";
import { mergeFigure, mergeText, withNote } from "./draft.js";
import type { SurveyField } from "./fields.js";
import { figureOf, readFigureCell, withPoint } from "./figure-cell.js";
import { splitFuse, takeFuseType } from "./fuse-cell.js";
import { keepUnread, type Run, takeCell } from "./run.js";
import type { RowCell, SurveyRow } from "./survey-rows.js";
import { isNo, slug } from "./words.js";

const KNOWN_BETTER = "the record knows it on a better basis, which stands";

/** Reads one figure of a row and lays it over the record's. Undefined: nothing is set, the cell is kept where it had something to say. */
export function figureFrom(
  run: Run,
  row: SurveyRow,
  item: RowCell | undefined,
  dimension: Dimension,
  old: Figure | undefined,
  scale?: { readonly by: number; readonly note: string },
): Figure | undefined {
  if (item === undefined) return undefined;
  const read = readFigureCell(item.text, dimension, item.column, run.reading);
  if (read.kind === "unread") {
    keepUnread(run, row, item, read.code, read.why);
    return undefined;
  }
  if (read.basis === "assumed" && read.note !== undefined)
    run.told.push({ place: item.cell.place, code: "unit-taken", message: `${row.key}: ${read.note}` });
  const merged = mergeFigure(old, figureOf(read, scale));
  if (merged.kind === "kept") {
    keepUnread(run, row, item, "known-better", KNOWN_BETTER);
    run.told.push({
      place: item.cell.place,
      code: "record-knows-better",
      message: `${row.key}, ${item.column.heading}: ${KNOWN_BETTER}`,
    });
  }
  return merged.kind === "set" ? merged.value : undefined;
}

const sameGauge = (a: string, b: string): boolean => {
  const [left, right] = [readGauge(a, { bareIs: "awg" }), readGauge(b, { bareIs: "awg" })];
  if (left.kind === "unread" || right.kind === "unread") return a === b;
  return left.system === right.system && left.size === right.size && left.isSystemStated === right.isSystemStated;
};

const gaugeText = (read: ReadGauge): string =>
  read.system === "mm2" ? `${read.size} mm²` : `${read.size} ${read.isSystemStated ? read.system.toUpperCase() : "ga"}`;

const gaugeFrom = (
  run: Run,
  row: SurveyRow,
  item: RowCell | undefined,
  old: NotedText | undefined,
): NotedText | undefined => {
  if (item === undefined) return undefined;
  const unit = item.column.unit;
  const text = withPoint(item.text, run.reading.decimalSign);
  const bareIs = unit === "mm²" ? "mm2" : unit === "SAE" ? "sae" : unit === "AWG" ? "awg" : run.areaBasis;
  const read = readGauge(text, { bareIs });
  if (read.kind === "unread") {
    keepUnread(run, row, item, read.code, read.why);
    return undefined;
  }
  const isBare = /^[~?\s\d.,/]+$/.test(text);
  const written = isBare && (unit === "mm²" || unit === "SAE" || unit === "AWG") ? `${read.size} ${unit}` : text;
  const basis = read.basis ?? item.column.basis;
  const next: NotedText =
    basis === undefined
      ? written
      : { value: isBare ? written.replace(/[~?\s]+$|^[~?\s]+/g, "") : gaugeText(read), basis };
  const merged = mergeText(old, next, sameGauge);
  if (merged.kind === "kept") keepUnread(run, row, item, "known-better", KNOWN_BETTER);
  return merged.kind === "set" ? merged.value : undefined;
};

const wireFrom = (run: Run, row: SurveyRow, circuit: Circuit): Pick<Circuit, "out" | "return"> => {
  const take = (field: SurveyField) => takeCell(run, row, row.cells.get(field));
  const out: Partial<WireRun> = {};
  const back: Partial<WireRun> = {};
  const gauge = gaugeFrom(run, row, take("gauge"), circuit.out?.gauge);
  if (gauge !== undefined) out.gauge = gauge;
  const returnGauge = gaugeFrom(run, row, take("returnGauge"), circuit.return?.gauge);
  if (returnGauge !== undefined) back.gauge = returnGauge;
  const loop = take("loopLength");
  const halved = { by: 2, note: loop === undefined ? "" : `half of "${loop.text}", out and back` };
  const length = take("length");
  const lengthM =
    length === undefined
      ? figureFrom(run, row, loop, "length", circuit.out?.lengthM, halved)
      : figureFrom(run, row, length, "length", circuit.out?.lengthM);
  if (lengthM !== undefined) out.lengthM = lengthM;
  if (length !== undefined && loop !== undefined)
    keepUnread(run, row, loop, "two-lengths", "the row tells a one-way length too, which stands");
  const returnLength = take("returnLength");
  if (returnLength !== undefined) {
    const returnLengthM = figureFrom(run, row, returnLength, "length", circuit.return?.lengthM);
    if (returnLengthM !== undefined) back.lengthM = returnLengthM;
  } else if (length === undefined && loop !== undefined && lengthM !== undefined) back.lengthM = lengthM;
  const insulation = take("insulation");
  if (insulation !== undefined) {
    const unit = /f\b/i.test(insulation.column.unit ?? "") ? "F" : "C";
    const insulationC = figureFrom(
      run,
      row,
      { ...insulation, column: { ...insulation.column, unit } },
      "temperature",
      circuit.out?.insulationC,
    );
    if (insulationC !== undefined) out.insulationC = insulationC;
  }
  const bundle = take("bundle");
  if (bundle !== undefined) {
    if (/^[1-9]\d{0,2}$/.test(bundle.text)) {
      const merged = mergeFigure(circuit.out?.bundleCount, Number(bundle.text));
      if (merged.kind === "set") out.bundleCount = merged.value;
      if (merged.kind === "kept") keepUnread(run, row, bundle, "known-better", KNOWN_BETTER);
    } else keepUnread(run, row, bundle, "bundle", "a bundle is a whole number of conductors");
  }
  const zone = take("zone");
  if (zone !== undefined) out.zone = zone.text.toLowerCase();
  const ground = take("return");
  if (ground !== undefined) {
    const node = run.draft.base.nodes?.find(
      (item) => item.id === ground.text || slug(item.id) === slug(ground.text) || slug(item.name) === slug(ground.text),
    );
    if (node !== undefined) back.node = node.id;
    else
      keepUnread(
        run,
        row,
        ground,
        "no-such-node",
        `no node "${ground.text}" in the record: add the ground or stud, then import again`,
      );
  }
  return {
    ...(Object.keys(out).length > 0 ? { out: { ...circuit.out, ...out } } : {}),
    ...(Object.keys(back).length > 0 ? { return: { ...circuit.return, ...back } } : {}),
  };
};

const fuseFrom = (run: Run, row: SurveyRow, circuit: Circuit): Circuit["fuse"] => {
  let fuse = circuit.fuse;
  const typeCell = takeCell(run, row, row.cells.get("fuseType"));
  const stated = typeCell === undefined ? undefined : takeFuseType(typeCell.text);
  if (typeCell !== undefined && stated !== undefined) {
    if (stated.type !== undefined) fuse = { ...fuse, type: stated.type };
    if (stated.rest !== "")
      fuse = { ...fuse, notes: withNote(fuse?.notes, stated.type === undefined ? stated.rest : typeCell.text) };
  }
  const item = takeCell(run, row, row.cells.get("fuseA"));
  if (item === undefined) return fuse;
  const { type, rest } = takeFuseType(item.text);
  if (type !== undefined && stated?.type === undefined) fuse = { ...fuse, type };
  else if (type !== undefined && type !== stated?.type) fuse = { ...fuse, notes: withNote(fuse?.notes, item.text) };
  if (rest === "") return fuse;
  const whole = readFigureCell(rest, "current", item.column, run.reading);
  const split = whole.kind === "figure" ? { amps: rest, rest: "" } : splitFuse(rest);
  const ratedA = figureFrom(run, row, { ...item, text: split.amps }, "current", fuse?.ratedA);
  if (ratedA !== undefined) fuse = { ...fuse, ratedA };
  const isRead = readFigureCell(split.amps, "current", item.column, run.reading).kind === "figure";
  if (split.rest !== "" && isRead) fuse = { ...fuse, notes: withNote(fuse?.notes, split.rest) };
  return fuse;
};

const NO_LABEL = /^(?:none|no label|unlabell?ed|not labell?ed|blank|[-–—]+)$/i;

const verifiedFrom = (item: RowCell): Circuit["verified"] | undefined => {
  if (isNo(item.text) || /^(?:not|un)/i.test(item.text)) return undefined;
  const at = /\b\d{4}-\d{2}-\d{2}\b/.exec(item.text)?.[0];
  return { what: item.text, ...(at === undefined ? {} : { at }) };
};

/** Lays the circuit's own cells of a row over the circuit: label, fuse, wires, what was verified, notes. */
export function applyCircuitCells(run: Run, row: SurveyRow, circuit: Circuit): Circuit {
  let next: Circuit = { ...circuit, ...wireFrom(run, row, circuit) };
  const fuse = fuseFrom(run, row, circuit);
  if (fuse !== undefined) next = { ...next, fuse };
  const label = row.cells.get("label");
  if (label !== undefined && label.cell.unread === undefined && NO_LABEL.test(label.text))
    next = { ...next, label: "" };
  else {
    const written = takeCell(run, row, label);
    if (written !== undefined) next = { ...next, label: written.text };
  }
  const verified = takeCell(run, row, row.cells.get("verified"));
  if (verified !== undefined) {
    const said = verifiedFrom(verified);
    if (said === undefined)
      next = { ...next, notes: withNote(next.notes, `${verified.column.heading}: ${verified.text}`) };
    else next = { ...next, verified: { ...next.verified, ...said } };
  }
  for (const field of row.place.left) {
    const item = row.cells.get(field);
    // The fuse block's name is held by the node, where the record has it.
    const isNode = field === "module" && next.fusePosition?.node !== undefined;
    if (item !== undefined && !isNode)
      next = { ...next, notes: withNote(next.notes, `${item.column.heading}: ${item.text}`) };
  }
  for (const item of row.shared) {
    const said = takeCell(run, row, item);
    if (said === undefined) continue;
    if (said.column.field !== "notes") {
      const why =
        said.column.field === "unread" ? "its column is not mapped to a field" : "another column has its field";
      keepUnread(run, row, said, "unmapped", why);
      continue;
    }
    const isPlainNotes = /note|remark|comment|memo/i.test(said.column.heading);
    next = { ...next, notes: withNote(next.notes, isPlainNotes ? said.text : `${said.column.heading}: ${said.text}`) };
  }
  return next;
}
