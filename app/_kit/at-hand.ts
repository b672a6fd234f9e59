import type { ScanEvent } from '@/app/_scan/use-scans';
import type { ThingAtHand } from '@/lib/caseLife/act';

/** What a scan puts in the hand, where that is something a kit is made of; `null` for anything else. */
export function thingOf({ meaning }: Pick<ScanEvent, 'meaning'>): ThingAtHand | null {
  switch (meaning.kind) {
    case 'set':
      return { kind: 'set', setId: meaning.setId, packId: null };
    case 'pack':
      return meaning.setId === null
        ? { kind: 'pouch', packId: meaning.packId }
        : { kind: 'set', setId: meaning.setId, packId: meaning.packId };
    case 'stock':
      return { kind: 'stock', stockId: meaning.stockId };
    case 'item':
      return {
        kind: 'item',
        itemId: meaning.itemId,
        lot: meaning.lot,
        useBy: meaning.useBy as Extract<ThingAtHand, { kind: 'item' }>['useBy'],
      };
    default:
      return null;
  }
}

/** Whether a code that was read before names the one such thing there is: again is the same again. */
export const isSingle = (thing: ThingAtHand): boolean => thing.kind === 'set' || thing.kind === 'pouch';
