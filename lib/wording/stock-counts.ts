import type { StockCountStage } from '../stock/stockCount';

export const COUNT_STAGE_WORDS: Record<StockCountStage, string> = {
  counting: 'being counted',
  toRecount: 'to be counted again by another person',
  recounting: 'being counted again',
  toDecide: 'differences to decide',
  done: 'done',
  abandoned: 'given up',
};

export const COUNT_STAGE_TONES: Record<StockCountStage, 'good' | 'attention' | 'neutral' | 'unknown'> = {
  counting: 'unknown',
  toRecount: 'attention',
  recounting: 'unknown',
  toDecide: 'attention',
  done: 'good',
  abandoned: 'neutral',
};

/** `class A`, or whatever lies there. */
export const countClassWords = (countClass: string): string =>
  countClass === 'all' ? 'all that lies there' : `class ${countClass}`;

/** `2 fewer than on record`. */
export function differenceWords(difference: number): string {
  if (difference === 0) return 'as on record';
  return `${Math.abs(difference)} ${difference > 0 ? 'more' : 'fewer'} than on record`;
}
