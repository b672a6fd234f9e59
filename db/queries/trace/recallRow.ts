import { type RecallOf, recallOf } from '@/lib/trace/recall';
import type { recalls } from '../../schema';

export type RecallRow = typeof recalls.$inferSelect;

/** What a recall is of, from its row. */
export const ofRecall = ({
  kind,
  itemId: item,
  lot,
  setId,
  loadId,
}: Pick<RecallRow, 'kind' | 'itemId' | 'lot' | 'setId' | 'loadId'>): RecallOf =>
  recallOf.parse({
    kind,
    ...(kind === 'lot' ? { itemId: item, lot } : kind === 'item' ? { itemId: item } : {}),
    ...(kind === 'set' ? { setId } : {}),
    ...(kind === 'load' ? { loadId } : {}),
  });
