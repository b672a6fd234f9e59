/** What one owner's pieces of one lot of an item came to: everything that came is somewhere, or went somewhere. */
export interface LotAccount {
  itemId: string;
  lot: string | null;
  /** Came on consignment, less what was entered by mistake. */
  received: number;
  onShelf: number;
  withCases: number;
  /** Put into slots of sets, less what was taken out of them again: used there or lying there; who knows is in the bounds. */
  intoSlots: number;
  implanted: number;
  wasted: number;
  /** Less what was found again. */
  notFound: number;
  sentBack: number;
}

/** Pieces moved, summed by what they are to the account. `way`: off a heap of the owner's, onto one, or out of a case. */
export interface MovedPieces {
  itemId: string;
  lot: string | null;
  act: string;
  way: 'off' | 'onto' | 'outOfCase';
  enteredWrongly: boolean;
  pieces: number;
}

/** Sums moves and what lies on the shelf into one account for each lot. */
export function lotAccounts(
  moved: readonly MovedPieces[],
  shelf: readonly { itemId: string; lot: string | null; pieces: number }[],
): LotAccount[] {
  const accounts = new Map<string, LotAccount>();
  const of = (itemId: string, lot: string | null): LotAccount => {
    const key = JSON.stringify([itemId, lot]);
    const known = accounts.get(key);
    if (known) return known;
    const none = { received: 0, onShelf: 0, withCases: 0, intoSlots: 0 };
    const made = { itemId, lot, ...none, implanted: 0, wasted: 0, notFound: 0, sentBack: 0 };
    accounts.set(key, made);
    return made;
  };
  for (const { itemId, lot, pieces } of shelf) of(itemId, lot).onShelf += pieces;
  for (const one of moved) {
    const account = of(one.itemId, one.lot);
    const { act, way, pieces } = one;
    if (way === 'outOfCase') account.withCases -= pieces;
    if (act === 'issued' && way === 'off') account.withCases += pieces;
    else if (act === 'refilled') account.intoSlots += pieces;
    else if (act === 'takenOut') account.intoSlots -= pieces;
    else if (act === 'implanted') account.implanted += pieces;
    else if (act === 'wasted') account.wasted += pieces;
    else if (act === 'notFound') account.notFound += pieces;
    else if (act === 'found') account.notFound -= pieces;
    else if (act === 'sentBack')
      account[one.enteredWrongly ? 'received' : 'sentBack'] += one.enteredWrongly ? -pieces : pieces;
    else if (act === 'received' || act === 'opening' || act === 'shelved' || act === 'repaired')
      account.received += pieces;
  }
  return [...accounts.values()];
}

/** Pieces that came and are nowhere; 0 wherever the record is whole. */
export const unaccounted = (account: LotAccount): number =>
  account.received -
  (account.onShelf +
    account.withCases +
    account.intoSlots +
    account.implanted +
    account.wasted +
    account.notFound +
    account.sentBack);
