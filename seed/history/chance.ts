/** Repeatable chance: the same seed always tells the same story. Nothing rests on its quality but that it looks like life. */
export class Chance {
  private state: number;

  constructor(seed: number) {
    this.state = seed >>> 0;
  }

  /** From 0 up to 1, without it (mulberry32). */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let t = this.state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  }

  /** A whole number of this range, both ends in it. */
  whole(from: number, to: number): number {
    return from + Math.floor(this.next() * (to - from + 1));
  }

  is(probability: number): boolean {
    return this.next() < probability;
  }

  of<T>(all: readonly T[]): T {
    return all[this.whole(0, all.length - 1)] as T;
  }

  /** A normal deviate (Box and Muller). */
  normal(mean: number, sd: number): number {
    const u = Math.max(this.next(), 1e-12);
    return mean + sd * Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * this.next());
  }

  /** Waiting time until the next of events that come by themselves. */
  exponential(mean: number): number {
    return -mean * Math.log(Math.max(this.next(), 1e-12));
  }
}
