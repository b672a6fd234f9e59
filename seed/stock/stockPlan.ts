import type { StockForm } from '@/lib/stock/stock';
import type { DemoPlace } from '../hospital/building';

/** Pouches or packs of one item, lot and place. */
export interface StockPlan {
  code: string;
  form: StockForm;
  quantity: number;
  lot: string | null;
  /** Days from today; `null` where none is stated. */
  useByDays: number | null;
  place: DemoPlace;
  owner?: 'consignment';
  heldBecause?: string;
}
