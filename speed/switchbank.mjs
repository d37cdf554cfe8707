// How long does it take to infer a bank code? Prints medians; the limit is 200 ms for 8 switches. A plain trial of every rule, written here and
// sharing nothing with the engine, is timed beside it on 4 and 5 switches, and its count of rules must be the same.
import { encodeAddress, inferCode } from "@fusebook/core/switchbank";

const LIMIT_MS = 200;
const RUNS = 31;

let seed = 20_240_607;
const chance = () => {
  seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0;
  return seed / 2 ** 32;
};
const shuffled = (list) => {
  const left = [...list];
  return list.map(() => left.splice(Math.floor(chance() * left.length), 1)[0]);
};

const ruleOf = (switches, counting) => ({
  kind: "weights",
  coding: chance() < 0.5 ? "binary" : "gray",
  firstAddress: chance() < 0.5 ? 0 : 1,
  switches: shuffled(Array.from({ length: switches }, (_, i) => i + 1))
    .slice(0, counting)
    .map((number, i) => ({ switch: number, weight: 2 ** i, onMeans: chance() < 0.5 ? 0 : 1 })),
});

const readOf = (rule, switches, unreadShare) => {
  const address = rule.firstAddress + Math.floor(chance() * 2 ** rule.switches.length);
  const row = Array.from({ length: switches }, () => (chance() < 0.5 ? "0" : "1"));
  for (const each of encodeAddress(rule, address).value) row[each.switch - 1] = String(each.position);
  return { address, positions: row.map((sign) => (chance() < unreadShare ? "?" : sign)).join("") };
};

const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];

function timed(makeCase) {
  const times = [];
  let rules = 0;
  for (let run = 0; run < RUNS + 3; run++) {
    const { samples, options } = makeCase();
    const start = performance.now();
    const outcome = inferCode(samples, options);
    const took = performance.now() - start;
    if (outcome.kind !== "known") throw new Error(JSON.stringify(outcome));
    rules = outcome.value.rules;
    if (run >= 3) times.push(took);
  }
  return { medianMs: median(times), worstMs: Math.max(...times), rules };
}

const eight = (sampleCount, unreadShare, isWrong) => () => {
  const rule = ruleOf(8, 8);
  const samples = Array.from({ length: sampleCount }, () => readOf(rule, 8, unreadShare));
  if (isWrong) samples.push({ address: samples[0].address + 1, positions: samples[0].positions });
  const installed = Array.from({ length: 12 }, (_, i) => {
    const { address, positions } = readOf(rule, 8, 0);
    return i % 2 === 0 ? { name: `m${i}`, address } : { name: `m${i}`, positions };
  });
  return { samples, options: { switches: 8, installed } };
};

let isWithin = true;
for (const [what, makeCase] of [
  ["8 switches, nothing read", eight(0, 0, false)],
  ["8 switches, 1 module read", eight(1, 0, false)],
  ["8 switches, 3 modules read", eight(3, 0, false)],
  ["8 switches, 8 modules read", eight(8, 0, false)],
  ["8 switches, 3 modules, a quarter of the switches unread", eight(3, 0.25, false)],
  ["8 switches, 24 modules, two in contradiction", eight(24, 0, true)],
]) {
  const { medianMs, worstMs } = timed(makeCase);
  isWithin &&= medianMs <= LIMIT_MS;
  console.log(
    `${what}: median ${medianMs.toFixed(2)} ms, worst ${worstMs.toFixed(2)} ms of ${RUNS} (limit ${LIMIT_MS} ms)`,
  );
}

/** Every rule on so many switches, tried one after the other. */
function tryEvery(samples, switches) {
  let fitting = 0;
  const grow = (coding, first, seats) => {
    if (seats.length > 0 && !(seats.length === 1 && coding === "gray")) {
      const fits = samples.every(({ address, positions }) => {
        const value = address - first;
        if (value < 0 || value >= 2 ** seats.length) return false;
        const coded = coding === "gray" ? value ^ (value >> 1) : value;
        return seats.every(([number, on], bit) => Number(positions[number - 1]) === ((coded >> bit) & 1 ? on : 1 - on));
      });
      if (fits) fitting++;
    }
    for (let number = 1; number <= switches; number++)
      if (!seats.some((seat) => seat[0] === number))
        for (const on of [0, 1]) grow(coding, first, [...seats, [number, on]]);
  };
  for (const coding of ["binary", "gray"]) for (const first of [0, 1]) grow(coding, first, []);
  return fitting;
}

for (const switches of [4, 5]) {
  const rule = ruleOf(switches, switches);
  const samples = [readOf(rule, switches, 0), readOf(rule, switches, 0)];
  const engine = timed(() => ({ samples, options: { switches } }));
  const start = performance.now();
  const count = tryEvery(samples, switches);
  const tried = performance.now() - start;
  if (count !== engine.rules) isWithin = false;
  console.log(
    `${switches} switches, 2 modules read: ${engine.rules} rules in ${engine.medianMs.toFixed(2)} ms; every rule tried: ${count} in ${tried.toFixed(2)} ms (ratio ${(tried / engine.medianMs).toFixed(1)})`,
  );
}
if (!isWithin) process.exitCode = 1;
