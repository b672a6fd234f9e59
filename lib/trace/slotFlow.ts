import { move, type Network, sendCheapest } from './flow';
import type { SlotNetwork } from './slotNetwork';

/** The least and the most pieces of the lot, over every way in which the records can have come about. */
export interface Bounds {
  lo: number;
  hi: number;
}

/**
 * Asks a slot whose records agree how many pieces of the lot can have ended in any group of its ends, together. Exact:
 * each answer is a flow of least cost where a piece of the lot that ends in the group costs one, or earns it.
 *
 * What one answer shows to be possible for other groups is remembered, so that most of them need no flow of their own.
 */
export function slotFlow(slot: SlotNetwork, asked: readonly (readonly number[])[]): Bounds[] {
  const { net, ofLotArc } = slot;
  const groups = [...new Map(asked.map((group) => [group.join(), group])).values()];
  const ofLot = (room: Int32Array, group: readonly number[]) => {
    let pieces = 0;
    for (const end of group) {
      const arc = ofLotArc[end] as number;
      if (arc !== -1) pieces += room[arc ^ 1] as number;
    }
    return pieces;
  };
  /** The widest bounds that have been seen to be possible. */
  const seen: Bounds[] = groups.map((group) => {
    const pieces = ofLot(net.room, group);
    return { lo: pieces, hi: pieces };
  });
  function remember(room: Int32Array): void {
    for (const [at, group] of groups.entries()) {
      const bounds = seen[at] as Bounds;
      const pieces = ofLot(room, group);
      bounds.lo = Math.min(bounds.lo, pieces);
      bounds.hi = Math.max(bounds.hi, pieces);
    }
  }

  // the largest first: what they show settles most of the small ones
  const order = groups.map((_, at) => at).sort((a, b) => sizeOf(groups, b) - sizeOf(groups, a));
  for (const at of order) {
    const group = groups[at] as readonly number[];
    const bounds = seen[at] as Bounds;
    // no flow is below what was read, or above what can have been taken at all
    const least = group.reduce((sum, end) => sum + readAsLot(slot, end), 0);
    const most = group.reduce((sum, end) => sum + (ofLotArc[end] === -1 ? 0 : quantityOf(slot, end)), 0);
    if (bounds.hi < most) remember(extreme(slot, group, 'most'));
    if (bounds.lo > least) remember(extreme(slot, group, 'least'));
  }
  const placeOf = new Map(groups.map((group, at) => [group.join(), at]));
  return asked.map((group) => ({ ...(seen[placeOf.get(group.join()) ?? -1] as Bounds) }));
}

const sizeOf = (groups: readonly (readonly number[])[], at: number) => groups[at]?.length ?? 0;
const quantityOf = ({ ends }: SlotNetwork, end: number) => ends[end]?.quantity ?? 0;

/** An end whose only pieces can be those of the lot: it was read there. */
const readAsLot = (slot: SlotNetwork, end: number) =>
  slot.ofLotArc[end] !== -1 && slot.ends[end]?.lot !== null ? quantityOf(slot, end) : 0;

/** The capacities that are left by a flow that serves all ends, with the least or the most of the lot in the group. */
function extreme(slot: SlotNetwork, group: readonly number[], which: 'least' | 'most'): Int32Array {
  const { net, source, sink, endNode, inArcs, ofLotArc } = slot;
  const room = net.room.slice();
  const nodes = net.first.length - 1;
  const waiting = new Int32Array(nodes);
  const wanted = new Int32Array(nodes);
  const cost = new Int8Array(room.length);
  const shut = new Uint8Array(nodes);
  shut[source] = 1;
  shut[sink] = 1;
  const each = which === 'least' ? 1 : -1;
  for (const end of group) {
    for (const arc of inArcs[end] ?? []) {
      const served = room[arc ^ 1] as number;
      if (served === 0) continue;
      move(room, arc, -served);
      waiting[net.to[arc ^ 1] as number] = (waiting[net.to[arc ^ 1] as number] as number) + served;
    }
    wanted[endNode[end] as number] = quantityOf(slot, end);
    const arc = ofLotArc[end] as number;
    if (arc === -1) continue;
    cost[arc] = each;
    cost[arc ^ 1] = -each;
  }
  const copy: Network = { ...net, room };
  // a path into a single end takes the arc of the lot once, or not at all
  const enough = group.length > 1 ? Number.NEGATIVE_INFINITY : which === 'least' ? 0 : -1;
  sendCheapest(copy, waiting, wanted, cost, shut, enough);
  return room;
}
