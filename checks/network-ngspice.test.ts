import { allOnState, buildCoach, busyState, type Network, solveNetwork } from "@fusebook/core/network";
import { indexRecord } from "@fusebook/core/record";
import { generateCoach } from "@fusebook/fixtures";
import { Simulation } from "eecircuit-engine";
import { beforeAll, describe, expect, it } from "vitest";
import { netlistOf } from "./network-netlist.js";
import { seededNetwork } from "./network-states.js";

/** ngspice 45 in WebAssembly: a second program with its own solver and its own tolerances. */
const RELATIVE = 1e-6;
/** Below a millivolt the simulator's own nanovolt tolerance is the larger share. */
const LEAST_V = 1e-3;

const simulation = new Simulation();
beforeAll(() => simulation.start());

interface Seen {
  worst: number;
  states: number;
  nodes: number;
  worstBalance: number;
}

async function compare(network: Network, seen: Seen): Promise<void> {
  const ours = solveNetwork(network);
  if (ours.kind !== "known") throw new Error(`state ${seen.states}: ${JSON.stringify(ours)}`);
  simulation.setNetList(netlistOf(network));
  const theirs = await simulation.runSim();
  if (theirs.dataType !== "real") throw new Error("real volts are wanted");
  const volts = new Map(theirs.data.map((one) => [one.name.toLowerCase(), one.values[0]!]));
  for (let n = 0; n < network.nodeCount; n++) {
    if (n === network.reference) continue;
    const their = volts.get(`v(n${n})`);
    if (their === undefined) throw new Error(`node ${n} is not in the simulator's answer`);
    const our = ours.value.nodeV[n]!;
    seen.worst = Math.max(seen.worst, Math.abs(our - their) / Math.max(Math.abs(their), LEAST_V));
    seen.nodes++;
  }
  seen.worstBalance = Math.max(seen.worstBalance, ours.value.balance.currentRelative, ours.value.balance.powerRelative);
  seen.states++;
}

const said = (what: string, seen: Seen): string =>
  `${what}: ${seen.states} states, ${seen.nodes} node voltages, worst difference ${seen.worst.toExponential(2)} relative, worst balance ${seen.worstBalance.toExponential(2)}`;

describe("second opinion: ngspice through eecircuit-engine 1.8", () => {
  it("150 made-up states of 1 to 300 circuits, meshes, shared returns, several supplies: node voltages within 1e-6", async () => {
    const seen: Seen = { worst: 0, states: 0, nodes: 0, worstBalance: 0 };
    for (let seed = 1; seed <= 150; seed++)
      await compare(seededNetwork({ seed, circuits: seed % 10 === 0 ? 150 + seed : 1 + ((seed * 7) % 60) }), seen);
    process.stdout.write(`${said("made-up networks", seen)}\n`);
    expect(seen.states).toBe(150);
    expect(seen.worst).toBeLessThan(RELATIVE);
    expect(seen.worstBalance).toBeLessThan(1e-9);
  }, 120_000);

  it("60 states of generated coach records: node voltages within 1e-6", async () => {
    const seen: Seen = { worst: 0, states: 0, nodes: 0, worstBalance: 0 };
    for (let seed = 1; seed <= 30; seed++) {
      const index = indexRecord(
        generateCoach({ seed, circuits: seed % 10 === 0 ? 120 : 5 + seed, hasMesh: seed % 3 === 0 }).record,
      );
      for (const state of [allOnState(index), { ...busyState(index), chargerOn: true, engineOn: true }]) {
        const built = buildCoach(index, state);
        if (built.kind !== "known") throw new Error(`seed ${seed}: ${JSON.stringify(built)}`);
        await compare(built.value.network, seen);
      }
    }
    process.stdout.write(`${said("generated coaches", seen)}\n`);
    expect(seen.states).toBe(60);
    expect(seen.worst).toBeLessThan(RELATIVE);
    expect(seen.worstBalance).toBeLessThan(1e-9);
  }, 120_000);
});
