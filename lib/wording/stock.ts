import type { HeldBecause } from '../sets/setState';
import type { StockHold } from '../stock/hold';
import type { ShelfLife } from '../stock/shelfLife';
import type { StockForm } from '../stock/stock';

import { HELD_BECAUSE_WORDS } from './sets';

/** The words of shelf stock. */
export const FORM_WORDS: Record<StockForm, string> = {
  pouch: 'pouch',
  sterilePacked: 'sterile pack',
  unsterile: 'unsterile, for a set',
};

export const OWNER_WORDS: Record<'ours' | 'consignment', string> = {
  ours: 'ours',
  consignment: 'consignment',
};

/** `ours`, `consignment of Sallowfen Surgical`, `consignment, owner not stated`. */
export function ownerWords({
  owner,
  lender,
}: {
  owner: 'ours' | 'consignment';
  lender: string | null;
}): string {
  if (owner === 'ours') return OWNER_WORDS.ours;
  return lender === null
    ? `${OWNER_WORDS.consignment}, owner not stated`
    : `${OWNER_WORDS.consignment} of ${lender}`;
}

export const USE_BY_WORDS: Record<ShelfLife, string> = {
  past: 'past use-by',
  soon: 'soon',
  good: 'good',
  none: 'none stated',
};

/** Reasons that only stock is held for; the others are those of sets. */
const OWN_HOLDS: Record<Exclude<StockHold, HeldBecause>, string> = {
  pastUseBy: 'it is past its use-by',
  goesBack: 'it goes back',
};

/** Follows `held, because `; a reason of the hospital's own is said as it stands. */
export const heldWords = (reason: string): string =>
  HELD_BECAUSE_WORDS[reason as HeldBecause] ?? OWN_HOLDS[reason as keyof typeof OWN_HOLDS] ?? reason;
