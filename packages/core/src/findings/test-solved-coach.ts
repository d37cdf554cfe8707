/** Read with an instrument that is right to this, half a span either way. */
export const read = (value: number, plusMinus = 0) => ({ value, basis: "measured", plusMinus });

/** One circuit of the solved coach: what it draws at any volts, and its wires in ohm. */
export interface TestCircuit {
  readonly load: object;
  readonly outOhm?: object;
  readonly backOhm?: object;
}

/**
 * A coach that can be worked out by hand: 12 V without internal resistance, one feeder of `feederOhm` from battery to bar, one module of no resistance
 * on the bar, circuits `c1`, `c2` ... on its channels with loads `l1`, `l2` ..., returns straight to battery negative.
 */
export function solvedCoach(circuits: readonly TestCircuit[], more: Readonly<Record<string, object>> = {}) {
  const { kind, feeder, bar, battery, ...rest } = more;
  return {
    supplies: [
      {
        id: "s1",
        kind: "battery",
        name: "House",
        node: "bat",
        returnNode: "neg",
        openCircuitV: read(12),
        internalResistanceOhm: read(0),
        ...battery,
      },
    ],
    nodes: [
      { id: "bat", kind: "terminal", name: "Battery +", rail: "positive" },
      { id: "bus", kind: "busbar", name: "Bus", rail: "positive", ...bar },
      { id: "neg", kind: "terminal", name: "Battery -", rail: "return" },
    ],
    cables: [{ id: "k1", from: "bat", to: "bus", resistanceOhm: read(0.01), ...feeder }],
    moduleKinds: [
      { id: "R8", name: "R8", channels: 8, output: "relay", onResistanceOhm: read(0), quiescentA: read(0), ...kind },
    ],
    modules: [{ id: "m1", kind: "R8", feedNode: "bus", returnNode: "neg" }],
    circuits: circuits.map(({ outOhm = read(0.05), backOhm = read(0.03) }, i) => ({
      id: `c${i + 1}`,
      module: "m1",
      channel: i + 1,
      fuse: { resistanceOhm: read(0) },
      out: { resistanceOhm: outOhm },
      return: { resistanceOhm: backOhm, node: "neg" },
      loads: [`l${i + 1}`],
    })),
    loads: circuits.map(({ load }, i) => ({ id: `l${i + 1}`, name: `Load ${i + 1}`, ratedV: read(12), ...load })),
    ...rest,
  };
}
