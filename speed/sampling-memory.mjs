// How much memory do so many samples take? Run by `sampling.mjs` in a process of its own: `node --expose-gc speed/sampling-memory.mjs SAMPLES`. Prints
// JSON: bytes of results, what the heap and the arrays hold more when the samples are done and before anything is collected, and how often something was.
import { PerformanceObserver } from "node:perf_hooks";
import { allOnState, sampleCoach } from "@fusebook/core/network";
import { indexRecord } from "@fusebook/core/record";
import { generateCoach } from "@fusebook/fixtures";

const samples = Number(process.argv[2]);
const index = indexRecord(generateCoach({ seed: 1, circuits: 160, nominalV: 12 }).record);
const state = allOnState(index);
// The code is compiled and optimised before anything is measured.
for (let warm = 0; warm < 3; warm++) sampleCoach(index, state, { seed: 1, samples: 400 });
const settle = () => new Promise((done) => setTimeout(done, 50));
let collections = 0;
new PerformanceObserver((list) => {
  collections += list.getEntries().length;
}).observe({ entryTypes: ["gc"] });
await settle();
for (let again = 0; again < 3; again++) globalThis.gc();
await settle();
collections = 0;
const held = () => {
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return { heapUsed, arrayBuffers };
};
const before = held();
const rssBefore = process.memoryUsage.rss();
const outcome = sampleCoach(index, state, { seed: 1, samples });
const after = held();
const rss = process.memoryUsage.rss();
await settle();
const { value } = outcome;
const arrays = [
  ...[...value.loads.values()].flatMap((load) => [load.value.onV, load.value.onA, load.value.dropV]),
  ...[value.circuitA, value.moduleA, value.cableA, value.cableDropV].flatMap((map) =>
    [...map.values()].map((one) => one.value),
  ),
  ...[...value.supplies.values()].flatMap((one) => [one.currentA, one.terminalV]),
  value.sampleNumbers,
];
const resultBytes = arrays.reduce((sum, one) => sum + one.byteLength, 0);
console.log(
  JSON.stringify({
    samples,
    resultBytes,
    heapBytes: after.heapUsed - before.heapUsed,
    arrayBytes: after.arrayBuffers - before.arrayBuffers,
    rssBytes: rss - rssBefore,
    collections,
  }),
);
