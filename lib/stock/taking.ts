import type { Problem } from '../identity/result';
import { heapWords as words } from '../wording/stock-acts';

/** What decides how many pieces may be taken off a heap. */
export interface TakenFrom {
  /** What lies with no kit and travels with no set. */
  free: number;
  /** Its labelled pouches. */
  labels: readonly { number: string }[];
  row: { quantity: number };
}

/**
 * Why so many pieces can't be taken off a heap: only what is free can, and labelled pouches are told apart one by one, so
 * they go together or by their own label.
 */
export function takingProblems(heap: TakenFrom, pieces: number): Problem[] {
  const at = (code: string, message: string): Problem => ({ path: ['pieces'], code, message });
  if (!Number.isInteger(pieces) || pieces < 1) return [at('whole-pieces', words.wholePieces)];
  if (pieces > heap.free) return [at('too-many', words.tooMany(heap.free))];
  if (heap.labels.length > 0 && pieces < heap.row.quantity)
    return [at('labelled', words.labelled(heap.labels.map(({ number }) => number)))];
  return [];
}
