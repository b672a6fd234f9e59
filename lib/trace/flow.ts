/**
 * A network of arcs with whole capacities. An arc and its reverse are neighbours (`at` and `at ^ 1`); `room` is what may
 * still be sent along it.
 */
export interface Network {
  /** Per arc, the node it leads to. */
  to: Int32Array;
  room: Int32Array;
  /** Arcs out of node `n`: `arcs[first[n]]` to `arcs[first[n + 1] - 1]`. */
  first: Int32Array;
  arcs: Int32Array;
}

/** Collects nodes and arcs; `build` lays them out. */
export function networkBuilder() {
  let nodes = 0;
  const from: number[] = [];
  const to: number[] = [];
  const room: number[] = [];
  return {
    node: () => nodes++,
    /** @returns the index of the arc */
    arc(tail: number, head: number, capacity: number): number {
      from.push(tail, head);
      to.push(head, tail);
      room.push(capacity, 0);
      return to.length - 2;
    },
    build(): Network {
      const first = new Int32Array(nodes + 1);
      for (const tail of from) first[tail + 1] = (first[tail + 1] as number) + 1;
      for (let n = 0; n < nodes; n += 1) first[n + 1] = (first[n + 1] as number) + (first[n] as number);
      const place = first.slice();
      const arcs = new Int32Array(from.length);
      for (let at = 0; at < from.length; at += 1) {
        const tail = from[at] as number;
        arcs[place[tail] as number] = at;
        place[tail] = (place[tail] as number) + 1;
      }
      return { to: Int32Array.from(to), room: Int32Array.from(room), first, arcs };
    },
  };
}

/** Sends as much as can be sent from `source` to `sink` (Dinic's layers); changes `room`. @returns how much that is */
export function sendMost(net: Network, source: number, sink: number): number {
  const { to, room, first, arcs } = net;
  const nodes = first.length - 1;
  const level = new Int32Array(nodes);
  const next = new Int32Array(nodes);
  const queue = new Int32Array(nodes);

  function layers(): boolean {
    level.fill(-1);
    level[source] = 0;
    queue[0] = source;
    let end = 1;
    for (let begin = 0; begin < end; begin += 1) {
      const node = queue[begin] as number;
      for (let i = first[node] as number; i < (first[node + 1] as number); i += 1) {
        const arc = arcs[i] as number;
        const head = to[arc] as number;
        if ((room[arc] as number) > 0 && level[head] === -1) {
          level[head] = (level[node] as number) + 1;
          queue[end++] = head;
        }
      }
    }
    return level[sink] !== -1;
  }

  function push(node: number, amount: number): number {
    if (node === sink) return amount;
    for (; (next[node] as number) < (first[node + 1] as number); next[node] = (next[node] as number) + 1) {
      const arc = arcs[next[node] as number] as number;
      const head = to[arc] as number;
      if ((room[arc] as number) === 0 || level[head] !== (level[node] as number) + 1) continue;
      const sent = push(head, Math.min(amount, room[arc] as number));
      if (sent === 0) continue;
      move(room, arc, sent);
      return sent;
    }
    return 0;
  }

  let total = 0;
  while (layers()) {
    next.set(first.subarray(0, nodes));
    for (let sent = push(source, 2 ** 30); sent > 0; sent = push(source, 2 ** 30)) total += sent;
  }
  return total;
}

/** Sends `amount` along an arc. */
export function move(room: Int32Array, arc: number, amount: number): void {
  room[arc] = (room[arc] as number) - amount;
  room[arc ^ 1] = (room[arc ^ 1] as number) + amount;
}

/** One unit of cost, in the lengths of paths: more than any path has arcs. */
const COST = 2 ** 16;
const FAR = 2 ** 30;

/**
 * Sends what waits in some nodes to what is wanted in others at the least cost; changes `room`, `waiting` and `wanted`.
 * Successive shortest paths, all of one cost at once: labels are corrected until none can be bettered, and among paths
 * of one cost those of the fewest arcs are taken, which have no cycles.
 *
 * The network must have no cycle of negative cost to begin with, and all that is wanted must be able to be sent; both
 * hold where a flow that serves all was there before, and all arcs with a cost lead into nodes that have nothing yet.
 *
 * @param cost of an arc, forwards; the reverse costs the opposite
 * @param shut nodes that no path passes
 * @param enough a cost below which no path can be: the search ends at one that has it
 */
export function sendCheapest(
  net: Network,
  waiting: Int32Array,
  wanted: Int32Array,
  cost: Int8Array,
  shut: Uint8Array,
  enough: number,
): void {
  const { to, room, first, arcs } = net;
  const nodes = first.length - 1;
  const length = new Int32Array(nodes);
  const isQueued = new Uint8Array(nodes);
  const queue = new Int32Array(nodes);
  const next = new Int32Array(nodes);
  const starts: number[] = [];
  const goals: number[] = [];
  for (let node = 0; node < nodes; node += 1) {
    if ((waiting[node] as number) > 0) starts.push(node);
    if ((wanted[node] as number) > 0) goals.push(node);
  }

  function label(): void {
    length.fill(FAR);
    let begin = 0;
    let count = 0;
    for (const node of starts) {
      if (waiting[node] === 0) continue;
      length[node] = 0;
      isQueued[node] = 1;
      queue[count++] = node;
    }
    while (count > 0) {
      const node = queue[begin] as number;
      begin = begin + 1 === nodes ? 0 : begin + 1;
      count -= 1;
      isQueued[node] = 0;
      const here = (length[node] as number) + 1;
      for (let i = first[node] as number; i < (first[node + 1] as number); i += 1) {
        const arc = arcs[i] as number;
        if (room[arc] === 0) continue;
        const head = to[arc] as number;
        const there = here + (cost[arc] as number) * COST;
        if (there >= (length[head] as number) || shut[head] === 1) continue;
        length[head] = there;
        if ((wanted[head] as number) > 0 && costOf(there) <= enough) {
          isQueued.fill(0);
          return;
        }
        if (isQueued[head] === 1) continue;
        isQueued[head] = 1;
        const end = begin + count;
        queue[end >= nodes ? end - nodes : end] = head;
        count += 1;
      }
    }
  }

  /** Along arcs that lie on shortest paths, to nodes whose wants can be met at this cost. */
  function push(node: number, amount: number, ofCost: number): number {
    const want = wanted[node] as number;
    if (want > 0 && costOf(length[node] as number) === ofCost) {
      const met = Math.min(want, amount);
      wanted[node] = want - met;
      return met;
    }
    for (; (next[node] as number) < (first[node + 1] as number); next[node] = (next[node] as number) + 1) {
      const arc = arcs[next[node] as number] as number;
      if (room[arc] === 0) continue;
      const head = to[arc] as number;
      if (length[head] !== (length[node] as number) + 1 + (cost[arc] as number) * COST) continue;
      const sent = push(head, Math.min(amount, room[arc] as number), ofCost);
      if (sent === 0) continue;
      move(room, arc, sent);
      return sent;
    }
    return 0;
  }

  for (;;) {
    const open = goals.filter((node) => (wanted[node] as number) > 0);
    if (open.length === 0) return;
    label();
    const least = Math.min(...open.map((node) => costOf(length[node] as number)));
    if (least === costOf(FAR)) throw new Error('what was served before can be served again');
    next.set(first.subarray(0, nodes));
    for (const start of starts) {
      while ((waiting[start] as number) > 0 && length[start] === 0) {
        const sent = push(start, waiting[start] as number, least);
        if (sent === 0) break;
        waiting[start] = (waiting[start] as number) - sent;
      }
    }
  }
}

const costOf = (length: number) => Math.floor(length / COST);
