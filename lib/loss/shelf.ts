import { expiryLoss } from '../calculations/expiryLoss/expiryLoss';
import {
  type ExpiryLossInput,
  type ExpiryLossOutput,
  expiryLossInput,
} from '../calculations/expiryLoss/schema';
import type { PlainDate } from '../quantities/plainDate';

/** Sterile units of one item on the shelf, lot by lot, and how many left it in each month that is over. */
export interface ShelfOfItem {
  itemId: string;
  code: string;
  name: string;
  unitPence: number | null;
  lots: readonly { stockId: string; lot: string | null; useBy: PlainDate; units: number; place: string }[];
  /** Units that left for a case, a set or the bin, less what came back; one figure a month, the months without any among them. */
  months: readonly number[];
}

export interface ShelfLoss {
  shelf: ShelfOfItem;
  input: ExpiryLossInput;
  loss: ExpiryLossOutput;
  /** Nothing left the shelf in all these months: what is worked out rests on that alone. */
  neverUsed: boolean;
}

const DAYS_A_MONTH = 365.25 / 12;
const MOST_VARIANCE = 50;

/** What of an item is likely to pass its use-by on the shelf, by the calculation. */
export function shelfLoss(shelf: ShelfOfItem, today: PlainDate): ShelfLoss | null {
  const { lots, months, unitPence } = shelf;
  if (months.length === 0) return null;
  const mean = Math.max(0, months.reduce((all, one) => all + one, 0) / months.length);
  const variance =
    months.length < 2 ? mean : months.reduce((all, one) => all + (one - mean) ** 2, 0) / (months.length - 1);
  const input = expiryLossInput.parse({
    perMonth: mean,
    varianceToMean: mean === 0 ? 1 : Math.min(MOST_VARIANCE, Math.max(1, variance / mean)),
    // the same lot may lie at two places: each heap is a lot of its own here
    lots: lots.map(({ lot, useBy, units, place }, at) => ({
      lot: `${lot ?? 'lot not known'}, ${place} (${at + 1})`.slice(0, 60),
      units,
      months: daysBetween(today, useBy) / DAYS_A_MONTH,
      unitPence,
    })),
  });
  const said = expiryLoss(input);
  return said.outcome === 'answered' ? { shelf, input, loss: said.answer, neverUsed: mean === 0 } : null;
}

function daysBetween(from: PlainDate, until: PlainDate): number {
  return Math.round((Date.parse(`${until}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);
}
