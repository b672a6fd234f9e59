import type { Stretch } from './overlap';
import type { Plan, Service } from './plan';
import { backOf, needOf, readyOf, type TurnaroundProblem, waysOf } from './problem';

export interface Booking extends Stretch {
  case: number;
}

/** What every set and pouch is taken for so far, and what is still to be had. */
export class Bookings {
  private readonly taken = new Map<number, Booking[]>();
  private readonly left: number[];

  constructor(
    private readonly problem: TurnaroundProblem,
    plan: Plan = [],
  ) {
    this.left = [...problem.pouches];
    plan.forEach((service, one) => {
      if (service) this.book(one, service);
    });
  }

  /** @param slipMs how much later than planned the case begins */
  book(one: number, service: Service, slipMs = 0): void {
    for (const set of service.sets) {
      const stretch = this.stretchAt(one, set, needOf(this.problem, one) + slipMs);
      this.taken.set(set, [...this.of(set), { case: one, ...stretch }]);
    }
    for (const pouch of waysOf(this.problem, one)[service.way]?.pouches ?? [])
      this.left[pouch] = (this.left[pouch] ?? 0) - 1;
  }

  of(set: number): readonly Booking[] {
    return this.taken.get(set) ?? [];
  }

  /** What stands in the way of taking the set for that long. */
  inTheWay(set: number, { fromMs, toMs }: Stretch): Booking[] {
    return this.of(set).filter((booking) => booking.fromMs < toMs && fromMs < booking.toMs);
  }

  /** Since when a set that is free then has been free. */
  freeSince(set: number, atMs: number): number {
    const ends = this.of(set).flatMap(({ toMs }) => (toMs <= atMs ? [toMs] : []));
    return Math.max(readyOf(this.problem, set), ...ends);
  }

  hasPouches(pouches: readonly number[]): boolean {
    const wanted = new Map<number, number>();
    for (const pouch of pouches) wanted.set(pouch, (wanted.get(pouch) ?? 0) + 1);
    return [...wanted].every(([pouch, count]) => (this.left[pouch] ?? 0) >= count);
  }

  /** How long the set is away for the case, begun at another time. */
  stretchAt(one: number, set: number, fromMs: number): Stretch {
    return { fromMs, toMs: fromMs + backOf(this.problem, one, set) - needOf(this.problem, one) };
  }

  /**
   * Sets for all parts of a way from an instant on, the one liked best for each part; where parts compete, a later part may
   * take an earlier one's set and send it to another (augmenting paths). `null` where some part stays without.
   */
  setsFor(one: number, way: number, fromMs: number, like: (a: number, b: number) => number): number[] | null {
    const parts = (waysOf(this.problem, one)[way]?.parts ?? []).map((part) =>
      part
        .filter(
          (set) =>
            readyOf(this.problem, set) <= fromMs &&
            this.inTheWay(set, this.stretchAt(one, set, fromMs)).length === 0,
        )
        .sort((a, b) => like(a, b) || a - b),
    );
    const owner = new Map<number, number>();
    const give = (part: number, tried: Set<number>): boolean =>
      (parts[part] ?? []).some((set) => {
        if (tried.has(set)) return false;
        tried.add(set);
        const present = owner.get(set);
        if (present !== undefined && !give(present, tried)) return false;
        owner.set(set, part);
        return true;
      });
    if (!parts.every((_, part) => give(part, new Set()))) return null;
    const sets = new Array<number>(parts.length);
    for (const [set, part] of owner) sets[part] = set;
    return sets;
  }
}
