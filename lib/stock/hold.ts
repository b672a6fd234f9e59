import { z } from 'zod';

/** Why a heap is held by hand. What is held because of its load ends with that. */
export const stockHold = z.enum([
  'wrapWetTornOrUnsealed',
  'wrongLabel',
  'disputedCount',
  'recall',
  'pastUseBy',
  'goesBack',
]);
export type StockHold = z.infer<typeof stockHold>;

/** Holds that are not let go on the shelf: they end with their load. */
export const ENDS_ELSEWHERE: ReadonlySet<string> = new Set(['loadUnknown', 'indicatorOrCycleFailed']);
