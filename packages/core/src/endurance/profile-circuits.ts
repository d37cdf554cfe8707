import { steadyOf } from "../dimming/index.js";
import { figureValue } from "../quantity/index.js";
import type { Circuit, CircuitId, CoachIndex, LoadProfile, ProfileItem } from "../record/index.js";
import { isDimmingChannel } from "./dimmed-channel.js";

/** For how much of a span a circuit is on, and at what duty. Its mean current is share times duty times what it draws when on. */
export interface CircuitUse {
  readonly shareRatio: number;
  readonly dutyRatio: number;
}

/** One span of a profile for one coach. */
export interface SpanUse {
  readonly name: string;
  readonly hours: number;
  readonly circuits: ReadonlyMap<CircuitId, CircuitUse>;
  readonly chargerOn: boolean;
  readonly engineOn: boolean;
}

const feeds = (index: CoachIndex, circuit: Circuit, item: ProfileItem): boolean =>
  (circuit.loads ?? []).some((id) => {
    const of = index.loads.get(id)?.class;
    return of !== undefined && (item.classes?.includes(of) ?? false);
  });

const isNamed = (circuit: Circuit, item: ProfileItem): boolean =>
  (item.circuits?.includes(circuit.id) ?? false) ||
  (item.loads ?? []).some((id) => circuit.loads?.includes(id) ?? false);

/** A lamp that must stay steady is not dimmed, and a duty below what the module can give is given as that. */
function dutyOf(index: CoachIndex, circuit: Circuit, asked: number): number {
  if (asked >= 1 || !isDimmingChannel(index, circuit)) return 1;
  const isSteady = (circuit.loads ?? []).some((id) => {
    const load = index.loads.get(id);
    return load === undefined || steadyOf(load).must !== "no";
  });
  if (isSteady) return 1;
  const module = index.modules.get(circuit.module!)!;
  const least = index.moduleKinds.get(module.kind!)?.minDutyRatio;
  return Math.min(1, Math.max(asked, least === undefined ? 0 : figureValue(least)));
}

/**
 * Which circuits are on in each span, for how much of it and at what duty? A circuit is on as the entry that names it says, the last one where several do;
 * else as the entry of its loads' classes that draws most. A duty counts only where the channel dims as the switches stand. A circuit of a class that no
 * entry names, and a load whose class is not known, is off. A detector is never off.
 */
export function spanUses(index: CoachIndex, profile: LoadProfile): SpanUse[] {
  return profile.spans.map((span, s) => {
    const circuits = new Map<CircuitId, CircuitUse>();
    for (const circuit of index.circuits.values()) {
      if (circuit.isSpare === true) continue;
      let use: CircuitUse | undefined;
      const useOf = (item: ProfileItem): CircuitUse => ({
        shareRatio: item.shareRatio ?? 1,
        dutyRatio: dutyOf(index, circuit, item.dutyRatio ?? 1),
      });
      for (const item of span.on)
        if (feeds(index, circuit, item)) {
          const found = useOf(item);
          if (use === undefined || found.shareRatio * found.dutyRatio > use.shareRatio * use.dutyRatio) use = found;
        }
      for (const item of span.on) if (isNamed(circuit, item)) use = useOf(item);
      const hasDetector = (circuit.loads ?? []).some((id) => index.loads.get(id)?.class === "detector");
      if (hasDetector) use = { shareRatio: 1, dutyRatio: 1 };
      if (use !== undefined && use.shareRatio > 0 && use.dutyRatio > 0) circuits.set(circuit.id, use);
    }
    return {
      name: span.name ?? `span ${s + 1}`,
      hours: span.hours,
      circuits,
      chargerOn: span.chargerOn === true,
      engineOn: span.engineOn === true,
    };
  });
}

/** The duty of every circuit that is on, for a state: a dimmed filament draws more in its pulse. */
export const dutiesOf = (use: SpanUse): ReadonlyMap<CircuitId, number> =>
  new Map([...use.circuits].map(([id, { dutyRatio }]) => [id, dutyRatio]));
