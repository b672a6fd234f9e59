import type { Stretch } from './overlap';
import type { Plan, Service } from './plan';
import { backOf, needOf, readyOf, type TurnaroundProblem, waysOf } from './problem';

export interface Booking extends Stretch {
  case: number;
}

const NOTHING_TAKEN: readonly Booking[] = [];

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
    return this.taken.get(set) ?? NOTHING_TAKEN;
  }

  /** What stands in the way of taking the set for that long. */
  inTheWay(set: number, { fromMs, toMs }: Stretch): Booking[] {
    return this.of(set).filter((booking) => booking.fromMs < toMs && fromMs < booking.toMs);
  }

  /** Since when a set that is free then has been free. */
  freeSince(set: number, atMs: number): number {
    let since = readyOf(this.problem, set);
    for (const { toMs } of this.of(set)) if (toMs <= atMs && toMs > since) since = toMs;
    return since;
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

  /** Whether the set is ready at the instant and free for as long as the case keeps it from then on. */
  private isFree(one: number, set: number, fromMs: number): boolean {
    if (readyOf(this.problem, set) > fromMs) return false;
    const taken = this.of(set);
    if (taken.length === 0) return true;
    const { toMs } = this.stretchAt(one, set, fromMs);
    return !taken.some((booking) => booking.fromMs < toMs && fromMs < booking.toMs);
  }

  /**
   * Sets for all parts of a way from an instant on, the one liked best for each part; where parts compete, a later part may
   * take an earlier one's set and send it to another (augmenting paths). `null` where some part stays without.
   *
   * @param liking the least is liked best, and of sets liked as well the first
   */
  setsFor(one: number, way: number, fromMs: number, liking: (set: number) => number): number[] | null {
    const parts = (waysOf(this.problem, one)[way]?.parts ?? []).map((part) => {
      const free = part
        .filter((set) => this.isFree(one, set, fromMs))
        .map((set) => ({ set, liking: liking(set) }));
      // asked once for each set: a part may list hundreds
      free.sort((a, b) => (a.liking < b.liking ? -1 : a.liking > b.liking ? 1 : a.set - b.set));
      return free.map(({ set }) => set);
    });
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
