import type { Assumed } from "../network/index.js";
import { known, type Outcome } from "../quantity/index.js";
import type { CoachIndex, LoadProfile } from "../record/index.js";
import type { BankGroup } from "./bank-groups.js";
import type { EnduranceAssumed } from "./battery-figures.js";
import { DrawBounds } from "./draw-bounds.js";
import { bendsOf, DrawTable } from "./draw-table.js";
import { MeanNetwork } from "./mean-network.js";
import { type SpanUse, spanUses } from "./profile-circuits.js";
import { RestVolts } from "./rest-volts.js";
import { type StandingDraw, standingDraws } from "./standing.js";

/** A profile laid over a coach: every span of it as a network, with its table of currents and their bounds. */
export interface PreparedProfile {
  readonly index: CoachIndex;
  readonly profile: LoadProfile;
  readonly groups: readonly BankGroup[];
  readonly uses: readonly SpanUse[];
  readonly tables: readonly DrawTable[];
  readonly bounds: readonly DrawBounds[];
  readonly bends: readonly number[];
  /** By span: what stands outside the network. */
  readonly standing: readonly (readonly StandingDraw[])[];
  readonly assumed: readonly EnduranceAssumed[];
  readonly leftOut: readonly string[];
  readonly dimmed: ReadonlyMap<string, number>;
}

const asEndurance = (one: Assumed): EnduranceAssumed => ({
  path: one.path,
  value: one.value,
  source: one.source,
  why: "the network's stand-in",
});

/** Two spans that switch the same need one table. */
const keyOf = (use: SpanUse): string =>
  JSON.stringify([
    use.chargerOn,
    use.engineOn,
    [...use.circuits].map(([id, { shareRatio, dutyRatio }]) => [id, shareRatio, dutyRatio]),
  ]);

export function prepareProfile(
  index: CoachIndex,
  profile: LoadProfile,
  groups: readonly BankGroup[],
): Outcome<PreparedProfile> {
  const uses = spanUses(index, profile);
  const rest = new RestVolts(index);
  const bends = bendsOf([...index.supplies.values()].map((supply) => supply.openCircuitCurve));
  const made = new Map<string, { table: DrawTable; bounds: DrawBounds }>();
  const tables: DrawTable[] = [];
  const bounds: DrawBounds[] = [];
  const assumed: EnduranceAssumed[] = [];
  const leftOut = new Set<string>();
  const dimmed = new Map<string, number>();
  const standing = uses.map((use) => standingDraws(index, (id) => use.circuits.get(id)?.shareRatio ?? 0));
  for (const use of uses) {
    const key = keyOf(use);
    let one = made.get(key);
    if (one === undefined) {
      const network = MeanNetwork.of(index, use, groups, rest);
      if (network.kind !== "known") return network;
      one = {
        table: new DrawTable(network.value, bends),
        bounds: new DrawBounds(network.value, use, groups, rest, bends),
      };
      made.set(key, one);
      for (const path of network.value.coach.leftOut) leftOut.add(path);
      assumed.push(
        ...network.value.coach.assumed.filter((each) => !each.path.endsWith(".openCircuitV")).map(asEndurance),
      );
    }
    tables.push(one.table);
    bounds.push(one.bounds);
    for (const [id, { dutyRatio }] of use.circuits)
      if (dutyRatio < 1) dimmed.set(id, Math.min(dutyRatio, dimmed.get(id) ?? 1));
  }
  for (const draw of standing.flat())
    if (draw.basis === undefined)
      assumed.push({
        path: draw.path,
        value: draw.currentA,
        source: draw.source,
        why: `what ${draw.name} draws with everything off`,
      });
  return known({
    index,
    profile,
    groups,
    uses,
    tables,
    bounds,
    bends,
    standing,
    assumed,
    leftOut: [...leftOut],
    dimmed,
  });
}
