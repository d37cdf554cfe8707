import { conductorSize } from "../../network/index.js";
import { deviceCeilingOf, fuseSizesAtMost } from "../../protection/index.js";
import { figureValue, spanOf } from "../../quantity/index.js";
import { type FullPolicy, type ModuleKind, textValue } from "../../record/index.js";
import type { ChannelLoad } from "../channel-load.js";
import { fitFuse } from "../fuse-fit.js";
import type { FuseChange, Rewire } from "../plan.js";

/** Sizes a circuit's wire may be changed to, thinnest first. Thicker ones do not fit a channel's terminals: common practice, no source. */
const GAUGES = ["18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG"] as const;

/** How the fuse of a circuit is made to suit a kind; `undefined`: it cannot be. */
export interface FuseFit {
  readonly change: FuseChange | undefined;
  readonly rewire: Rewire | undefined;
}

/** The thinnest standard wire, of this run's insulation and way, that a device of this rating may protect. */
function wireFor(policy: FullPolicy, on: ChannelLoad, ratedA: number): Rewire | undefined {
  const out = on.circuit.out;
  const present = out === undefined ? undefined : conductorSize(out, policy);
  if (out === undefined || present?.kind !== "known") return undefined;
  const { sectionMm2, resistanceOhm, ...run } = out;
  for (const gauge of GAUGES) {
    const thicker = { ...run, gauge };
    const size = conductorSize(thicker, policy);
    const ceiling = deviceCeilingOf(thicker, policy);
    if (size.kind !== "known" || size.value.areaMm2 <= present.value.areaMm2) continue;
    if (ceiling.kind === "known" && ceiling.value.maxA >= ratedA)
      return {
        circuit: on.circuit.id,
        fromGauge: out.gauge === undefined ? undefined : textValue(out.gauge),
        toGauge: gauge,
        toAreaMm2: size.value.areaMm2,
        because: "wire-under-fuse",
      };
  }
  return undefined;
}

/**
 * Does the fuse of this circuit suit the kind as it is, with another fuse, or with another fuse and a thicker wire? A wire is changed only where it is the one
 * thing that keeps the fuse which the channel and the loads allow, and the load needs, from being fitted; its length must be on record.
 */
export function fuseFitOf(
  policy: FullPolicy,
  kind: ModuleKind,
  on: ChannelLoad,
  mayRewire: boolean,
): FuseFit | undefined {
  const { change, obstacle } = fitFuse(policy, kind, on);
  if (obstacle === undefined) return { change, rewire: undefined };
  const foundA = on.circuit.fuse?.ratedA;
  if (!mayRewire || on.needA === undefined || foundA === undefined || kind.maxFuseA === undefined) return undefined;
  if (on.circuit.out?.lengthM === undefined) return undefined;
  let mostA = Math.min(spanOf(kind.maxFuseA, "rating").lo, figureValue(foundA));
  for (const load of on.loads)
    if (load.maxFuseA !== undefined) mostA = Math.min(mostA, spanOf(load.maxFuseA, "rating").lo);
  const toA = fuseSizesAtMost(mostA).at(-1) ?? 0;
  if (toA === 0 || toA < on.needA) return undefined;
  const rewire = wireFor(policy, on, toA);
  if (rewire === undefined) return undefined;
  return { change: { circuit: on.circuit.id, fromA: figureValue(foundA), toA, because: "fuse-over-channel" }, rewire };
}
