/**
 * Cheapest flow of the largest value through a small network, by successive cheapest paths. Exact for whole
 * capacities and non-negative whole costs whose sums stay below 2^53.
 */
export class Flow {
  private readonly to: number[] = [];
  private readonly room: number[] = [];
  private readonly cost: number[] = [];
  private readonly out: number[][];

  constructor(nodes: number) {
    this.out = Array.from({ length: nodes }, () => []);
  }

  /** Adds an arc and returns its number, by which `carried` tells the flow on it. */
  arc(from: number, to: number, capacity: number, cost: number): number {
    const number = this.to.length;
    this.to.push(to, from);
    this.room.push(capacity, 0);
    this.cost.push(cost, -cost);
    this.out[from]?.push(number);
    this.out[to]?.push(number + 1);
    return number;
  }

  carried(arc: number): number {
    return this.room[arc + 1] ?? 0;
  }

  /** Sends as much as goes, as cheaply as it goes; the flow that was there before is built upon. */
  send(source: number, sink: number): { value: number; cost: number } {
    let value = 0;
    let cost = 0;
    for (;;) {
      const path = this.cheapestPath(source, sink);
      if (!path) return { value, cost };
      let room = Number.POSITIVE_INFINITY;
      for (const arc of path) room = Math.min(room, this.room[arc] as number);
      for (const arc of path) {
        this.room[arc] = (this.room[arc] as number) - room;
        this.room[arc ^ 1] = (this.room[arc ^ 1] as number) + room;
        cost += room * (this.cost[arc] as number);
      }
      value += room;
    }
  }

  private cheapestPath(source: number, sink: number): number[] | null {
    const distance = this.out.map(() => Number.POSITIVE_INFINITY);
    const by = this.out.map(() => -1);
    const queued = this.out.map(() => false);
    distance[source] = 0;
    const queue = [source];
    for (let at = 0; at < queue.length; at += 1) {
      const node = queue[at] as number;
      queued[node] = false;
      for (const arc of this.out[node] as number[]) {
        if ((this.room[arc] as number) <= 0) continue;
        const next = this.to[arc] as number;
        const through = (distance[node] as number) + (this.cost[arc] as number);
        if (through >= (distance[next] as number)) continue;
        distance[next] = through;
        by[next] = arc;
        if (queued[next]) continue;
        queued[next] = true;
        queue.push(next);
      }
    }
    if (by[sink] === -1) return null;
    const path: number[] = [];
    for (let node = sink; node !== source; node = this.to[(by[node] as number) ^ 1] as number)
      path.push(by[node] as number);
    return path.reverse();
  }
}
