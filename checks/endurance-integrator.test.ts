import { enduranceOf } from "@fusebook/core/endurance";
import { buildCoach, solveCoach } from "@fusebook/core/network";
import { type CircuitId, type CoachIndex, indexRecord, type LoadProfile } from "@fusebook/core/record";
import { beforeAll, describe, expect, it } from "vitest";
import { BATTERIES, coachOnKnownBattery, fullOn, type KnownBattery } from "./endurance-coach.js";
import { netlistOf } from "./network-netlist.js";
import { Simulator } from "./transient-simulator.js";

/*
 * Two second opinions on a run: Runge and Kutta's fourth order written here in steps of a quarter of an hour, the whole coach solved anew at every stage; and ngspice,
 * with the battery as a capacitor of one farad whose volts are the state of charge, one simulated second for one hour. The engine puts straight lines
 * between solved charges that miss a current by at most 2e-4, so 2e-4 of the hours is asked of both.
 */
const WITHIN = 2e-4;
const RESERVE = 0.4;
const RESTED_V = [11.89, 12.06, 12.24, 12.45, 12.65] as const;

const detectorsToo = (index: CoachIndex, ids: readonly CircuitId[]): Set<CircuitId> => {
  const on = new Set<CircuitId>(ids);
  for (const circuit of index.circuits.values())
    if (circuit.loads?.some((id) => index.loads.get(id)?.class === "detector")) on.add(circuit.id);
  return on;
};

/** Amperes out of the bank with these circuits on and every battery this full. */
function drawnA(index: CoachIndex, on: ReadonlySet<CircuitId>, chargeRatio: number): number {
  const solved = solveCoach(index, { name: "check", on, chargeRatio });
  if (solved.kind !== "known") throw new Error(JSON.stringify(solved));
  return [...solved.value.supplies.values()].reduce((sum, one) => sum + one.currentA, 0);
}

/** Peukert at rated hours, no more than the mark below the rated current: written out again. */
const lostPerHour = ({ capacityAh, ratedHours, exponent }: KnownBattery, currentA: number): number =>
  currentA * ratedHours > capacityAh
    ? ((currentA * ratedHours) / capacityAh) ** exponent / ratedHours
    : currentA / capacityAh;

function hoursByQuarters(index: CoachIndex, profile: LoadProfile, battery: KnownBattery): number {
  const spans = profile.spans.map((span) => ({ hours: span.hours, on: detectorsToo(index, span.on[0]!.circuits!) }));
  let s = battery.chargeRatio;
  let timeH = 0;
  for (let n = 0; ; n = (n + 1) % spans.length) {
    const { on, hours } = spans[n]!;
    const rate = (at: number) => -lostPerHour(battery, drawnA(index, on, Math.min(1, Math.max(0, at))));
    const steps = Math.round(hours * 4);
    const h = hours / steps;
    for (let step = 0; step < steps; step++) {
      const k1 = rate(s);
      const k2 = rate(s + (h / 2) * k1);
      const k3 = rate(s + (h / 2) * k2);
      const k4 = rate(s + h * k3);
      const to = s + (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
      if (to <= RESERVE) return timeH + (h * (s - RESERVE)) / (s - to);
      s = to;
      timeH += h;
    }
  }
}

/** The same first span for ever, as a circuit: charge on a capacitor, volts at rest a broken line over it. */
async function hoursBySimulator(
  simulator: Simulator,
  index: CoachIndex,
  profile: LoadProfile,
  battery: KnownBattery,
  stopH: number,
): Promise<number> {
  const on = detectorsToo(index, profile.spans[0]!.on[0]!.circuits!);
  const built = buildCoach(index, { name: "check", on, chargeRatio: 0.5 });
  if (built.kind !== "known") throw new Error(JSON.stringify(built));
  const coach = built.value;
  const branch = coach.supplies[0]!.branch;
  const unit = coach.nominalV / 12;
  const points = RESTED_V.map((v, i) => `${i / 4},${v * unit}`).join(",");
  const lines = netlistOf(coach.network)
    .split("\n")
    .filter((line) => !line.startsWith("*") && !line.startsWith("."));
  const source = lines.findIndex((line) => line.startsWith(`V${branch} `));
  const from = lines[source]!.split(" ")[2]!;
  lines.splice(source, 1, `Bemf em ${from} V = pwl(v(q),${points})`, `Vmeter em e${branch} 0`);
  const { capacityAh: C, ratedHours: H, exponent: k } = battery;
  lines.push(
    `Cq q 0 1 IC=${battery.chargeRatio}`,
    "Rq q 0 1e12",
    `Bq q 0 I = i(Vmeter)*${H} > ${C} ? pow(max(i(Vmeter),1e-6)*${H / C},${k})/${H} : i(Vmeter)/${C}`,
  );
  const waves = await simulator.transient(lines, { stopS: stopH, maxStepS: stopH / 400, relTol: 1e-6 });
  const charge = waves.volts("q");
  for (let i = 1; i < charge.length; i++)
    if (charge[i]! <= RESERVE) {
      const [a, b] = [charge[i - 1]!, charge[i]!];
      return waves.timeS[i - 1]! + ((a - RESERVE) / (a - b)) * (waves.timeS[i]! - waves.timeS[i - 1]!);
    }
  throw new Error(`the simulator did not come down to ${RESERVE}: ${charge.at(-1)}`);
}

const caseOf = (seed: number) => {
  const battery = BATTERIES[seed % BATTERIES.length]!;
  const index = indexRecord(coachOnKnownBattery(seed, 12 + ((seed * 7) % 40), battery));
  return { battery, index, profile: fullOn(index.record, 3 + (seed % 3), 1.5) };
};

const engineHours = (index: CoachIndex, profile: LoadProfile): number => {
  const found = enduranceOf(index, profile, { reserveRatio: RESERVE, spans: "none" });
  if (found.kind !== "known") throw new Error(JSON.stringify(found));
  expect(found.value.ends).toBe("reserve");
  return found.value.hours.nominal;
};

describe("hours of a run against two independent integrators", () => {
  it("12 coaches, loads switched on and off: within 2e-4 of Runge-Kutta in quarter-hour steps over the whole coach solved at every stage", () => {
    let worst = 0;
    for (let seed = 1; seed <= 12; seed++) {
      const { battery, index, profile } = caseOf(seed);
      const [ours, theirs] = [engineHours(index, profile), hoursByQuarters(index, profile, battery)];
      worst = Math.max(worst, Math.abs(ours - theirs) / theirs);
      expect(Math.abs(ours - theirs) / theirs, `seed ${seed}: ${ours} h against ${theirs} h`).toBeLessThan(WITHIN);
    }
    process.stdout.write(
      `12 coaches by Runge-Kutta over solveCoach: worst difference ${worst.toExponential(2)} of the hours\n`,
    );
  }, 120_000);

  const simulator = new Simulator();
  beforeAll(() => simulator.start());

  it("12 coaches as circuits with the battery a capacitor: within 2e-4 of ngspice", async () => {
    let worst = 0;
    for (let seed = 21; seed <= 32; seed++) {
      const { battery, index, profile } = caseOf(seed);
      const steady = { ...profile, spans: profile.spans.slice(0, 1) };
      const ours = engineHours(index, steady);
      const theirs = await hoursBySimulator(simulator, index, steady, battery, ours * 1.2);
      worst = Math.max(worst, Math.abs(ours - theirs) / theirs);
      expect(Math.abs(ours - theirs) / theirs, `seed ${seed}: ${ours} h against ${theirs} h`).toBeLessThan(WITHIN);
    }
    process.stdout.write(`12 coaches by ngspice: worst difference ${worst.toExponential(2)} of the hours\n`);
  });
});
