import type { CoachRecord } from "@fusebook/core/record";
import { MEANS, type Means, means, type Point, Points } from "./plan-moves-points.js";
import { numberOf } from "./plan-moves-rules.js";
import { type Option, Sittings, single } from "./plan-moves-sittings.js";
import { bitOf, type Does, RULES } from "./plan-moves-words.js";

interface Limit {
  readonly rule: number;
  /** What the modules may draw together. */
  readonly leftA: number;
  readonly modules: readonly number[];
}

export interface Every {
  /** The unbeaten plans that keep to every rule. */
  readonly front: Points;
  /** For each rule: the front without it, where that differs. */
  readonly without: ReadonlyMap<string, Points>;
  /** Means without which the front would be another. */
  readonly wanted: ReadonlySet<Means>;
  /** Plans that keep to every rule. */
  readonly plans: number;
}

/** What a plan says of a module. */
export interface Told {
  readonly module: string;
  readonly isTouched: boolean;
  readonly isReplaced: boolean;
  readonly enables: readonly string[];
}

const sameBlocks = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((block) => b.includes(block));

/** Lists every plan of a tiny coach and keeps the unbeaten ones. */
export class Lister extends Sittings {
  private readonly limits = this.limitsOf();
  private readonly doings = this.doingsOf();

  private limitsOf(): Limit[] {
    const limits: Limit[] = [];
    const plain = (this.record.circuits ?? []).filter((circuit) => circuit.fusePosition !== undefined);
    const add = (rule: number, ratedA: number | undefined, node: string): void => {
      const feeds = (at: string | undefined): boolean => node === "bus" || at === node;
      const modules = this.modules.flatMap((module, m) => (feeds(module.feedNode) ? [m] : []));
      if (ratedA === undefined || modules.length === 0) return;
      const loose = plain
        .filter((circuit) => feeds(circuit.fusePosition?.node))
        .map((circuit) => numberOf(this.rules.loadsOf(circuit)[0]?.currentA));
      const besideA = loose.reduce((sum: number, each) => sum + (each ?? 0), 0);
      const found = besideA + modules.reduce((sum, m) => sum + this.foundA[m]!.sumA, 0);
      // Where a current is not known, no more than as found.
      const isUnknown = loose.includes(undefined) || modules.some((m) => this.foundA[m]!.isUnknown);
      limits.push({ rule, leftA: (isUnknown ? found : Math.max(ratedA, found)) - besideA, modules });
    };
    for (const node of this.record.nodes ?? []) add(bitOf("bar limit"), numberOf(node.ratedA), node.id);
    for (const cable of this.record.cables ?? [])
      add(bitOf("feeder limit"), numberOf(cable.protection?.ratedA), cable.to);
    return limits;
  }

  private readonly isolation = (): number => {
    if (this.slips.has("isolation opens nothing")) return 0;
    let mask = 0;
    for (const supply of this.record.supplies ?? [])
      for (let place = (supply.isolation?.place ?? supply.place) as string | undefined; place !== undefined; ) {
        mask |= 1 << this.places.indexOf(place);
        place = this.record.places?.find((each) => each.id === place)?.within;
      }
    return mask;
  };

  /** Everything that can be done with each module, the choices made beforehand and dead modules minded. */
  private doingsOf(): Does[][] {
    this.choices = [];
    const doings = this.modules.map((module) => this.rules.doings(module));
    const living = doings.map((list, m) =>
      this.modules[m]!.isDead && this.isReplaceable(m, list)
        ? list.map((does) => (does.isReplaced ? does : { ...does, broken: does.broken | bitOf("dead module kept") }))
        : list,
    );
    this.hear(living);
    return living.map((list, m) =>
      list.map((does) => ({ ...does, broken: does.broken | this.fixedOn(this.modules[m]!, does) })),
    );
  }

  /** `looksBeyond`: also what the front would be without each rule. */
  every(looksBeyond = true): Every {
    const each = this.doings;
    const found = new Map<number, Points>();
    const byRule = new Map<number, Points>();
    const tally = { plans: 0 };
    const combine = (chosen: Does[], broken: number, list: (chosen: readonly Does[], broken: number) => void): void => {
      if (!single(broken)) return;
      if (chosen.length === each.length) list(chosen, broken);
      else for (const does of each[chosen.length]!) combine([...chosen, does], broken | does.broken, list);
    };
    combine([], 0, (chosen, broken) => {
      if (broken === 0) this.list(chosen, 0, undefined, found, tally);
    });
    const front = new Points();
    for (const points of found.values()) front.addAll(points.kept);
    const text = front.text().join("; ");
    // A second time, to see what one broken rule would gain: there what cannot gain is not looked at.
    if (looksBeyond) combine([], 0, (chosen, broken) => this.list(chosen, broken, front, byRule, tally));
    const without = new Map<string, Points>();
    for (const [bit, points] of byRule) {
      const all = new Points();
      all.addAll(front.kept);
      all.addAll(points.kept);
      if (all.text().join("; ") !== text) without.set(RULES[Math.log2(bit)]!, all);
    }
    const wanted = new Set<Means>();
    MEANS.forEach((name, i) => {
      const rest = new Points();
      for (const [used, points] of found) if ((used & (1 << i)) === 0) rest.addAll(points.kept);
      if (rest.text().join("; ") !== text) wanted.add(name);
    });
    return { front, without, wanted, plans: tally.plans };
  }

  /** Adds every plan with these doings: those that keep to every rule, or (`beyond` given) those that break exactly one and are not beaten by `beyond`. */
  private list(
    doings: readonly Does[],
    broken: number,
    beyond: Points | undefined,
    into: Map<number, Points>,
    tally: { plans: number },
  ): void {
    const options = this.circuits.map((_, c) => {
      const all = this.optionsOf(c, doings);
      return beyond === undefined ? all.filter((option) => option.broken === 0) : all;
    });
    if (options.some((list) => list.length === 0)) return;
    options.sort((a, b) => a.length - b.length);
    const mostValue = options.map((list) => Math.max(...list.map((option) => option.value)));
    const restValue = options.map((_, at) => mostValue.slice(at).reduce((sum, value) => sum + value, 0));
    const { score, least } = this.scorerOf(doings);
    const chosen: Option[] = [];
    const taken = this.modules.map(() => 0);
    const shared = this.sharedBits();
    const sit = (
      at: number,
      mask: number,
      isTempted: boolean,
      cents: number,
      min: number,
      value: number,
      wires: number,
    ): void => {
      const list = options[at];
      if (list === undefined) {
        const scored = score(chosen, mask);
        if (scored === undefined || (scored.broken === 0) !== (beyond === undefined)) return;
        const key = beyond === undefined ? scored.used : scored.broken;
        if (beyond === undefined) tally.plans++;
        let points = into.get(key);
        if (points === undefined) {
          points = new Points();
          into.set(key, points);
        }
        points.add(scored.point);
        return;
      }
      if (beyond?.covers([least(cents, min), value + restValue[at]!, wires])) return;
      for (const option of list) {
        const all = mask | option.broken;
        if (!single(all) || (isTempted && option.isTempted)) continue;
        const bit = option.channelBit;
        if (option.at >= 0) {
          const isShared = (shared[option.at]! & bit) !== 0;
          if (isShared ? option.isMoved : (taken[option.at]! & bit) !== 0) continue;
        }
        const before = option.at >= 0 ? taken[option.at]! : 0;
        if (option.at >= 0) taken[option.at] = before | bit;
        chosen.push(option);
        sit(
          at + 1,
          all,
          isTempted || option.isTempted,
          cents + option.cents,
          min + option.minutes,
          value + option.value,
          wires + option.wires,
        );
        chosen.pop();
        if (option.at >= 0) taken[option.at] = before;
      }
    };
    sit(0, broken, false, 0, 0, 0, 0);
  }
  private sharedBits(): number[] {
    return this.modules.map((_, m) => {
      let once = 0;
      let twice = 0;
      for (const { circuit, home } of this.circuits)
        if (home === m) {
          twice |= once & (1 << circuit.channel!);
          once |= 1 << circuit.channel!;
        }
      return twice;
    });
  }

  /** Rules and money of a whole plan. */
  private scorerOf(doings: readonly Does[]): {
    score(chosen: readonly Option[], mask: number): { point: Point; used: number; broken: number } | undefined;
    /** No plan with these doings and at least these cents and minutes beside them costs less. */
    least(cents: number, min: number): number;
  } {
    const { rules, slips } = this;
    const count = this.modules.length;
    let baseUsed = 0;
    let minutes = 0;
    let opened = 0;
    const wantedParts = new Map<string, number>();
    doings.forEach((does, m) => {
      minutes += does.minutes;
      if (!does.isTouched) return;
      opened |= this.opensOf(m);
      baseUsed |= means(does.isReplaced ? "module replaced" : "bank set anew");
      if (does.kind.id === "E5" && (does.enables ?? []).length > 0) baseUsed |= means("channel set by itself");
      if (!does.isReplaced) return;
      wantedParts.set(does.kind.id, (wantedParts.get(does.kind.id) ?? 0) + 1);
    });
    let partsCents = 0;
    let broken = 0;
    const isPriced = rules.kinds.some((kind) => kind.price !== undefined);
    for (const [id, wanted] of wantedParts) {
      const kind = rules.kinds.find((each) => each.id === id)!;
      const freed =
        rules.isRuledOut("reuse") || slips.has("freed modules are paid for")
          ? 0
          : doings.filter(
              (does, m) =>
                does.isReplaced &&
                this.modules[m]!.kind === id &&
                (slips.has("dead modules are freed") || !this.modules[m]!.isDead),
            ).length;
      const stock = slips.has("stock is paid for") ? 0 : (kind.inStock ?? 0);
      if (stock > 0) baseUsed |= means("stock on hand");
      if (freed > 0 && wanted > stock) baseUsed |= means("freed module reused");
      const bought = Math.max(0, wanted - stock - freed);
      if (bought > 0 && (kind.isObtainable === false || (kind.price === undefined && isPriced)))
        broken |= bitOf("kind not to be had");
      partsCents += bought * Math.round((kind.price ?? 0) * 100);
    }
    const rate = Math.round(rules.policy.labourRatePerHour * 100);
    const { budget, maxMinutes } = this.job.constraints ?? {};
    const access = (this.record.places ?? []).map((place) => rules.minutes(numberOf(place.accessMin) ?? 0));
    const isolation = this.isolation();
    const totals = doings.map((does, m) => {
      const ratedA = numberOf(does.kind.ratedTotalA)!;
      const { sumA, isUnknown } = this.foundA[m]!;
      return does.isReplaced ? ratedA : isUnknown ? sumA : Math.max(ratedA, sumA);
    });
    const sumA = new Array<number>(count).fill(0);
    const fedA = new Array<number>(count).fill(0);
    const score = (chosen: readonly Option[], mask: number) => {
      let all = mask | broken;
      if (!single(all)) return undefined;
      let cents = partsCents;
      let min = minutes;
      let open = opened;
      let wires = 0;
      let value = 0;
      let used = baseUsed;
      sumA.fill(0);
      fedA.fill(0);
      let works = 0;
      for (const option of chosen) {
        cents += option.cents;
        min += option.minutes;
        open |= option.opens;
        wires += option.wires;
        value += option.value;
        used |= option.used;
        if (option.opens !== 0) works++;
        if (option.at >= 0) sumA[option.at] = sumA[option.at]! + option.highA;
        fedA[option.home] = fedA[option.home]! + option.fedA;
        if (option.minutes > 0 || option.wires > 0) works++;
      }
      for (let m = 0; m < count; m++) if (sumA[m]! > totals[m]!) all |= bitOf("module total");
      for (const limit of this.limits) {
        let sum = 0;
        for (const m of limit.modules) sum += sumA[m]! + fedA[m]!;
        if (sum > limit.leftA) all |= limit.rule;
      }
      if (!single(all)) return undefined;
      if (works > 0 || doings.some((does) => does.isTouched)) open |= isolation;
      if (slips.has("access is paid for each module"))
        doings.forEach((does, m) => {
          if (does.isTouched)
            for (let i = 0; i < access.length; i++) min += (this.opensOf(m) >> i) & 1 ? access[i]! : 0;
        });
      else for (let i = 0; i < access.length; i++) if ((open >> i) & 1) min += access[i]!;
      cents += Math.round((min * rate) / 60);
      if (budget !== undefined && cents > budget * 100) all |= bitOf("budget");
      if (maxMinutes !== undefined && min > maxMinutes) all |= bitOf("limit on minutes");
      if (!single(all)) return undefined;
      const point: Point = [cents, value, wires];
      return { point, used, broken: all };
    };
    return { score, least: (cents, min) => partsCents + cents + Math.round(((minutes + min) * rate) / 60) };
  }

  /**
   * What the record after a plan costs, gives and moves, judged on that record alone; `told` says which modules were touched, and what is enabled where the kind has no
   * bank to read. A text where the record breaks a rule or is not what was told.
   */
  pointOf(after: CoachRecord, told: readonly Told[]): Point | string {
    const doings: Does[] = [];
    for (const [m, module] of this.modules.entries()) {
      const now = after.modules?.find((each) => each.id === module.id);
      const plan = told.find((each) => each.module === module.id);
      if (now === undefined || plan === undefined) return `${module.id} is gone`;
      const set = now.positionsFound?.slice(2, 4);
      const read = ["b1", "b2"].filter((_, i) => set?.[i] === "1");
      const on = plan.isTouched && this.rules.kindOf(now).bank !== undefined ? read : plan.enables;
      const does = this.doings[m]!.find(
        (each) =>
          each.kind.id === now.kind &&
          each.isTouched === plan.isTouched &&
          (!each.isTouched || sameBlocks(each.enables ?? [], on)),
      );
      if (does === undefined) return `${module.id}: nothing makes it ${now.kind} with ${on.join(" ")}`;
      if (does.isReplaced !== plan.isReplaced || (does.isReplaced && now.isDead))
        return `${module.id}: not replaced as told`;
      doings.push(does);
    }
    const chosen: Option[] = [];
    const seats = new Set<string>();
    for (const [c, { circuit, home }] of this.circuits.entries()) {
      const now = after.circuits?.find((each) => each.id === circuit.id);
      if (now === undefined) return `${circuit.id} is gone`;
      const fed = (circuit.loads ?? []).filter((load) => !(now.loads ?? []).includes(load));
      const isOff = fed.length === (circuit.loads ?? []).length;
      const feeds = after.circuits?.filter(
        (each) => each.fusePosition !== undefined && fed.some((load) => each.loads?.includes(load)),
      );
      if (
        feeds?.length !== fed.length ||
        feeds.some((feed) => feed.fusePosition?.node !== this.modules[home]!.feedNode)
      )
        return `${circuit.id}: ${fed.join(" ")} not fed from the module's node`;
      const at = isOff ? -1 : this.modules.findIndex((module) => module.id === now.module);
      const bit = isOff ? 0 : 1 << now.channel!;
      const isMoved = !isOff && (at !== home || now.channel !== circuit.channel);
      const place = `${at} ${now.channel}`;
      if (!isOff && isMoved && seats.has(place)) return `${circuit.id}: its channel is taken`;
      if (!isOff) seats.add(place);
      const option = this.optionsOf(c, doings).find(
        (each) =>
          each.broken === 0 &&
          each.at === at &&
          each.channelBit === bit &&
          each.isMoved === isMoved &&
          each.fedCount === fed.length,
      );
      if (option === undefined) return `${circuit.id} may not sit at ${place}`;
      const fuse = numberOf(now.fuse?.ratedA);
      const kind = doings[at]?.kind;
      const isNew = isMoved || (kind !== undefined && doings[at]!.isReplaced);
      if (isNew && fuse !== undefined && fuse > numberOf(kind?.maxFuseA)!) return `${circuit.id}: fuse of ${fuse} A`;
      chosen.push(option);
    }
    for (const spare of after.circuits ?? [])
      if (
        spare.isSpare === true &&
        seats.has(`${this.modules.findIndex((module) => module.id === spare.module)} ${spare.channel}`)
      )
        return `${spare.id}: spare, and something sits there`;
    const broken = doings.reduce((all, does) => all | does.broken, 0);
    const scored = broken === 0 ? this.scorerOf(doings).score(chosen, 0) : undefined;
    return scored === undefined || scored.broken !== 0 ? "a limit or a rule of the whole is broken" : scored.point;
  }
}
