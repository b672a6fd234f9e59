import { type Network, networkBuilder, sendMost } from './flow';
import { type Departure, type LotAsked, mayBeOfLot, type SlotHistory } from './slotHistory';

/** A departure, what lies there now, or what is gone without a record: everything pieces end in. */
export interface End {
  /** When it left; `null`: it is there now, or nobody knows when it went. */
  atMs: number | null;
  quantity: number;
  lot: string | null;
  /** The place of its (first) departure among the events, or what else it is. */
  is: number | 'now' | 'unrecorded';
}

export interface SlotNetwork {
  net: Network;
  source: number;
  sink: number;
  ends: End[];
  /** Per end, its node. */
  endNode: Int32Array;
  /** Per end, the arc that brings it pieces of the lot asked about, or -1. */
  ofLotArc: Int32Array;
  /** Per end, all arcs that bring it pieces. */
  inArcs: number[][];
  /** Per arrival, in the order of the events: its node and what it brings. */
  arrivals: { node: number; quantity: number }[];
  /** How many pieces can be given an end, and how many have one: equal where the records agree. */
  served: number;
  wanted: number;
}

/** More than ever flows: only what comes in and what ends is bounded, so that a shortage shows where it is. */
const WIDE = 2 ** 30;

const isAlike = (one: Departure, other: Departure) =>
  one.lot === other.lot && one.case === other.case && one.outcome === other.outcome;

/** Where pieces end; what came in and has no end on record is one of its own. */
export function endsOf({ before = 0, events, now }: SlotHistory): End[] {
  const ends: End[] = [];
  let left = before;
  for (const [at, event] of events.entries()) {
    left += event.kind === 'in' ? event.quantity : -event.quantity;
    if (event.kind === 'in') continue;
    const previous = events[at - 1];
    const last = ends.at(-1);
    // pieces that left one after the other, alike in all, are one end
    if (last && previous?.kind === 'out' && isAlike(previous, event)) {
      last.quantity += event.quantity;
      last.atMs = event.atMs;
    } else ends.push({ atMs: event.atMs, quantity: event.quantity, lot: event.lot, is: at });
  }
  for (const { lot, quantity } of now ?? []) {
    left -= quantity;
    if (quantity > 0) ends.push({ atMs: null, quantity, lot, is: 'now' });
  }
  if (left > 0) ends.push({ atMs: null, quantity: left, lot: null, is: now === null ? 'now' : 'unrecorded' });
  return ends;
}

/**
 * The slot as a transport of pieces from arrivals to ends. For each lot there is a chain of nodes, one for each time
 * pieces of it came in after some had left: what is in the slot goes on along its chain. An end is fed by the newest node
 * of each chain whose pieces it can have taken; a lot that was read shuts out all others. Lots that are read no more are
 * alike and share a chain. A piece of unknown lot first decides whether it is of the lot asked about; if not, it may be of
 * any other.
 */
export function slotNetwork(history: SlotHistory, ends: End[], asked: LotAsked): SlotNetwork {
  /** Per lot, the last end at which it was read: from there on its pieces are like those of any lot nobody reads. */
  const lastRead = new Map<string, number>();
  let lastOtherRead = -1;
  for (const [at, { lot }] of ends.entries()) {
    if (lot === null) continue;
    lastRead.set(lot, at);
    if (lot !== asked.lot) lastOtherRead = at;
  }

  const OF_LOT = `lot ${asked.lot}`;
  const OTHER = 'unknown, of another lot';
  const REST = 'of another lot, read no more';
  const chainOf = (lot: string) =>
    lot === asked.lot || (lastRead.get(lot) ?? -1) >= end ? `lot ${lot}` : REST;

  /** The end that comes next. */
  let end = 0;
  const builder = networkBuilder();
  const source = builder.node();
  const sink = builder.node();
  const newest = new Map<string, { node: number; hasFed: boolean }>();
  /** Where pieces that come in now join the chain. */
  function joining(chain: string): number {
    const last = newest.get(chain);
    if (last && !last.hasFed) return last.node;
    const node = builder.node();
    if (last) builder.arc(last.node, node, WIDE);
    newest.set(chain, { node, hasFed: false });
    return node;
  }
  function joinRest(chain: string): void {
    const last = newest.get(chain);
    newest.delete(chain);
    if (last) builder.arc(last.node, joining(REST), WIDE);
  }
  const endNode = new Int32Array(ends.length);
  const ofLotArc = new Int32Array(ends.length).fill(-1);
  const inArcs: number[][] = ends.map(() => []);
  function feed(): void {
    const { lot, quantity } = ends[end] as End;
    const node = builder.node();
    endNode[end] = node;
    builder.arc(node, sink, quantity);
    const chains = lot === null ? [...newest.keys()] : lot === asked.lot ? [OF_LOT] : [`lot ${lot}`, OTHER];
    for (const chain of chains) {
      const last = newest.get(chain);
      if (!last) continue;
      last.hasFed = true;
      const arc = builder.arc(last.node, node, WIDE);
      inArcs[end]?.push(arc);
      if (chain === OF_LOT) ofLotArc[end] = arc;
    }
    if (lot !== null && lot !== asked.lot && lastRead.get(lot) === end) joinRest(`lot ${lot}`);
    if (end === lastOtherRead) joinRest(OTHER);
  }

  const arrivals: SlotNetwork['arrivals'] = [];
  function arrive(node: number, quantity: number): void {
    builder.arc(source, node, quantity);
    arrivals.push({ node, quantity });
  }
  const others = () => joining(end > lastOtherRead ? REST : OTHER);
  if (history.before !== undefined && history.before > 0) arrive(others(), history.before);
  for (const [at, event] of history.events.entries()) {
    if (event.kind === 'out') {
      if (ends[end]?.is !== at) continue;
      feed();
      end += 1;
      continue;
    }
    let node: number;
    if (event.lot !== null) node = joining(chainOf(event.lot));
    else if (mayBeOfLot(event.atMs, asked)) {
      node = builder.node();
      builder.arc(node, joining(OF_LOT), WIDE);
      builder.arc(node, others(), WIDE);
    } else node = others();
    arrive(node, event.quantity);
  }
  for (; end < ends.length; end += 1) feed();

  const net = builder.build();
  return {
    net,
    source,
    sink,
    ends,
    endNode,
    ofLotArc,
    inArcs,
    arrivals,
    served: sendMost(net, source, sink),
    wanted: ends.reduce((sum, { quantity }) => sum + quantity, 0),
  };
}
