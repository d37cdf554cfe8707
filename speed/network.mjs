// How long does the operating point of a coach take? Beside ngspice (WebAssembly) on the same netlist in the same process, its start-up not counted: at
// least 50 times as fast on 200 circuits. And how does it grow from 20 to 2,000 circuits: no worse than n^1.3.
import { allOnState, buildCoach, solveCoach, solveNetwork, spanCoach } from "@fusebook/core/network";
import { indexRecord } from "@fusebook/core/record";
import { generateCoach } from "@fusebook/fixtures";
import { Simulation } from "eecircuit-engine";
import { netlistOf } from "./netlist.mjs";

const LEAST_RATIO = 50;
const MOST_EXPONENT = 1.3;

const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
/** Processor time of this process, ms: a machine busy with other work does not change it. */
const cpuMs = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
/** Median over runs of the processor time of one piece of work, done `each` times a run. */
const timed = (runs, each, work) => {
  const times = [];
  for (let run = 0; run < runs; run++) {
    const start = cpuMs();
    for (let again = 0; again < each; again++) work();
    times.push((cpuMs() - start) / each);
  }
  return median(times);
};
const need = (outcome) => {
  if (outcome.kind !== "known") throw new Error(JSON.stringify(outcome));
  return outcome.value;
};
const coachOf = (circuits, seed) => {
  const index = indexRecord(generateCoach({ seed, circuits, nominalV: 12 }).record);
  return { index, state: allOnState(index) };
};

let isWithin = true;
const simulation = new Simulation();
await simulation.start();
const ratios = [];
for (const seed of [1, 2, 3, 4, 5]) {
  const { index, state } = coachOf(200, seed);
  const { network } = need(buildCoach(index, state));
  const text = netlistOf(network);
  for (let warm = 0; warm < 200; warm++) solveNetwork(network);
  const oursMs = [];
  const theirsMs = [];
  let answer;
  // Turn about, so that whatever else the machine does meets both.
  for (let run = 0; run < 14; run++) {
    let start = cpuMs();
    for (let again = 0; again < 20; again++) solveNetwork(network);
    if (run > 1) oursMs.push((cpuMs() - start) / 20);
    start = cpuMs();
    simulation.setNetList(text);
    answer = await simulation.runSim();
    if (run > 1) theirsMs.push(cpuMs() - start);
  }
  const volts = new Map(answer.data.map((one) => [one.name.toLowerCase(), one.values[0]]));
  const solution = need(solveNetwork(network));
  let worst = 0;
  solution.nodeV.forEach((v, n) => {
    const their = volts.get(`v(n${n})`);
    if (their !== undefined) worst = Math.max(worst, Math.abs(v - their) / Math.max(Math.abs(their), 1e-3));
  });
  const ratio = median(theirsMs) / median(oursMs);
  ratios.push(ratio);
  console.log(
    `200 circuits, seed ${seed}, ${network.nodeCount} nodes: ${median(oursMs).toFixed(2)} ms; ngspice ${median(theirsMs).toFixed(1)} ms: ${ratio.toFixed(0)} times as fast; worst difference ${worst.toExponential(1)}; from the record, results read off: ${timed(9, 2, () => solveCoach(index, state)).toFixed(1)} ms`,
  );
}
isWithin &&= median(ratios) >= LEAST_RATIO;
console.log(
  `median of five coaches: ${median(ratios).toFixed(0)} times as fast as ngspice, least ${Math.min(...ratios).toFixed(0)} (limit ${LEAST_RATIO})`,
);

const points = [];
for (const circuits of [20, 60, 200, 600, 2000]) {
  const each = [];
  for (const seed of [1, 2, 3]) {
    const { index, state } = coachOf(circuits, seed);
    const { network } = need(buildCoach(index, state));
    for (let warm = 0; warm < 5; warm++) solveNetwork(network);
    each.push({
      pointMs: timed(circuits > 500 ? 9 : 21, circuits > 500 ? 3 : 20, () => solveNetwork(network)),
      wholeMs: timed(5, 1, () => solveCoach(index, state)),
    });
  }
  const pointMs = median(each.map((one) => one.pointMs));
  points.push([Math.log(circuits), Math.log(pointMs)]);
  console.log(
    `${circuits} circuits: operating point ${pointMs.toFixed(2)} ms, from the record ${median(each.map((one) => one.wholeMs)).toFixed(1)} ms`,
  );
}
const meanX = points.reduce((sum, [x]) => sum + x, 0) / points.length;
const meanY = points.reduce((sum, [, y]) => sum + y, 0) / points.length;
const exponent =
  points.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0) /
  points.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
isWithin &&= exponent <= MOST_EXPONENT;
console.log(`growth from 20 to 2,000 circuits: n^${exponent.toFixed(2)} (limit n^${MOST_EXPONENT})`);

for (const circuits of [20, 60]) {
  const { index, state } = coachOf(circuits, 1);
  for (let warm = 0; warm < 3; warm++) spanCoach(index, state);
  const spans = need(spanCoach(index, state));
  const first = [...spans.loads.values()].find((load) => load.kind === "known");
  console.log(
    `spans of ${circuits} circuits, everything on (${first?.value.onV.method}): ${timed(7, 3, () => spanCoach(index, state)).toFixed(1)} ms`,
  );
}
process.exit(isWithin ? 0 : 1);
