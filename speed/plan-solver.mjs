// How long does a plan take to be proved best, wires moving to the modules beside theirs? The solver in its warm worker, beside GLPK (WebAssembly, in this process) and,
// where they are installed, cbc and glpsol on the same models written as files. Every solver that proves an optimum must prove the same one.
// `node speed/plan-solver.mjs --full` takes ten seeds and 32 modules as well.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { milpOf, writeMps } from "@fusebook/core/plan";
import { highsWorker } from "@fusebook/solver";
import makeGlpk from "glpk.js/node";
import { retrofitProblem } from "./plan-retrofits.mjs";

/** Seconds a peer may take for one model. */
const PEER_LIMIT_S = 20;
/** Wanted on this class of machine: the median over seeds, in seconds of the processor, by modules. */
const WANTED_S = new Map([
  [16, 1],
  [32, 4],
]);
const isFull = process.argv.includes("--full");
const SIZES = isFull ? [4, 8, 16, 32] : [4, 8, 16];
const SEEDS = Array.from({ length: isFull ? 10 : 3 }, (_, at) => at + 1);
/** Seeds on which the peers are asked too. */
const PEER_SEEDS = 2;

const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
/** Processor time of this process with all its threads, s: a machine busy with other work changes it less than the clock on the wall. */
const cpuS = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};
const shown = (seconds) => (seconds === undefined ? "-" : seconds.toFixed(2)).padStart(9);

const folder = mkdtempSync(join(tmpdir(), "fusebook-speed-"));
const file = join(folder, "model.mps");
const isThere = (program) => {
  try {
    execFileSync(program, ["--version"], { stdio: "ignore", input: "" });
    return true;
  } catch (error) {
    return error.code !== "ENOENT";
  }
};

/** Each peer proves a model and gives the least cost, or undefined where it did not finish. */
const glpk = await makeGlpk();
const peers = [
  {
    name: "glpk.js",
    prove: (milp) => {
      const nameOf = (column) => milp.columns[column].name;
      const ends = ({ lower, upper }) =>
        lower === upper
          ? { type: glpk.GLP_FX, lb: lower, ub: upper }
          : lower === -Infinity
            ? upper === Infinity
              ? { type: glpk.GLP_FR, lb: 0, ub: 0 }
              : { type: glpk.GLP_UP, lb: 0, ub: upper }
            : upper === Infinity
              ? { type: glpk.GLP_LO, lb: lower, ub: 0 }
              : { type: glpk.GLP_DB, lb: lower, ub: upper };
      const { result } = glpk.solve(
        {
          name: milp.name,
          objective: {
            direction: glpk.GLP_MIN,
            name: "cost",
            vars: milp.columns.map(({ name, cost }) => ({ name, coef: cost })),
          },
          subjectTo: milp.rows.map((row) => ({
            name: row.name,
            vars: row.terms.map(([column, coef]) => ({ name: nameOf(column), coef })),
            bnds: ends(row),
          })),
          bounds: milp.columns.map((column) => ({ name: column.name, ...ends(column) })),
          generals: milp.columns.filter((column) => column.isInteger).map((column) => column.name),
        },
        { msglev: glpk.GLP_MSG_OFF, presol: true, mipgap: 0, tmlim: PEER_LIMIT_S },
      );
      return result.status === glpk.GLP_OPT ? result.z : undefined;
    },
  },
];
if (isThere("cbc"))
  peers.push({
    name: "cbc",
    prove: () => {
      const text = execFileSync("cbc", [
        file,
        "ratio",
        "0",
        "allow",
        "0",
        "sec",
        String(PEER_LIMIT_S),
        "solve",
        "quit",
      ]).toString();
      if (!text.includes("Result - Optimal solution found")) return undefined;
      return Number(/Objective value:\s+(\S+)/.exec(text)?.[1]);
    },
  });
if (isThere("glpsol"))
  peers.push({
    name: "glpsol",
    prove: () => {
      const out = join(folder, "answer.txt");
      execFileSync("glpsol", ["--freemps", file, "--cuts", "--fpump", "--tmlim", String(PEER_LIMIT_S), "-o", out], {
        stdio: "ignore",
      });
      const text = readFileSync(out, "utf8");
      return text.includes("INTEGER OPTIMAL") ? Number(/Objective:\s+\S+ = (\S+)/.exec(text)?.[1]) : undefined;
    },
  });

const modelOf = ({ problem, allValue }, best) =>
  milpOf(problem, best === "weighted" ? { best } : { best, leastValue: Math.round(0.8 * allValue) }).milp;

let isWithin = true;
const worker = highsWorker();
// Warm: the WebAssembly of a fresh worker is compiled while it runs first.
for (const seed of [101, 102]) {
  const session = await worker.open(modelOf(retrofitProblem({ modules: 8, seed }), "least-cost"));
  await session.solve({ timeS: 10 });
  session.close();
}

console.log("seconds to a proved optimum, wall clock (median over seeds and two objectives; - = not proved in 20 s)");
console.log(
  `${"modules".padEnd(9)}${"columns".padStart(8)}${"rows".padStart(7)}${"ours".padStart(9)}${"most".padStart(9)}${"cpu".padStart(9)}${peers.map(({ name }) => name.padStart(9) + " ratio".padStart(8)).join("")}`,
);
for (const modules of SIZES) {
  const ours = [];
  const oursCpu = [];
  const theirs = peers.map(() => []);
  const ratios = peers.map(() => []);
  let size;
  for (const seed of SEEDS) {
    const problem = retrofitProblem({ modules, seed });
    for (const best of ["weighted", "least-cost"]) {
      const milp = modelOf(problem, best);
      size ??= [milp.columns.length, milp.rows.length];
      const session = await worker.open(milp);
      let begun = performance.now();
      const begunCpu = cpuS();
      const answer = await session.solve();
      oursCpu.push(cpuS() - begunCpu);
      const oursS = (performance.now() - begun) / 1000;
      session.close();
      ours.push(oursS);
      if (answer.status !== "optimal") throw new Error(`${milp.name}: ${answer.status}`);
      if (seed > PEER_SEEDS || modules > 16) continue;
      writeFileSync(file, writeMps(milp));
      peers.forEach(({ name, prove }, at) => {
        begun = performance.now();
        const least = prove(milp);
        const theirS = (performance.now() - begun) / 1000;
        theirs[at].push(least === undefined ? undefined : theirS);
        ratios[at].push(theirS / oursS);
        if (least !== undefined && Math.abs(least - answer.objective) > 1e-6 * Math.max(1, Math.abs(least))) {
          console.log(`NOT THE SAME: ${milp.name} ${best}: ours ${answer.objective}, ${name} ${least}`);
          isWithin = false;
        }
      });
    }
  }
  const peerCells = peers.map((_, at) => {
    if (theirs[at].length === 0) return "".padStart(17);
    const isProved = theirs[at].every((each) => each !== undefined);
    return `${shown(isProved ? median(theirs[at]) : undefined)}${`${isProved ? "" : ">"}${median(ratios[at]).toFixed(1)}`.padStart(8)}`;
  });
  console.log(
    `${String(modules).padEnd(9)}${String(size[0]).padStart(8)}${String(size[1]).padStart(7)}${shown(median(ours))}${shown(Math.max(...ours))}${shown(median(oursCpu))}${peerCells.join("")}`,
  );
  const wanted = WANTED_S.get(modules);
  if (wanted !== undefined) {
    const isKept = median(oursCpu) <= wanted;
    console.log(`  wanted: median at most ${wanted} s of the processor: ${isKept ? "kept" : "NOT KEPT"}`);
    if (!isKept) isWithin = false;
  }
}
worker.close();
rmSync(folder, { recursive: true });
process.exitCode = isWithin ? 0 : 1;
