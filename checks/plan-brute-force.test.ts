import { frontOf } from "@fusebook/core/plan";
import {
  type Circuit,
  type CoachRecord,
  indexRecord,
  type Job,
  type Load,
  type Module,
  type ModuleKind,
} from "@fusebook/core/record";
import { describe, expect, it } from "vitest";
import { FAMILIES, tinyCoach } from "./plan-tiny-coach.js";

/**
 * The front against every plan there is: each coach is small enough to list all combinations of kind and setting, change a real record for each, and judge
 * the changed record by rules written here from the method page, sharing no code with the planner.
 */
const COACHES = 120;

const figure = (value: unknown): number | undefined =>
  typeof value === "number" ? value : (value as { value: number } | undefined)?.value;

type Choice = { kind: string; enables: string[] } | "as found";
type Point = { cost: number; value: number; touched: number };

const LAMPS = ["led-resistor", "led-linear", "filament"];
const SIZES = [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40];

class Judge {
  readonly kinds: ModuleKind[];
  readonly factor: number;
  constructor(
    readonly record: CoachRecord,
    readonly job: Job,
  ) {
    this.kinds = record.moduleKinds ?? [];
    const loads = record.loads ?? [];
    const weight = (load: Load): number => load.wishWeight ?? 1;
    const nice = loads.filter((load) => load.wish === "nice-to-dim").reduce((sum, load) => sum + weight(load), 0);
    const musts = loads.filter((load) => load.wish === "must-dim" || load.wish === "must-stay-steady").map(weight);
    let factor = 1;
    while (factor * Math.min(1, ...musts) <= nice) factor *= 10;
    this.factor = factor;
  }
  kind(id: string | undefined): ModuleKind {
    return this.kinds.find((kind) => kind.id === id)!;
  }
  circuits(module: Module): Circuit[] {
    return (this.record.circuits ?? []).filter((circuit) => circuit.module === module.id);
  }
  load(circuit: Circuit): Load | undefined {
    return (this.record.loads ?? []).find((load) => load.id === circuit.loads?.[0]);
  }
  /** Upper bound of a channel's current: the load's own figure, else its fuse. */
  amps(circuit: Circuit): number | undefined {
    if (circuit.isSpare) return 0;
    return figure(this.load(circuit)?.currentA) ?? figure(circuit.fuse?.ratedA);
  }
  mayDim(load: Load | undefined): boolean {
    return load !== undefined && LAMPS.includes(load.class ?? "") && load.wish !== "must-stay-steady";
  }
  worth(load: Load): number {
    return (load.wishWeight ?? 1) * (load.wish === "nice-to-dim" ? 1 : this.factor);
  }
  channels(kind: ModuleKind, enables: readonly string[]): number[] {
    return (kind.dimBlocks ?? []).filter((block) => enables.includes(block.id)).flatMap((block) => block.channels);
  }
  isLocked(module: Module): boolean {
    return module.isLocked === true || (this.job.constraints?.lockedModules ?? []).includes(module.id);
  }
  found(module: Module): string[] | undefined {
    const kind = this.kind(module.kind);
    if ((kind.dimBlocks ?? []).length === 0) return [];
    if (module.positionsFound === undefined) return undefined;
    return ["b1", "b2"].filter((_, i) => module.positionsFound![2 + i] === "1");
  }
  /** May these blocks be enabled with what hangs on the module? */
  blocksAllowed(module: Module, kind: ModuleKind, enables: readonly string[]): boolean {
    return this.channels(kind, enables).every((channel) => {
      const circuit = this.circuits(module).find((each) => each.channel === channel);
      if (circuit === undefined) return channel > this.kind(module.kind).channels;
      if (circuit.isSpare) return true;
      const amps = this.amps(circuit);
      return this.mayDim(this.load(circuit)) && amps !== undefined && amps <= figure(kind.ratedDimmedA)!;
    });
  }
  /** Minutes that changed fuses take, or undefined where a fuse cannot be made to fit. */
  fuseMinutes(module: Module, kind: ModuleKind): number | undefined {
    let minutes = 0;
    for (const circuit of this.circuits(module)) {
      const fuse = figure(circuit.fuse?.ratedA);
      if (fuse === undefined || fuse <= figure(kind.maxFuseA)!) continue;
      const load = this.load(circuit);
      const amps = figure(load?.currentA);
      if (load === undefined || amps === undefined) return undefined;
      const most = Math.min(figure(kind.maxFuseA)!, figure(load.maxFuseA) ?? 99, fuse);
      const need = amps * (load.isContinuous ? 1.25 : 1);
      if (!SIZES.some((size) => size <= most && size >= need)) return undefined;
      minutes += 2;
    }
    return minutes;
  }
  kindAllowed(module: Module, kind: ModuleKind): boolean {
    const present = this.kind(module.kind);
    if ((this.job.constraints?.forbiddenKinds ?? []).some((id) => id === kind.id)) return false;
    if (kind.isObtainable === false && (kind.inStock ?? 0) === 0) return false;
    if (
      kind.id !== present.id &&
      kind.fitsInPlaceOf !== undefined &&
      !kind.fitsInPlaceOf.some((id) => id === present.id)
    )
      return false;
    if (kind.channels < present.channels) return false;
    const amps = this.circuits(module).map((circuit) => this.amps(circuit));
    if (amps.some((each) => each === undefined || each > figure(kind.ratedSwitchedA)!)) return false;
    if (amps.reduce((sum: number, each) => sum + each!, 0) > figure(kind.ratedTotalA)!) return false;
    return this.fuseMinutes(module, kind) !== undefined;
  }
  choices(module: Module): Choice[] {
    const present = this.kind(module.kind);
    const touched: { choice: Choice; isReplaced: boolean }[] = [];
    if (!this.isLocked(module))
      for (const kind of this.kinds) {
        const isSame = kind.id === present.id;
        if (isSame && !module.isDead) {
          for (const option of kind.bank?.options ?? [])
            if (
              this.blocksAllowed(module, kind, option.enables) &&
              String(option.enables) !== String(this.found(module))
            )
              touched.push({ choice: { kind: kind.id, enables: [...option.enables] }, isReplaced: false });
        } else if (this.kindAllowed(module, kind))
          for (const option of kind.bank?.options ?? [{ enables: [] as string[] }])
            if (this.blocksAllowed(module, kind, option.enables))
              touched.push({ choice: { kind: kind.id, enables: [...option.enables] }, isReplaced: true });
      }
    const replaced = touched.filter((each) => each.isReplaced);
    if (module.isDead && replaced.length > 0) return replaced.map((each) => each.choice);
    return ["as found", ...touched.map((each) => each.choice)];
  }
  value(module: Module, choice: Choice): number {
    const isFound = choice === "as found";
    if (isFound && module.isDead) return 0;
    const kind = this.kind(isFound ? module.kind : choice.kind);
    const enables = isFound ? this.found(module) : choice.enables;
    const on = new Set(this.channels(kind, enables ?? ["b1", "b2"]));
    let value = 0;
    for (const circuit of this.circuits(module)) {
      const load = this.load(circuit);
      if (load === undefined || !on.has(circuit.channel!)) continue;
      if (enables === undefined) {
        // Nobody read the setting: nothing is gained, and who asked to stay steady is not known to be.
        if (load.wish === "must-stay-steady") value -= this.worth(load);
      } else if (!this.mayDim(load)) {
        if (load.wish === "must-stay-steady") value -= this.worth(load);
        else if (load.class !== undefined) value -= this.factor;
      } else if (load.wish !== undefined && (this.amps(circuit) ?? 99) <= figure(kind.ratedDimmedA)!)
        value += this.worth(load);
    }
    return value;
  }
  /** Cost, value and modules touched of one whole plan; undefined where it breaks a limit or asks for parts that cannot be had. */
  point(modules: readonly Module[], choices: readonly Choice[]): Point | undefined {
    const used = new Map<string, number>();
    const opened = new Set<string>();
    let minutes = 0;
    let value = 0;
    let touched = 0;
    const open = (first: string | undefined): void => {
      for (let place = first; place !== undefined; ) {
        opened.add(place);
        place = this.record.places?.find((each) => each.id === place)?.within;
      }
    };
    modules.forEach((module, i) => {
      const choice = choices[i]!;
      value += this.value(module, choice);
      if (choice === "as found") return;
      touched++;
      const kind = this.kind(choice.kind);
      if (choice.kind === module.kind && !module.isDead) minutes += 10;
      else {
        used.set(kind.id, (used.get(kind.id) ?? 0) + 1);
        minutes += Math.ceil(figure(kind.installMin)!) + this.fuseMinutes(module, kind)!;
      }
      open(module.place);
    });
    if (touched > 0) for (const supply of this.record.supplies ?? []) open(supply.isolation?.place ?? supply.place);
    for (const place of opened)
      minutes += Math.ceil(figure(this.record.places?.find((each) => each.id === place)?.accessMin) ?? 0);
    let cents = 0;
    for (const [id, count] of used) {
      const kind = this.kind(id);
      const bought = Math.max(0, count - (kind.inStock ?? 0));
      if (bought > 0 && kind.isObtainable === false) return undefined;
      cents += bought * Math.round(kind.price! * 100);
    }
    cents += Math.round((minutes * (this.record.policy?.labourRatePerHour ?? 0) * 100) / 60);
    const { budget, maxMinutes } = this.job.constraints ?? {};
    if (budget !== undefined && cents > budget * 100) return undefined;
    if (maxMinutes !== undefined && minutes > maxMinutes) return undefined;
    return { cost: cents, value, touched };
  }
}

function everyPoint(record: CoachRecord, job: Job): Point[] {
  const judge = new Judge(record, job);
  const modules = record.modules ?? [];
  let plans: Choice[][] = [[]];
  for (const module of modules) {
    const choices = judge.choices(module);
    plans = plans.flatMap((plan) => choices.map((choice) => [...plan, choice]));
  }
  return plans.flatMap((plan) => judge.point(modules, plan) ?? []);
}

const beats = (a: Point, b: Point): boolean =>
  a.cost <= b.cost &&
  a.value >= b.value &&
  a.touched <= b.touched &&
  (a.cost < b.cost || a.value > b.value || a.touched < b.touched);

const text = (point: Point): string => `${point.cost} ${point.value.toFixed(3)} ${point.touched}`;

const frontByHand = (points: Point[]): string[] =>
  [...new Set(points.filter((point) => !points.some((other) => beats(other, point))).map(text))].sort();

describe("the front against every plan there is", () => {
  for (const family of FAMILIES)
    it(`is exactly the set of unbeaten plans on ${COACHES} seeded coaches of up to three modules and twelve loads: ${family}`, () => {
      let points = 0;
      let plans = 0;
      for (let seed = 1; seed <= COACHES; seed++) {
        const { record, job } = tinyCoach(seed, family);
        const every = everyPoint(record, job);
        const front = frontOf(indexRecord(record), job, { check: null });
        const got = front.plans.map((plan) =>
          text({ cost: plan.costCents, value: plan.wishValue, touched: plan.modulesTouched }),
        );
        expect([...got].sort(), `${family}, seed ${seed}`).toEqual(frontByHand(every));
        points += got.length;
        plans += every.length;
      }
      // The coaches must be worth trying: many plans each, and more than one point on most fronts.
      expect(plans).toBeGreaterThan(COACHES * 10);
      expect(points).toBeGreaterThan(COACHES * 1.4);
    });
});
