import type { StockPlan } from './stockPlan';

/** Everything on the shelves of the demo outside sets. */
export const STOCK: StockPlan[] = [
  { code: 'PT-L-1500', form: 'pouch', quantity: 1, lot: null, useByDays: 88, place: 'place_pouch-1' },
];
