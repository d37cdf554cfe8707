import type { UnitChoice } from "@fusebook/core/quantity";
import type { Circuit, CoachIndex, WireRun } from "@fusebook/core/record";
import type { WireLine } from "../book/book-view.js";
import type { Noted } from "../document/blocks.js";
import { feedsOf, fuseNumber } from "./names.js";
import { shownFigure, shownGauge } from "./shown-figure.js";

const circuitTitle = (index: CoachIndex, circuit: Circuit): string => {
  const module = circuit.module === undefined ? undefined : index.modules.get(circuit.module);
  return `${module === undefined ? "" : `${module.id} · `}${fuseNumber(circuit)} ${feedsOf(index, circuit)}`;
};

/** The list says once that a figure is marked; under a figure stands only what is not. */
const unlessMarked = (figure: Noted): Noted => (figure.under === "marked" ? { text: figure.text } : figure);

/** Every conductor on record: feeders and returns first, then each circuit's wires, out and back, and the tails of its loads. */
export function wiresOf(index: CoachIndex, units: UnitChoice): WireLine[] {
  const nodeName = (id: string | undefined) => (id === undefined ? "" : (index.nodes.get(id)?.name ?? id));
  const lineOf = (circuit: string, way: string, run: WireRun, ends: string): WireLine => ({
    circuit,
    way,
    size: unlessMarked(shownGauge(run.gauge, run.sectionMm2, units)),
    length: unlessMarked(shownFigure(run.lengthM, "length", units)),
    ends,
  });
  const cables = (index.record.cables ?? []).map(
    (cable): WireLine => ({
      circuit: cable.name ?? cable.id,
      way: cable.kind === undefined || cable.kind === "wire" ? "cable" : cable.kind,
      size:
        cable.gauge === undefined && cable.sectionMm2 === undefined && cable.resistanceOhm !== undefined
          ? shownFigure(cable.resistanceOhm, "resistance", units)
          : unlessMarked(shownGauge(cable.gauge, cable.sectionMm2, units)),
      length: unlessMarked(shownFigure(cable.lengthM, "length", units)),
      ends: `${nodeName(cable.from)} to ${nodeName(cable.to)}`,
    }),
  );
  const runs = (index.record.circuits ?? []).flatMap((circuit): WireLine[] => {
    const title = circuitTitle(index, circuit);
    const tails = (circuit.loads ?? []).flatMap((id) => {
      const load = index.loads.get(id);
      return load?.tail === undefined ? [] : [lineOf(title, "tail", load.tail, `splice to ${load.name}`)];
    });
    return [
      ...(circuit.out === undefined
        ? []
        : [
            lineOf(
              title,
              "out",
              circuit.out,
              circuit.out.node === undefined ? "fuse to load" : `${nodeName(circuit.out.node)} to load`,
            ),
          ]),
      ...(circuit.return === undefined
        ? []
        : [
            lineOf(
              title,
              "back",
              circuit.return,
              circuit.return.node === undefined ? "load to ?" : `load to ${nodeName(circuit.return.node)}`,
            ),
          ]),
      ...tails,
    ];
  });
  return [...cables, ...runs];
}
