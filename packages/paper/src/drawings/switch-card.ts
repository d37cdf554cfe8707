import type { Drawing } from "../document/blocks.js";
import { COPPER, INK, SHEET, SOFT } from "./look.js";
import type { Measure } from "./measure.js";
import { box, n, sheet, textAt, textIn } from "./svg.js";

export interface SwitchCard {
  /** "Module A, Saloon locker". */
  readonly title: string;
  /** "D8, address 3". */
  readonly subtitle: string;
  /** Where ON is, part upright as it is mounted; undefined where nobody looked. */
  readonly onIs: "up" | "down" | "left" | "right" | undefined;
  readonly switches: readonly CardSwitch[];
  /** What the setting gives: "Address 3", "Channels 1 to 4 may dim". */
  readonly gives: readonly string[];
}

export interface CardSwitch {
  readonly number: number;
  /** What is printed at the switch; its number where nothing else is known. */
  readonly printed: string | undefined;
  readonly position: "on" | "off" | "unknown";
  /** "address, counts 2 when ON". */
  readonly does: string;
}

const WIDTH_MM = 176;
const SLOT = { across: 8.4, along: 17, pitch: 12 };
const READ = 4.2;

/** The bank as it looks on the part, ON shown where it is, with what each switch does. */
export function switchCard(card: SwitchCard, measure: Measure): Drawing {
  const isUpright = card.onIs === undefined || card.onIs === "up" || card.onIs === "down";
  const count = card.switches.length;
  const bankW = isUpright ? count * SLOT.pitch + 6 : SLOT.along + 26;
  const bankH = isUpright ? SLOT.along + 18 : count * SLOT.pitch + 6;
  const top = 17;
  const legendX = Math.min(bankW + 10, WIDTH_MM - 74);
  const scale = bankW + 10 > legendX ? (legendX - 10) / bankW : 1;
  let out = textIn(0.5, 5.6, WIDTH_MM - 2, card.title, { sizeMm: 5, isStrong: true }, measure).svg;
  out += textIn(0.5, 11.6, WIDTH_MM - 2, card.subtitle, { sizeMm: 4, colour: SOFT }, measure).svg;
  out += `<g transform="translate(0.5 ${top}) scale(${n(scale)})">${isUpright ? uprightBank(card, bankW, bankH) : lyingBank(card, bankW, bankH)}</g>`;
  let y = top + 4;
  const legend = legendOf(card);
  const headMm = Math.max(...legend.map((item) => measure(item.head, true)), 0) * READ + 3;
  for (const item of legend) {
    out += textAt(legendX, y, item.head, { sizeMm: READ, isStrong: true });
    const said = textIn(legendX + headMm, y, WIDTH_MM - legendX - headMm - 1, item.text, { sizeMm: READ }, measure);
    out += said.svg;
    y += 1.15 * READ * said.lines + 1.6;
  }
  for (const gives of card.gives) {
    const said = textIn(
      legendX + 4,
      y + 1,
      WIDTH_MM - legendX - 5,
      gives,
      { sizeMm: READ, isStrong: true, colour: COPPER },
      measure,
    );
    out += box(legendX, y - 2.2, 1.2, 4.4 * said.lines, { fill: COPPER, stroke: "none" }) + said.svg;
    y += 1.15 * READ * said.lines + 2;
  }
  const height = Math.max(top + bankH * scale + 1, y) + 1;
  return { svg: sheet(WIDTH_MM, height, card.title, out), alt: altOf(card), widthMm: WIDTH_MM };
}

const POSITION_WORD = { on: "ON", off: "OFF", unknown: "not known" } as const;

function altOf(card: SwitchCard): string {
  const where = card.onIs === undefined ? "which way is ON is not known" : `ON is ${card.onIs}`;
  const each = card.switches.map((s) => `switch ${s.number} ${POSITION_WORD[s.position]}`).join(", ");
  return `${card.title}: bank of ${card.switches.length} switches, ${where}; ${each}.`;
}

/** Switches that do the same are said once. */
function legendOf(card: SwitchCard): { head: string; text: string }[] {
  const groups = new Map<string, number[]>();
  for (const s of card.switches) groups.set(s.does, [...(groups.get(s.does) ?? []), s.number]);
  return [...groups].map(([does, numbers]) => ({
    head: numbers.length === 1 ? `Switch ${numbers[0]}` : `Switches ${numbers.join(", ")}`,
    text: does,
  }));
}

function uprightBank(card: SwitchCard, w: number, h: number): string {
  const onUp = card.onIs !== "down";
  let out = box(0, 0, w, h, { fill: SHEET, widthMm: 0.7, r: 1.2 });
  const slotY = 9;
  out +=
    card.onIs === undefined
      ? textAt(3, 6.4, "ON: look on the part", { sizeMm: 3.4 })
      : onMark(3, onUp ? 6.6 : h - 2.4, onUp ? 0 : 180);
  card.switches.forEach((s, i) => {
    const x = 3 + i * SLOT.pitch + (SLOT.pitch - SLOT.across) / 2;
    out += slot(x, slotY, SLOT.across, SLOT.along, s.position, onUp ? "start" : "end", true);
    const label = { sizeMm: 4.4, isStrong: true, anchor: "middle" } as const;
    out += textAt(x + SLOT.across / 2, onUp ? h - 2.4 : 6.6, s.printed ?? String(s.number), label);
  });
  return out;
}

function lyingBank(card: SwitchCard, w: number, h: number): string {
  const onLeft = card.onIs === "left";
  let out = box(0, 0, w, h, { fill: SHEET, widthMm: 0.7, r: 1.2 });
  const slotX = onLeft ? 14 : 10;
  out += `<g transform="translate(${n(onLeft ? 3.4 : w - 3.4)} ${n(h / 2)}) rotate(-90)">${textAt(0, onLeft ? 1.4 : 0.4, "ON", { sizeMm: 3.8, isStrong: true, anchor: "middle" })}</g>`;
  out += arrow(onLeft ? 9 : w - 9.5, h / 2, onLeft ? 270 : 90);
  card.switches.forEach((s, i) => {
    const y = 3 + i * SLOT.pitch + (SLOT.pitch - SLOT.across) / 2;
    out += slot(slotX, y, SLOT.along, SLOT.across, s.position, onLeft ? "start" : "end", false);
    const x = onLeft ? slotX + SLOT.along + 4 : slotX - 4;
    out += textAt(x, y + SLOT.across / 2 + 1.6, s.printed ?? String(s.number), {
      sizeMm: 4.4,
      isStrong: true,
      anchor: "middle",
    });
  });
  return out;
}

/** A slot with its handle at one end; a position not known shows no handle but a question mark. */
function slot(
  x: number,
  y: number,
  w: number,
  h: number,
  position: CardSwitch["position"],
  onAt: "start" | "end",
  isUpright: boolean,
): string {
  if (position === "unknown")
    return (
      box(x, y, w, h, { dash: "1.2 0.9", widthMm: 0.4 }) +
      textAt(x + w / 2, y + h / 2 + 2.2, "?", { sizeMm: 6, isStrong: true, anchor: "middle" })
    );
  const isAtStart = (position === "on") === (onAt === "start");
  const handle = 0.5;
  const hx = isUpright || isAtStart ? x + 1 : x + w * handle;
  const hy = !isUpright || isAtStart ? y + 1 : y + h * handle;
  const hw = isUpright ? w - 2 : w * handle - 1;
  const hh = isUpright ? h * handle - 1 : h - 2;
  return (
    box(x, y, w, h, { widthMm: 0.4, fill: "#ffffff" }) + box(hx, hy, hw, hh, { fill: INK, stroke: INK, widthMm: 0.2 })
  );
}

const arrow = (x: number, y: number, turnDeg: number): string =>
  `<g transform="translate(${n(x)} ${n(y)}) rotate(${turnDeg})"><path d="M0 -2.2L1.9 1.6L-1.9 1.6Z" fill="${INK}"/></g>`;

const onMark = (x: number, y: number, turnDeg: number): string =>
  textAt(x, y, "ON", { sizeMm: 4.4, isStrong: true }) + arrow(x + 10, y - 1.6, turnDeg);
