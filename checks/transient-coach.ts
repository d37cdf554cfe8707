import type { CoachRecord } from "@fusebook/core/record";
import { channelLines, copperOhm } from "./transient-circuits.js";

/** A figure known exactly: the circuit for the simulator has no spans. */
export const exact = (value: number) => ({ value, basis: "measured", plusMinus: 0 });

export interface Wire {
  readonly gauge: number;
  readonly lengthM: number;
}

export interface Channel {
  /** Out, and back to the splice of all returns. */
  readonly wire: Wire;
  readonly fuseA: number;
  readonly dutyRatio: number;
  /** The load as the record has it, without id and name. */
  readonly load: Readonly<Record<string, unknown>>;
  /** The same load for the simulator, between two nodes. */
  readonly lines: (id: string, from: string, to: string) => string[];
}

/** One battery, one feeder, one module, channels whose returns meet at a splice and share one wire back. */
export interface SmallCoach {
  readonly nominalV: 12 | 24;
  readonly openCircuitV: number;
  readonly batteryOhm: number;
  readonly feeder: Wire;
  readonly sharedReturn: Wire;
  readonly pwmHz: number;
  readonly onOhm: number;
  /** Of the air, and so of the wires; 30 where absent. */
  readonly ambientC?: number;
  readonly channels: readonly Channel[];
}

/** Stated for every fuse, so that no figure from memory decides. */
export const FUSE_OHM = 0.006;
const AMBIENT_C = 30;
const runOf = ({ gauge, lengthM }: Wire) => ({ gauge: `${gauge} AWG`, lengthM: exact(lengthM), insulationC: 105 });

export function recordOf(coach: SmallCoach): CoachRecord {
  return {
    format: "fusebook/1",
    coach: { name: "Bench", nominalV: coach.nominalV },
    policy: { ambientC: coach.ambientC ?? AMBIENT_C },
    supplies: [
      {
        id: "s1",
        kind: "battery",
        name: "House",
        node: "bat",
        returnNode: "neg",
        openCircuitV: exact(coach.openCircuitV),
        internalResistanceOhm: exact(coach.batteryOhm),
      },
    ],
    nodes: [
      { id: "bat", kind: "terminal", name: "bat", rail: "positive" },
      { id: "bus", kind: "busbar", name: "bus", rail: "positive" },
      { id: "neg", kind: "terminal", name: "neg", rail: "return" },
      { id: "splice", kind: "splice", name: "splice", rail: "return" },
    ],
    cables: [
      { id: "feed", from: "bat", to: "bus", ...runOf(coach.feeder) },
      { id: "back", from: "splice", to: "neg", ...runOf(coach.sharedReturn) },
    ],
    moduleKinds: [
      {
        id: "K",
        name: "K",
        channels: 12,
        onResistanceOhm: exact(coach.onOhm),
        quiescentA: exact(0),
        pwmHz: coach.pwmHz,
      },
    ],
    modules: [{ id: "m1", kind: "K", feedNode: "bus", returnNode: "splice" }],
    circuits: coach.channels.map(({ wire, fuseA }, n) => ({
      id: `c${n + 1}`,
      module: "m1",
      channel: n + 1,
      fuse: { ratedA: fuseA, type: "blade", resistanceOhm: exact(FUSE_OHM) },
      out: runOf(wire),
      return: { ...runOf(wire), node: "splice" },
      loads: [`l${n + 1}`],
    })),
    loads: coach.channels.map(({ load }, n) => ({
      id: `l${n + 1}`,
      name: `Load ${n + 1}`,
      ratedV: coach.nominalV,
      ...load,
    })),
  } as unknown as CoachRecord;
}

/** The same coach for the simulator. `delays`: how late each channel's pulse starts, as a share of the period; all together where absent. */
export function coachLines(coach: SmallCoach, delays: readonly number[] = []): string[] {
  const ohmOf = ({ gauge, lengthM }: Wire) => copperOhm(gauge, lengthM, coach.ambientC ?? AMBIENT_C);
  const lines = [
    `V1 e 0 ${coach.openCircuitV}`,
    `Rbat e bat ${coach.batteryOhm}`,
    `Rfeed bat bus ${ohmOf(coach.feeder)}`,
    `Rback splice 0 ${ohmOf(coach.sharedReturn)}`,
  ];
  coach.channels.forEach(({ wire, dutyRatio, lines: loadLines }, n) => {
    const id = String(n + 1);
    lines.push(`Rf${id} bus f${id} ${FUSE_OHM}`);
    if (dutyRatio < 1)
      lines.push(
        ...channelLines(id, `f${id}`, `o${id}`, {
          onOhm: coach.onOhm,
          pwmHz: coach.pwmHz,
          dutyRatio,
          edgeS: 1e-6,
          ...(delays[n] === undefined ? {} : { delayS: delays[n] / coach.pwmHz }),
        }),
      );
    else lines.push(`Rc${id} f${id} o${id} ${coach.onOhm}`);
    lines.push(
      `Ro${id} o${id} p${id} ${ohmOf(wire)}`,
      `Va${id} p${id} q${id} 0`,
      ...loadLines(id, `q${id}`, `n${id}`),
      `Rr${id} n${id} splice ${ohmOf(wire)}`,
    );
  });
  return lines;
}
