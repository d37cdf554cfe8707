import type { Circuit, CoachRecord, Job, Load, Module, ModuleKind } from "@fusebook/core/record";
import { bitOf, type Does, type Form, type Mode, type Seat, type Slip } from "./plan-moves-words.js";

const SIZES = [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40];
/** Largest device on copper of 60 C insulation at 30 C: NEC 240.4(D) 18 to 10 AWG; the ampacities of 33 CFR 183.425 table 5 are above each of them. */
const CEILINGS: Readonly<Record<string, number>> = {
  "18 AWG": 7,
  "16 AWG": 10,
  "14 AWG": 15,
  "12 AWG": 20,
  "10 AWG": 30,
};
const LAMPS: readonly string[] = ["led-resistor", "led-linear", "filament"];
const SELF_SWITCHED: readonly string[] = ["electronics", "outlet", "fan"];

export const numberOf = (value: unknown): number | undefined =>
  typeof value === "number" ? value : (value as { value: number } | undefined)?.value;

const whole = (minutes: number): number => Math.ceil(minutes - 1e-9);

/**
 * The rules of a plan with moves, written again from the method page for coaches of the tiny generators; no code shared with the planner.
 */
export class MoveRules {
  readonly kinds: readonly ModuleKind[];
  readonly modules: readonly Module[];
  readonly factor: number;
  readonly policy: Required<
    Record<
      | "bankSettingMin"
      | "fuseChangeMin"
      | "moveWithinMin"
      | "moveBetweenMin"
      | "steadyFeedMin"
      | "rewireBaseMin"
      | "rewireMinPerM"
      | "labourRatePerHour",
      number
    >
  > & { steadyFeedParts?: number; rewirePartsPerM?: number };
  private readonly loads: ReadonlyMap<string, Load>;

  constructor(
    readonly record: CoachRecord,
    readonly job: Job,
    readonly slips: ReadonlySet<Slip> = new Set(),
  ) {
    this.kinds = record.moduleKinds ?? [];
    this.modules = record.modules ?? [];
    this.loads = new Map((record.loads ?? []).map((load) => [load.id, load]));
    this.policy = {
      bankSettingMin: 10,
      fuseChangeMin: 2,
      moveWithinMin: 15,
      moveBetweenMin: 45,
      steadyFeedMin: 60,
      rewireBaseMin: 30,
      rewireMinPerM: 5,
      labourRatePerHour: 0,
      ...record.policy,
    };
    const all = record.loads ?? [];
    const weight = (load: Load): number => load.wishWeight ?? 1;
    const nice = all.filter((load) => load.wish === "nice-to-dim").reduce((sum, load) => sum + weight(load), 0);
    const musts = all.filter((load) => load.wish === "must-dim" || load.wish === "must-stay-steady").map(weight);
    let factor = 1;
    while (factor * Math.min(1, ...musts) <= nice) factor *= 10;
    this.factor = factor;
  }

  minutes(minutes: number): number {
    return this.slips.has("part minutes are not begun minutes") ? Math.floor(minutes) : whole(minutes);
  }
  kindOf(module: Module): ModuleKind {
    return this.kinds.find((kind) => kind.id === module.kind)!;
  }
  circuitsOf(module: Module): Circuit[] {
    return (this.record.circuits ?? []).filter((circuit) => circuit.module === module.id);
  }
  loadsOf(circuit: Circuit): Load[] {
    return (circuit.loads ?? []).map((id) => this.loads.get(id)!);
  }
  isRuledOut(means: "moves" | "steady-feeds" | "rewires" | "reuse"): boolean {
    return (this.job.constraints?.rulesOut ?? []).includes(means);
  }
  isLockedModule(module: Module): boolean {
    return module.isLocked === true || (this.job.constraints?.lockedModules ?? []).includes(module.id);
  }
  hasLockedLoad(loads: readonly Load[]): boolean {
    return loads.some((load) => (this.job.constraints?.lockedLoads ?? []).includes(load.id));
  }

  // --- loads
  mustNotDim(load: Load): boolean {
    if (load.wish === "must-stay-steady") return true;
    return load.class !== undefined && load.class !== "led-driver" && !LAMPS.includes(load.class);
  }
  mayDim(load: Load): boolean {
    return load.class !== undefined && LAMPS.includes(load.class) && load.wish !== "must-stay-steady";
  }
  worth(load: Load): number {
    return (load.wishWeight ?? 1) * (load.wish === "nice-to-dim" ? 1 : this.factor);
  }

  // --- modules
  blockChannels(kind: ModuleKind, enables: readonly string[] | undefined): Set<number> {
    const blocks = kind.dimBlocks ?? [];
    return new Set(blocks.filter((block) => enables?.includes(block.id) ?? true).flatMap((block) => block.channels));
  }
  modeOf(does: Does, channel: number): Mode {
    if (channel > does.kind.channels) return "none";
    if (!this.blockChannels(does.kind, does.enables).has(channel)) return "switches";
    return does.enables === undefined ? "unread" : "dims";
  }
  settingsOf(kind: ModuleKind): string[][] {
    if (kind.bank?.options !== undefined) return kind.bank.options.map((option) => [...option.enables]);
    return (kind.dimBlocks ?? []).reduce<string[][]>(
      (sets, block) => sets.flatMap((set) => [set, [...set, block.id]]),
      [[]],
    );
  }
  found(module: Module): readonly string[] | undefined {
    const kind = this.kindOf(module);
    if ((kind.dimBlocks ?? []).length === 0) return [];
    if (module.positionsFound === undefined || kind.bank === undefined) return undefined;
    const set = ["b1", "b2"].filter((_, i) => module.positionsFound?.[2 + i] === "1");
    const listed = kind.bank.options?.some(
      (option) => option.enables.length === set.length && option.enables.every((block) => set.includes(block)),
    );
    return listed ? set : undefined;
  }
  /** Everything that can be done with a module, what breaks a rule of the module itself included. */
  doings(module: Module): Does[] {
    const present = this.kindOf(module);
    const found: Does = {
      kind: present,
      enables: this.found(module),
      isReplaced: false,
      isTouched: false,
      broken: 0,
      minutes: 0,
    };
    const doings = [found];
    const locked = this.isLockedModule(module) ? bitOf("locked module") : 0;
    for (const kind of this.kinds) {
      const isSame = kind.id === present.id;
      const isReplaced = !isSame || module.isDead === true;
      let broken = locked;
      if (isReplaced) {
        if ((this.job.constraints?.forbiddenKinds ?? []).includes(kind.id))
          broken |= bitOf("kind ruled out by the job");
        const fits = kind.fitsInPlaceOf;
        if (kind.channels < present.channels) continue;
        if (!isSame && fits !== undefined && !fits.includes(present.id))
          broken |= bitOf("kind does not take the position");
        if (kind.side !== undefined && present.side !== undefined && kind.side !== present.side)
          broken |= bitOf("other pole switched");
      } else if ((kind.dimBlocks ?? []).length === 0) continue;
      for (const enables of this.settingsOf(kind)) {
        const on = this.blockChannels(kind, enables);
        const isUnlisted = [...on].some(
          (channel) =>
            channel <= present.channels && !this.circuitsOf(module).some((circuit) => circuit.channel === channel),
        );
        doings.push({
          kind,
          enables,
          isReplaced,
          isTouched: true,
          broken: broken | (isUnlisted ? bitOf("channel not on record") : 0),
          minutes: isReplaced ? this.minutes(numberOf(kind.installMin) ?? 0) : this.minutes(this.policy.bankSettingMin),
        });
      }
    }
    return doings;
  }

  // --- circuits
  private form(circuit: Circuit, kept: readonly Load[], fed: readonly Load[], broken: number): Form {
    const amps = kept.map((load) => numberOf(load.currentA));
    const isKnown = amps.every((each) => each !== undefined) && (kept.length > 0 || fed.length > 0);
    const sum = amps.reduce((total: number, each) => total + (each ?? 0), 0);
    const needA = kept.reduce(
      (total, load) => total + (numberOf(load.currentA) ?? 0) * (load.isContinuous ? 1.25 : 1),
      0,
    );
    const parts = this.slips.has("steady feeds have no parts")
      ? 0
      : Math.round((this.policy.steadyFeedParts ?? 0) * 100);
    return {
      circuit,
      kept,
      fed,
      broken,
      minutes: fed.length * this.minutes(this.policy.steadyFeedMin),
      cents: fed.length * parts,
      wires: this.slips.has("a steady feed is no moved wire") ? 0 : fed.length,
      highA: isKnown ? sum : numberOf(circuit.fuse?.ratedA),
      needA: isKnown ? needA : undefined,
      fedA: this.slips.has("what a load on a feed draws is forgotten")
        ? 0
        : fed.reduce((total, load) => total + (numberOf(load.currentA) ?? 0), 0),
    };
  }
  /** What keeps hands off this circuit's wires: a lock, a detector, another circuit on its channel. */
  untouchable(circuit: Circuit): number {
    const home = this.modules.find((module) => module.id === circuit.module)!;
    const loads = this.loadsOf(circuit);
    let broken = 0;
    if (loads.some((load) => load.class === "detector")) broken |= bitOf("detector not moved");
    if (this.isLockedModule(home)) broken |= bitOf("locked module");
    if ((this.job.constraints?.lockedCircuits ?? []).includes(circuit.id) || this.hasLockedLoad(loads))
      broken |= bitOf("locked circuit or load");
    if (this.circuitsOf(home).filter((other) => other.channel === circuit.channel).length > 1)
      broken |= bitOf("channel shared");
    return broken;
  }
  /** The circuit as it is, and with its steady loads on feeds of their own where there are such loads and the rest may dim. */
  forms(circuit: Circuit): Form[] {
    const loads = this.loadsOf(circuit);
    const forms = [this.form(circuit, loads, [], 0)];
    const fed = loads.filter((load) => this.mustNotDim(load));
    const kept = loads.filter((load) => !fed.includes(load));
    if (fed.length === 0 || fed.some((load) => load.class === "detector")) return forms;
    if (loads.some((load) => load.currentA === undefined) || !kept.every((load) => this.mayDim(load))) return forms;
    let broken = this.untouchable(circuit);
    const mayFeed = (load: Load): boolean =>
      load.maySteadyFeed ?? (load.hasOwnSwitch === true && SELF_SWITCHED.includes(load.class ?? ""));
    if (!fed.every(mayFeed)) broken |= bitOf("steady feed not allowed");
    if (this.isRuledOut("steady-feeds")) broken |= bitOf("means ruled out by the job");
    for (const load of fed) {
      const need = numberOf(load.currentA)! * (load.isContinuous ? 1.25 : 1);
      // A wire of unknown size carries no new fuse.
      const wireA = circuit.out === undefined ? 0 : CEILINGS[String(circuit.out.gauge)]!;
      const most = Math.min(wireA, numberOf(circuit.fuse?.ratedA) ?? 99, numberOf(load.maxFuseA) ?? 99);
      if (!SIZES.some((size) => size >= need && size <= most)) broken |= bitOf("fuse over channel, load or wire");
    }
    forms.push(this.form(circuit, kept, fed, broken));
    return forms;
  }
  /** What forbids that this circuit goes anywhere else. */
  mayMove(circuit: Circuit): number {
    let broken = this.untouchable(circuit);
    if (circuit.canMove !== true) broken |= bitOf("circuit may not move");
    const isFixed = (this.record.controls ?? []).some(
      (control) =>
        control.program === "fixed" && (control.does ?? []).some((does) => (does.circuits ?? []).includes(circuit.id)),
    );
    if (isFixed) broken |= bitOf("program fixed");
    if (this.isRuledOut("moves")) broken |= bitOf("means ruled out by the job");
    return broken;
  }

  /** What a channel that dims asks of the loads on it. */
  private dimming(form: Form, kind: ModuleKind, channelA: number | undefined): number {
    let broken = 0;
    if (form.kept.length === 0) return 0;
    if (form.kept.some((load) => this.mustNotDim(load))) broken |= bitOf("load that must not dim");
    if (form.kept.some((load) => !this.mustNotDim(load) && !this.mayDim(load))) broken |= bitOf("load that is unknown");
    const ratedA = numberOf(kind.ratedDimmedA);
    if (channelA === undefined || ratedA === undefined || channelA > ratedA) broken |= bitOf("dimmed rating");
    return broken;
  }
  private dimmed(form: Form): number {
    return form.kept.reduce(
      (sum, load) =>
        sum + (this.mayDim(load) && (load.wish === "must-dim" || load.wish === "nice-to-dim") ? this.worth(load) : 0),
      0,
    );
  }
  /** Ways to make the fuse fit the kind: none needed, a smaller one, or a smaller one and a thicker wire. */
  private fuses(
    form: Form,
    kind: ModuleKind,
  ): Pick<Seat, "broken" | "minutes" | "cents" | "wires" | "changesFuse" | "rewires">[] {
    const none = { broken: 0, minutes: 0, cents: 0, wires: 0, changesFuse: false, rewires: false };
    const fuse = numberOf(form.circuit.fuse?.ratedA);
    const channelA = numberOf(kind.maxFuseA)!;
    if (fuse === undefined || fuse <= channelA) return [none];
    const unfit = [{ ...none, broken: bitOf("fuse over channel, load or wire") }];
    if (form.needA === undefined) return unfit;
    const needA = form.needA;
    const change = this.slips.has("changed fuses take no time") ? 0 : this.minutes(this.policy.fuseChangeMin);
    const most = Math.min(channelA, fuse, ...form.kept.map((load) => numberOf(load.maxFuseA) ?? 99));
    const wire = form.circuit.out;
    const gauge = wire === undefined ? undefined : String(wire.gauge);
    const carries = (size: number): boolean => gauge === undefined || size <= CEILINGS[gauge]!;
    if (SIZES.some((size) => size <= most && size >= needA && carries(size)))
      return [{ ...none, minutes: change, changesFuse: true }];
    const lengthM = numberOf(wire?.lengthM);
    if (!SIZES.some((size) => size <= most && size >= needA) || gauge === undefined || lengthM === undefined)
      return unfit;
    const perM = this.slips.has("a rewire takes no time for its length") ? 0 : this.policy.rewireMinPerM;
    return [
      {
        broken: this.untouchable(form.circuit) | (this.isRuledOut("rewires") ? bitOf("means ruled out by the job") : 0),
        minutes: change + this.minutes(this.policy.rewireBaseMin + perM * lengthM),
        cents: Math.round((this.policy.rewirePartsPerM ?? 0) * lengthM * 100),
        wires: 1,
        changesFuse: true,
        rewires: true,
      },
    ];
  }

  /** The circuit stays on its channel under what is done with its module. `othersA`: what shares the channel with it. */
  staying(form: Form, module: Module, does: Does, othersA: number | undefined): Seat[] {
    const none: Seat = { broken: 0, minutes: 0, cents: 0, wires: 0, value: 0, changesFuse: false, rewires: false };
    const mode = this.modeOf(does, form.circuit.channel!);
    const channelA = form.highA === undefined || othersA === undefined ? undefined : form.highA + othersA;
    if (!does.isTouched) {
      // Loads are fed apart so that the rest dims, not for anything else.
      if (form.fed.length > 0 && (module.isDead || mode !== "dims")) return [];
      if (module.isDead || mode === "switches") return [none];
      const asked = form.kept.filter((load) => load.wish === "must-stay-steady");
      const lost = this.slips.has("spoiled loads count nothing") ? 0 : 1;
      if (mode === "unread")
        return [{ ...none, value: -lost * asked.reduce((sum, load) => sum + this.worth(load), 0) }];
      const isWithin = channelA !== undefined && channelA <= (numberOf(does.kind.ratedDimmedA) ?? -1);
      const spoiled = form.kept
        .filter((load) => this.mustNotDim(load))
        .reduce((sum, load) => sum + (load.wish === "must-stay-steady" ? this.worth(load) : this.factor), 0);
      return [{ ...none, value: (isWithin ? this.dimmed(form) : 0) - lost * spoiled }];
    }
    const dims = mode === "dims";
    if (form.fed.length > 0 && !dims) return [];
    const broken = dims ? this.dimming(form, does.kind, channelA) : 0;
    const value = dims ? this.dimmed(form) : 0;
    if (!does.isReplaced) return [{ ...none, broken, value }];
    return this.carried(form, does.kind, channelA, broken, value);
  }
  private carried(form: Form, kind: ModuleKind, channelA: number | undefined, broken: number, value: number): Seat[] {
    const isOver = channelA === undefined || channelA > numberOf(kind.ratedSwitchedA)!;
    const switched = isOver ? bitOf("switched rating") : 0;
    return this.fuses(form, kind).map((fuse) => ({ ...fuse, broken: fuse.broken | broken | switched, value }));
  }
  /** The circuit arrives on a channel of this mode. */
  arriving(form: Form, from: ModuleKind, target: Module, does: Does, mode: Mode): Seat[] {
    let broken = 0;
    if (mode === "unread") broken |= bitOf("setting not read");
    if (from.side !== undefined && does.kind.side !== undefined && from.side !== does.kind.side)
      broken |= bitOf("other pole switched");
    if (this.isLockedModule(target)) broken |= bitOf("locked module");
    if (target.isDead && !does.isReplaced) broken |= bitOf("dead module kept");
    const dims = mode === "dims";
    if (form.fed.length > 0 && !dims) return [];
    if (dims) broken |= this.dimming(form, does.kind, form.highA);
    const seats = this.carried(form, does.kind, form.highA, broken, dims ? this.dimmed(form) : 0);
    if (!this.slips.has("the arriving fuse is not looked at")) return seats;
    return seats.map((seat) => ({ ...seat, broken: seat.broken & ~bitOf("fuse over channel, load or wire") }));
  }
}
