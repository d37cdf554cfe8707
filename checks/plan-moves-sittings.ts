import type { Circuit, CoachRecord, FixedChoice, Job, Module } from "@fusebook/core/record";
import { means } from "./plan-moves-points.js";
import { MoveRules, numberOf } from "./plan-moves-rules.js";
import { bitOf, type Does, type Form, type Mode, type Seat, type Slip } from "./plan-moves-words.js";

/** One way in which a circuit may sit, under one combination of what is done with the modules. */
export interface Option {
  readonly broken: number;
  /** Goes where its circuit, or this circuit, may not go: one such at a time is looked at. */
  readonly isTempted: boolean;
  readonly isMoved: boolean;
  readonly fedCount: number;
  readonly used: number;
  readonly minutes: number;
  readonly cents: number;
  readonly wires: number;
  readonly value: number;
  /** Module by place in the record; -1: on no channel. */
  readonly at: number;
  readonly channelBit: number;
  readonly highA: number;
  readonly isUnknownA: boolean;
  readonly fedA: number;
  readonly home: number;
  readonly opens: number;
}

const NOWHERE: Seat = { broken: 0, minutes: 0, cents: 0, wires: 0, value: 0, changesFuse: false, rewires: false };
const isGone = (form: Form): boolean => form.kept.length === 0 && form.fed.length > 0;
export const single = (mask: number): boolean => (mask & (mask - 1)) === 0;

/** Every way in which each circuit may sit, and everything that can be done with each module. */
export class Sittings {
  readonly rules: MoveRules;
  protected readonly modules: readonly Module[];
  protected readonly circuits: readonly { circuit: Circuit; home: number; mayMove: number; isTempting: boolean }[];
  protected readonly forms: readonly (readonly Form[])[];
  protected readonly free: readonly ReadonlySet<number>[];
  protected readonly places: readonly string[];
  protected readonly foundA: readonly { sumA: number; isUnknown: boolean }[];

  constructor(
    readonly record: CoachRecord,
    readonly job: Job,
    readonly slips: ReadonlySet<Slip> = new Set(),
  ) {
    this.rules = new MoveRules(record, job, slips);
    this.modules = this.rules.modules;
    this.places = (record.places ?? []).map((place) => place.id);
    const circuits = this.modules.flatMap((module, home) =>
      this.rules
        .circuitsOf(module)
        .filter((circuit) => circuit.isSpare !== true)
        .map((circuit) => {
          const mayMove = this.rules.mayMove(circuit);
          return {
            circuit,
            home,
            mayMove,
            isTempting: single(mayMove) && (circuit.canMove === true || (circuit.reach ?? []).length > 0),
          };
        }),
    );
    this.circuits = circuits;
    this.forms = circuits.map(({ circuit }) => this.rules.forms(circuit));
    this.free = this.modules.map(
      (module) =>
        new Set(
          this.rules
            .circuitsOf(module)
            .filter((circuit) => circuit.isSpare === true)
            .map((circuit) => circuit.channel!),
        ),
    );
    this.foundA = this.modules.map((_, m) => {
      const highs = circuits.flatMap(({ home }, c) => (home === m ? [this.forms[c]![0]!.highA] : []));
      return {
        sumA: highs.reduce((sum: number, high) => sum + (high ?? 0), 0),
        isUnknown: highs.some((high) => high === undefined),
      };
    });
  }

  protected opensOf(module: number): number {
    let mask = 0;
    for (let place = this.modules[module]!.place as string | undefined; place !== undefined; ) {
      mask |= 1 << this.places.indexOf(place);
      place = this.record.places?.find((each) => each.id === place)?.within;
    }
    return mask;
  }
  protected option(
    form: Form,
    home: number,
    at: number,
    channel: number,
    seat: Seat,
    broken: number,
    isTempted: boolean,
    used: number,
    moveMin: number,
  ): Option {
    const isOff = at < 0;
    const wires = form.wires + seat.wires + (moveMin >= 0 ? 1 : 0);
    const isWork = form.fed.length > 0 || seat.wires > 0 || moveMin >= 0;
    const ends = isOff || this.slips.has("moves open no place where they end") ? 0 : this.opensOf(at);
    return {
      broken: broken | form.broken | seat.broken,
      isTempted,
      isMoved: moveMin >= 0,
      fedCount: form.fed.length,
      used:
        used |
        (form.fed.length > 0 ? means("steady feed") : 0) |
        (seat.rewires ? means("conductor upgrade") : 0) |
        (seat.changesFuse ? means("fuse changed") : 0),
      minutes: form.minutes + seat.minutes + Math.max(0, moveMin),
      cents: form.cents + seat.cents,
      wires,
      value: seat.value,
      at,
      channelBit: isOff ? 0 : 1 << channel,
      highA: isOff ? 0 : (form.highA ?? 0),
      isUnknownA: !isOff && form.highA === undefined,
      fedA: form.fedA,
      home,
      opens: isWork ? this.opensOf(home) | ends : 0,
    };
  }

  protected readonly known = new Map<Does, Map<number, readonly Option[]>>();

  /** Every way in which this circuit may sit while these things are done with the modules. */
  protected optionsOf(c: number, doings: readonly Does[]): Option[] {
    const { home } = this.circuits[c]!;
    return doings.flatMap((does, t) => {
      const of = this.known.get(does) ?? new Map<number, readonly Option[]>();
      this.known.set(does, of);
      const options =
        of.get(c) ??
        [...(t === home ? this.stays(c, does) : []), ...this.arrivals(c, t, does)].filter((option) =>
          single(option.broken),
        );
      of.set(c, options);
      return options;
    });
  }
  protected stays(c: number, does: Does): Option[] {
    const { circuit, home } = this.circuits[c]!;
    const beside = this.circuits.flatMap((other, i) =>
      i !== c && other.home === home && other.circuit.channel === circuit.channel ? [this.forms[i]![0]!.highA] : [],
    );
    const othersA = beside.some((high) => high === undefined)
      ? undefined
      : beside.reduce((sum: number, high) => sum + high!, 0);
    const mode = this.rules.modeOf(does, circuit.channel!);
    return this.forms[c]!.flatMap((form) => {
      if (isGone(form))
        return [this.option(form, home, -1, 0, NOWHERE, this.fixedAt(circuit, -1, "none"), false, 0, -1)];
      return this.rules
        .staying(form, this.modules[home]!, does, othersA)
        .map((seat) =>
          this.option(form, home, home, circuit.channel!, seat, this.fixedAt(circuit, home, mode), false, 0, -1),
        );
    });
  }
  protected arrivals(c: number, t: number, does: Does): Option[] {
    const { circuit, home, mayMove, isTempting } = this.circuits[c]!;
    if (mayMove !== 0 && !isTempting) return [];
    const target = this.modules[t]!;
    const isOwn = t === home;
    const isInReach = isOwn || (circuit.reach ?? []).some((id) => id === target.id);
    const barred = mayMove | (isInReach ? 0 : bitOf("out of reach"));
    const isNear = isOwn || this.slips.has("a neighbour costs no more than the own module");
    const moveMin = this.rules.minutes(isNear ? this.rules.policy.moveWithinMin : this.rules.policy.moveBetweenMin);
    const wired = this.rules.kindOf(target).channels;
    const from = this.rules.kindOf(this.modules[home]!);
    const options: Option[] = [];
    for (let channel = 1; channel <= does.kind.channels; channel++) {
      if (isOwn && channel === circuit.channel) continue;
      const isSpare = this.free[t]!.has(channel);
      const isOwned = this.circuits.some((other) => other.home === t && other.circuit.channel === channel);
      // Within the harness a channel that the record does not list is one that nobody looked at.
      if (!isSpare && !isOwned && channel <= wired) continue;
      const mode = this.rules.modeOf(does, channel);
      const used =
        means(isOwn ? "move within a module" : "move to a neighbour") |
        means(
          isSpare
            ? "move to a spare channel"
            : isOwned
              ? "move to a channel that was left"
              : "move beyond the old channels",
        );
      const broken = barred | this.fixedAt(circuit, t, mode);
      for (const form of this.forms[c]!)
        if (!isGone(form))
          for (const seat of this.rules.arriving(form, from, target, does, mode))
            options.push(this.option(form, home, t, channel, seat, broken, barred !== 0, used, moveMin));
    }
    return options;
  }

  // --- choices made beforehand
  protected choices: readonly FixedChoice[] = [];

  protected sitsSo(choice: FixedChoice, at: number, mode: Mode): boolean {
    return (
      (choice.toModule === undefined || (at >= 0 && this.modules[at]!.id === choice.toModule)) &&
      (choice.isDimmed === undefined || choice.isDimmed === (mode === "dims"))
    );
  }
  protected doesSo(choice: FixedChoice, does: Does): boolean {
    const { enables } = choice;
    const on = does.enables ?? [];
    return (
      (choice.kind === undefined || choice.kind === does.kind.id) &&
      (enables === undefined || (on.length === enables.length && enables.every((block) => on.includes(block))))
    );
  }
  protected fixedAt(circuit: Circuit, at: number, mode: Mode): number {
    const isBroken = this.choices.some(
      (choice) => choice.circuit === circuit.id && this.sitsSo(choice, at, mode) === (choice.isForbidden === true),
    );
    return isBroken ? bitOf("fixed or forbidden choice") : 0;
  }
  protected fixedOn(module: Module, does: Does): number {
    const isBroken = this.choices.some(
      (choice) => choice.module === module.id && this.doesSo(choice, does) === (choice.isForbidden === true),
    );
    return isBroken ? bitOf("fixed or forbidden choice") : 0;
  }
  /** Choices that nothing on this coach can meet are told and left out; the rest hold, in their order. */
  protected hear(doings: readonly (readonly Does[])[]): void {
    this.choices = [];
    for (const choice of this.job.constraints?.fixedChoices ?? []) {
      const before = this.choices;
      this.known.clear();
      this.choices = [...before, choice];
      const isMet = doings.some((list, m) =>
        list.some((does) => {
          if (does.broken !== 0 || this.fixedOn(this.modules[m]!, does) !== 0 || !this.isPattern(m, does)) return false;
          if (choice.module !== undefined) return choice.module === this.modules[m]!.id;
          return this.circuits.some(
            ({ circuit, home }, c) =>
              circuit.id === choice.circuit &&
              [...(m === home ? this.stays(c, does) : []), ...this.arrivals(c, m, does)].some(
                (option) => option.broken === 0,
              ),
          );
        }),
      );
      if (!isMet) this.choices = before;
    }
    this.known.clear();
  }

  // --- what may be done with a module
  protected hasChoice(c: number): boolean {
    return this.circuits[c]!.mayMove === 0 || this.forms[c]!.some((form) => form.fed.length > 0 && form.broken === 0);
  }
  /** May this be done with the module as far as the circuits go that have no choice? */
  protected isPattern(m: number, does: Does): boolean {
    const fixed = this.circuits.flatMap(({ home }, c) => (home === m && !this.hasChoice(c) ? [c] : []));
    const sumA = fixed.reduce((sum, c) => sum + (this.forms[c]![0]!.highA ?? 0), 0);
    return (
      (!does.isReplaced || (this.mightBeHad(does) && sumA <= numberOf(does.kind.ratedTotalA)!)) &&
      fixed.every((c) =>
        this.stays(c, does).some((option) => (option.broken & ~bitOf("fixed or forbidden choice")) === 0),
      )
    );
  }
  /** A dead module may stay only where nothing can be fitted with everything staying on its channel, no wire changed. */
  protected isReplaceable(m: number, doings: readonly Does[]): boolean {
    const own = this.circuits.flatMap(({ home }, c) => (home === m ? [c] : []));
    const sumA = own.reduce((sum, c) => sum + (this.forms[c]![0]!.highA ?? 0), 0);
    return doings.some(
      (does) =>
        does.isReplaced &&
        does.broken === 0 &&
        this.mightBeHad(does) &&
        sumA <= numberOf(does.kind.ratedTotalA)! &&
        own.every((c) => this.stays(c, does).some((option) => option.broken === 0 && option.wires === 0)),
    );
  }
  protected mightBeHad({ kind }: Does): boolean {
    const mayFree = this.modules.some(
      (module) => module.kind === kind.id && !module.isDead && !this.rules.isLockedModule(module),
    );
    return kind.isObtainable !== false || (kind.inStock ?? 0) > 0 || (mayFree && !this.rules.isRuledOut("reuse"));
  }
}
