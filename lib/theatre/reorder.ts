/** A case on the list of one theatre and day. */
export interface Slot {
  id: string;
  startsAt: string;
  endsAt: string;
}

/**
 * The times of a theatre's cases in another order: the first begins when the first began, each takes as long as it did,
 * and what lay between the first and the second lies there still.
 *
 * @param slots the cases in their present order, none overlapping
 * @param order the ids of all of them, in the order wanted
 */
export function reorder(slots: readonly Slot[], order: readonly string[]): Slot[] {
  const byId = new Map(slots.map((slot) => [slot.id, slot]));
  if (order.length !== slots.length || new Set(order).size !== order.length)
    throw new RangeError('an order names every case once');
  let at = Date.parse(slots[0]?.startsAt ?? '');
  return order.map((id, place) => {
    const slot = byId.get(id);
    if (!slot) throw new RangeError(`${id} is not on this list`);
    const startsAt = new Date(at).toISOString();
    at += Date.parse(slot.endsAt) - Date.parse(slot.startsAt);
    const endsAt = new Date(at).toISOString();
    at += gapAfter(slots, place);
    return { id, startsAt, endsAt };
  });
}

function gapAfter(slots: readonly Slot[], place: number): number {
  const [here, next] = [slots[place], slots[place + 1]];
  return here && next ? Date.parse(next.startsAt) - Date.parse(here.endsAt) : 0;
}
