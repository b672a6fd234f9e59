import type { ShelfLife } from '../stock/shelfLife';
import type { StockForm } from '../stock/stock';

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

export const USE_BY_WORDS: Record<ShelfLife, string> = {
  past: 'past use-by',
  soon: 'soon',
  good: 'good',
  none: 'none stated',
};
