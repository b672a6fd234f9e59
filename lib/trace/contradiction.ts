import type { SlotNetwork } from './slotNetwork';

/**
 * Why the records of a slot cannot all be true: of some pieces that left (or lie there), fewer can have come in.
 * It is proven: these are all arrivals that could have fed those ends, and they bring less.
 */
export interface Contradiction {
  wentOut: number;
  cameIn: number;
  /** The lots that were read on what went out; `null` among them: not read. */
  lots: (string | null)[];
  /** The last of them; `null`: one of them is there now. */
  untilMs: number | null;
}

/** `null` where the records agree. Reads a network after as much as possible was sent through it. */
export function contradictionOf(slot: SlotNetwork): Contradiction | null {
  if (slot.served === slot.wanted) return null;
  const { net, source, sink, ends, endNode, arrivals } = slot;
  const { to, room, first, arcs } = net;
  const short = new Uint8Array(first.length - 1);
  const queue: number[] = [];
  const visit = (node: number) => {
    if (short[node] === 1 || node === source || node === sink) return;
    short[node] = 1;
    queue.push(node);
  };
  // an end that gets less than it had
  for (const node of endNode) {
    for (let i = first[node] as number; i < (first[node + 1] as number); i += 1) {
      const arc = arcs[i] as number;
      if (to[arc] === sink && (room[arc] as number) > 0) visit(node);
    }
  }
  // and whatever could still send something to it: all of that is used up
  for (let node = queue.pop(); node !== undefined; node = queue.pop()) {
    for (let i = first[node] as number; i < (first[node + 1] as number); i += 1) {
      const arc = arcs[i] as number;
      if ((room[arc ^ 1] as number) > 0) visit(to[arc] as number);
    }
  }
  const out = ends.filter((_, end) => short[endNode[end] as number] === 1);
  const times = out.map(({ atMs }) => atMs);
  return {
    wentOut: out.reduce((sum, { quantity }) => sum + quantity, 0),
    cameIn: arrivals.reduce((sum, { node, quantity }) => sum + (short[node] === 1 ? quantity : 0), 0),
    lots: [...new Set(out.map(({ lot }) => lot))],
    untilMs: times.includes(null) ? null : Math.max(...times.map((atMs) => atMs ?? 0)),
  };
}
