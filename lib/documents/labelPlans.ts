import type { LabelStock } from './label';

/** Sizes of one stock, in dots; sizes of type from the largest that is tried to the smallest. */
export interface LabelPlan {
  margin: number;
  gap: number;
  /** 0.63 or 0.88 mm: within 0.254 to 0.990 mm, which GS1 asks of DataMatrix in healthcare, and left by a dot too few. */
  moduleDots: number;
  code: number[];
  name: number[];
  nameLines: number;
  bar: number;
  body: number[];
  facts: number[];
  caution: number | null;
  number: number;
}

/** Widths, sizes and limits of every stock. */
export const LABEL_PLANS: Record<LabelStock, LabelPlan> = {
  '100x50': {
    margin: 16,
    gap: 8,
    moduleDots: 7,
    code: [88, 72, 60, 48, 40, 32],
    name: [32, 28, 24],
    nameLines: 2,
    bar: 34,
    body: [24, 21, 19],
    facts: [23, 21, 19],
    caution: 16,
    number: 24,
  },
  '75x50': {
    margin: 14,
    gap: 7,
    moduleDots: 7,
    code: [76, 64, 52, 42, 34, 28],
    name: [28, 24, 21],
    nameLines: 3,
    bar: 32,
    body: [21, 19, 18],
    facts: [20, 18, 17],
    caution: 16,
    number: 22,
  },
  '50x25': {
    margin: 8,
    gap: 4,
    moduleDots: 5,
    code: [44, 36, 30, 26, 22, 19],
    name: [19, 17, 16],
    nameLines: 2,
    bar: 22,
    body: [17, 16],
    facts: [16],
    caution: null,
    number: 17,
  },
};
