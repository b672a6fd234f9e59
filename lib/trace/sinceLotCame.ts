import { contradictionOf } from './contradiction';
import { type LotAsked, mayBeOfLot, type SlotEvent, type SlotHistory } from './slotHistory';
import { endsOf, slotNetwork } from './slotNetwork';

/**
 * The same slot from the first moment at which a piece of the lot can have been there; what lay there then is a count of
 * pieces that are not of it. The bounds of every case and of all that is there stay as they are:
 *
 * Which pieces lay there then matters only to a later departure that was read as another lot. Where there is none, the
 * pieces that are not of the lot can stand for one another, and their number is the same in every way in which the earlier
 * records can have come about. That they can have come about at all is looked at; where not, or where another lot was read
 * later, the history is left whole.
 */
export function sinceLotCame(history: SlotHistory, asked: LotAsked): SlotHistory {
  const { before = 0, events, now } = history;
  const first = events.findIndex((event) => isOfLot(event, asked));
  const from = first === -1 ? events.length : first;
  const later = events.slice(from);
  if (from === 0 || later.some((event) => event.kind === 'out' && isAnother(event.lot, asked)))
    return history;
  if ((now ?? []).some(({ lot }) => isAnother(lot, asked))) return history;
  const earlier: SlotHistory = { before, events: events.slice(0, from), now: null };
  if (contradictionOf(slotNetwork(earlier, endsOf(earlier), asked))) return history;
  return { before: earlier.events.reduce(lying, before), events: later, now };
}

const isOfLot = (event: SlotEvent, asked: LotAsked) =>
  event.lot === asked.lot || (event.kind === 'in' && event.lot === null && mayBeOfLot(event.atMs, asked));

const isAnother = (lot: string | null, asked: LotAsked) => lot !== null && lot !== asked.lot;

const lying = (pieces: number, { kind, quantity }: SlotEvent) =>
  kind === 'in' ? pieces + quantity : pieces - quantity;
