import type { ThingAtHand } from '../caseLife/act';
import { freePacks, type PackSource, type SlotSource, type SourceAccount } from './account';
import type { UseLot } from './act';
import { sourceKey } from './state';

interface Table<
  S extends SlotSource,
  P extends PackSource & { packId: string | null; stockId: string; lot: string | null },
> {
  slots: readonly S[];
  packs: readonly P[];
  accounts: readonly SourceAccount[];
}

/** What a code names at the table. */
export type AtHand<S, P> =
  /** One thing it can be. */
  | { kind: 'pack'; pack: P; lot: UseLot }
  | { kind: 'slot'; slot: S; lot: UseLot }
  /** The item lies in several sets, or in several places of one: a person says which. */
  | { kind: 'several'; slots: S[]; lot: UseLot }
  /** A set: what came out of it is said line by line. */
  | { kind: 'set'; setId: string }
  /** It was issued, and of every piece it is recorded what became of it. */
  | { kind: 'recorded' }
  /** Nothing on record says that it is out for this case. */
  | { kind: 'notHere' };

/**
 * What a scanned thing is at the table. Single packs come before slots: a code on a pack names a pack. A lot that was read
 * must be the one issued, where that is known; the program never takes one lot for another.
 */
export function atHand<
  S extends SlotSource,
  P extends PackSource & { packId: string | null; stockId: string; lot: string | null },
>(thing: ThingAtHand, { slots, packs, accounts }: Table<S, P>): AtHand<S, P> {
  if (thing.kind === 'set')
    return slots.some(({ setId }) => setId === thing.setId)
      ? { kind: 'set', setId: thing.setId }
      : { kind: 'notHere' };
  const read = thing.kind === 'item' ? thing.lot : null;
  const own = packs.filter((pack) => {
    if (thing.kind === 'pouch') return pack.packId === thing.packId;
    if (thing.kind === 'stock') return pack.stockId === thing.stockId;
    return pack.itemId === thing.itemId && (read === null || pack.lot === null || pack.lot === read);
  });
  const accountOf = new Map(accounts.map((account) => [account.key, account]));
  const free = own.find((pack) => {
    const account = accountOf.get(sourceKey(pack));
    return account !== undefined && freePacks(account) > 0;
  });
  if (free) {
    const lot: UseLot =
      read === null
        ? { kind: 'asIssued' }
        : { kind: 'read', lot: read, useBy: thing.kind === 'item' ? thing.useBy : null };
    return { kind: 'pack', pack: free, lot };
  }
  const inSets = thing.kind === 'item' ? slots.filter(({ itemId }) => itemId === thing.itemId) : [];
  const lot: UseLot =
    read === null
      ? { kind: 'setAndLoad' }
      : { kind: 'read', lot: read, useBy: thing.kind === 'item' ? thing.useBy : null };
  const [only] = inSets;
  if (only && inSets.length === 1) return { kind: 'slot', slot: only, lot };
  if (only) return { kind: 'several', slots: inSets, lot };
  return own.length > 0 ? { kind: 'recorded' } : { kind: 'notHere' };
}
