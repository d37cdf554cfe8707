import { Simulation } from "eecircuit-engine";

/** How fine the simulator is told to be. Named by every check, so that its tolerance can be weighed. */
export interface Grain {
  readonly stopS: number;
  /** No step is longer than this. */
  readonly maxStepS: number;
  /** Nothing is kept before this time. */
  readonly keepFromS?: number;
  readonly relTol?: number;
}

/** What the simulator answered: every named quantity at the same times. */
export class Waves {
  constructor(
    readonly timeS: readonly number[],
    private readonly named: ReadonlyMap<string, readonly number[]>,
  ) {}

  get size(): number {
    return this.timeS.length;
  }

  volts(node: string): readonly number[] {
    return this.wave(`v(${node})`);
  }

  /** Current out of the positive end of a source, so that a battery that feeds counts upwards. */
  fedBy(source: string): readonly number[] {
    return this.wave(`i(${source})`).map((a) => -a);
  }

  /** Current into the positive end of a source of 0 V, the simulator's ammeter. */
  through(ammeter: string): readonly number[] {
    return this.wave(`i(${ammeter})`);
  }

  private wave(name: string): readonly number[] {
    const found = this.named.get(name.toLowerCase());
    if (found === undefined) throw new Error(`${name} is not in the simulator's answer: ${[...this.named.keys()]}`);
    return found;
  }

  /** Value at a time, on the straight line between the two points around it. */
  at(wave: readonly number[], timeS: number): number {
    const { timeS: t } = this;
    let lo = 0;
    let hi = t.length - 1;
    if (timeS <= t[0]!) return wave[0]!;
    if (timeS >= t[hi]!) return wave[hi]!;
    while (hi - lo > 1) {
      const mid = (lo + hi) >> 1;
      if (t[mid]! <= timeS) lo = mid;
      else hi = mid;
    }
    const share = (timeS - t[lo]!) / (t[hi]! - t[lo]!);
    return wave[lo]! + share * (wave[hi]! - wave[lo]!);
  }

  /** Integral of the wave, or of its square, from one time to another; the wave is taken as straight between points, and its square integrated exactly. */
  integral(wave: readonly number[], fromS: number, toS: number, isSquared = false): number {
    const { timeS: t } = this;
    let total = 0;
    for (let k = 1; k < t.length; k++) {
      const a = Math.max(t[k - 1]!, fromS);
      const b = Math.min(t[k]!, toS);
      if (b <= a) continue;
      const x = this.at(wave, a);
      const y = this.at(wave, b);
      total += (b - a) * (isSquared ? (x * x + x * y + y * y) / 3 : (x + y) / 2);
    }
    return total;
  }

  mean = (wave: readonly number[], fromS: number, toS: number): number =>
    this.integral(wave, fromS, toS) / (toS - fromS);

  rms = (wave: readonly number[], fromS: number, toS: number): number =>
    Math.sqrt(this.integral(wave, fromS, toS, true) / (toS - fromS));

  peak(wave: readonly number[], fromS = 0, toS = Number.POSITIVE_INFINITY): number {
    let most = Number.NEGATIVE_INFINITY;
    for (let k = 0; k < wave.length; k++) {
      const t = this.timeS[k]!;
      if (t >= fromS && t <= toS) most = Math.max(most, wave[k]!);
    }
    return most;
  }

  /** First time at which the wave has fallen to a level after its peak. */
  fallsTo(wave: readonly number[], level: number): number {
    const top = wave.indexOf(this.peak(wave));
    for (let k = top + 1; k < wave.length; k++) {
      if (wave[k]! > level) continue;
      const [a, b] = [wave[k - 1]!, wave[k]!];
      const share = a === b ? 0 : (a - level) / (a - b);
      return this.timeS[k - 1]! + share * (this.timeS[k]! - this.timeS[k - 1]!);
    }
    return Number.POSITIVE_INFINITY;
  }
}

/** ngspice 45 in WebAssembly, one for each test file. Circuits go in as element lines, written from the physics. */
export class Simulator {
  private readonly simulation = new Simulation();
  runs = 0;

  start = (): Promise<void> => this.simulation.start();

  /** A run in time from the stated initial conditions (`IC=` on capacitors and inductors). Throws where the simulator complains. */
  async transient(elements: readonly string[], grain: Grain): Promise<Waves> {
    const { stopS, maxStepS, keepFromS = 0, relTol = 1e-5 } = grain;
    return this.run([
      ...elements,
      `.options reltol=${relTol} abstol=1e-9 vntol=1e-8 method=trap`,
      `.tran ${maxStepS} ${stopS} ${keepFromS} ${maxStepS} uic`,
    ]);
  }

  /** The point at rest: one value for each name. */
  operatingPoint = (elements: readonly string[]): Promise<Waves> =>
    this.run([...elements, ".options reltol=1e-9 abstol=1e-12 vntol=1e-9 gmin=1e-15", ".op"]);

  private async run(lines: readonly string[]): Promise<Waves> {
    this.simulation.setNetList(["* transient truth", ...lines, ".end"].join("\n"));
    const answer = await this.simulation.runSim();
    this.runs++;
    const complaints = this.simulation.getError().filter((line) => /error|singular|too small|abort/i.test(line));
    if (complaints.length > 0) throw new Error(`${complaints.join("; ")}\n${lines.join("\n")}`);
    if (answer.dataType !== "real") throw new Error("real figures are wanted");
    const named = new Map(answer.data.map((one) => [one.name.toLowerCase(), one.values]));
    const timeS = named.get("time") ?? [0];
    const last = timeS[timeS.length - 1]!;
    const asked = lines.find((line) => line.startsWith(".tran"))?.split(" ")[2];
    if (asked !== undefined && last < 0.999 * Number(asked))
      throw new Error(`the run stopped at ${last} s\n${lines.join("\n")}`);
    return new Waves(timeS, named);
  }
}
