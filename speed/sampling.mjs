// How long do 10,000 coaches drawn from the tolerances of one of 160 circuits take? At most 2 s of processor time on one core, everything on; beside ngspice
// (WebAssembly) solving one drawn coach after another in the same process, its start-up not counted: at least 50 times as fast for each. And in how much
// memory: one sample's working set, a fifth of it more, and the results.
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { allOnState, buildCoach, drawRecord, sampleCoach } from "@fusebook/core/network";
import { indexRecord } from "@fusebook/core/record";
import { generateCoach } from "@fusebook/fixtures";
import { Simulation } from "eecircuit-engine";
import { netlistOf } from "./netlist.mjs";

const SAMPLES = 10_000;
const CIRCUITS = 160;
const MOST_S = 2;
const LEAST_RATIO = 50;
const MOST_MEMORY_RATIO = 1.2;
const THEIR_SAMPLES = 12;

const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
/** Processor time of this process, s. A machine busy with other work can only add to it: caches are shared. */
const cpuS = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};
const need = (outcome) => {
  if (outcome.kind !== "known") throw new Error(JSON.stringify(outcome));
  return outcome.value;
};

let isWithin = true;
const simulation = new Simulation();
await simulation.start();
const oursS = [];
const ratios = [];
for (const seed of [1, 2, 3]) {
  const { record } = generateCoach({ seed, circuits: CIRCUITS, nominalV: 12 });
  const index = indexRecord(record);
  const state = allOnState(index);
  const times = [];
  let samples;
  sampleCoach(index, state, { seed, samples: 500 });
  for (let run = 0; run < 4; run++) {
    const start = cpuS();
    samples = need(sampleCoach(index, state, { seed, samples: SAMPLES }));
    times.push(cpuS() - start);
  }
  const theirsS = [];
  let worst = 0;
  for (let sample = 0; sample < THEIR_SAMPLES; sample++) {
    const coach = need(buildCoach(indexRecord(drawRecord(record, seed, sample)), state));
    const text = netlistOf(coach.network);
    const start = cpuS();
    simulation.setNetList(text);
    const answer = await simulation.runSim();
    theirsS.push(cpuS() - start);
    const volts = new Map(answer.data.map((one) => [one.name.toLowerCase(), one.values[0]]));
    const at = (n) => (n === coach.network.reference ? 0 : volts.get(`v(n${n})`));
    const place = samples.sampleNumbers.indexOf(sample);
    for (const { load, networkLoad } of coach.circuits.flatMap((one) => one.loads)) {
      const { from, to } = coach.network.loads[networkLoad];
      worst = Math.max(worst, Math.abs(samples.loads.get(load.id).value.onV[place] - at(from) + at(to)));
    }
  }
  const best = Math.min(...times);
  oursS.push(best);
  const ratio = median(theirsS) / (best / SAMPLES);
  ratios.push(ratio);
  console.log(
    `seed ${seed}, ${CIRCUITS} circuits, ${samples.solved} of ${SAMPLES} solved: ${times.map((s) => s.toFixed(2)).join(", ")} s; ${((best / SAMPLES) * 1e3).toFixed(3)} ms a sample, ngspice ${(median(theirsS) * 1e3).toFixed(1)} ms: ${ratio.toFixed(0)} times as fast; worst difference at a load ${worst.toExponential(1)} V`,
  );
  isWithin &&= worst < 1e-5;
}
isWithin &&= Math.max(...oursS) <= MOST_S;
isWithin &&= median(ratios) >= LEAST_RATIO;
console.log(
  `slowest of three coaches, best of four runs: ${Math.max(...oursS).toFixed(2)} s (limit ${MOST_S} s); median ratio ${median(ratios).toFixed(0)} (limit ${LEAST_RATIO})`,
);

const bench = fileURLToPath(new URL("sampling-memory.mjs", import.meta.url));
const measured = (samples) =>
  JSON.parse(spawnSync(process.execPath, ["--expose-gc", bench, String(samples)], { encoding: "utf8" }).stdout);
const mb = (bytes) => (bytes / 1e6).toFixed(1);
const memoryRatios = [];
for (let run = 0; run < 3; run++) {
  const one = measured(1);
  const many = measured(SAMPLES);
  const working = one.heapBytes + one.arrayBytes;
  const beside = many.heapBytes + many.arrayBytes - many.resultBytes;
  memoryRatios.push(beside / working);
  console.log(
    `one sample: ${mb(working)} MB; ${SAMPLES}: ${mb(many.heapBytes + many.arrayBytes)} MB, of which results ${mb(many.resultBytes)} MB, so ${mb(beside)} MB beside them: ${(beside / working).toFixed(2)} times; ${many.collections} collections`,
  );
}
isWithin &&= median(memoryRatios) <= MOST_MEMORY_RATIO;
console.log(
  `median of three: ${median(memoryRatios).toFixed(2)} times one sample's working set beside the results (limit ${MOST_MEMORY_RATIO})`,
);
process.exit(isWithin ? 0 : 1);
