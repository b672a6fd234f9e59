import { z } from 'zod';

const pence = z.number().int().min(0).max(100_000_000);
const name = z.string().min(1).max(80);

const priced = z.strictObject({
  item: name.meta({ title: 'What' }),
  quantity: z.number().int().min(1).max(10_000).default(1).meta({ title: 'Quantity' }),
  unitPence: pence
    .nullable()
    .meta({ title: 'Price of one', description: 'pence; null where it is not known' }),
});

const list = (title: string, description: string) =>
  z.array(priced).max(500).default([]).meta({ title, description });

const wasted = priced.extend({
  why: z
    .enum(['openedNotImplanted', 'droppedOrDamaged', 'pastUseBy', 'other'])
    .default('openedNotImplanted')
    .meta({ title: 'Why' }),
});

export const caseCostInput = z.strictObject({
  implanted: list('Implanted', 'What stayed in'),
  wasted: z
    .array(wasted)
    .max(500)
    .default([])
    .meta({ title: 'Wasted', description: 'Opened and not implanted, dropped, damaged, past use-by' }),
  trays: list('Trays', 'Sets opened, at the rate of one turn'),
  pouches: list('Pouches', 'Pieces packed by themselves that were opened'),
  singleUse: list('Single use', 'What is used once and thrown away'),
  loans: list('Loans', 'What a lender asks for'),
  wasteShareOf: z.enum(['opened', 'total']).default('opened').meta({
    title: 'Waste as a share',
    description: 'of what was opened: implanted and wasted; or of the whole cost',
  }),
});

const part = z.strictObject({
  /** Whole pence of what has a known price. */
  pence: z.number().int(),
  /** Pieces whose price is not known. */
  unknown: z.number().int(),
});

export const caseCostOutput = z.strictObject({
  implanted: part,
  wasted: part,
  trays: part,
  pouches: part,
  singleUse: part,
  loans: part,
  /** With waste in it. Where prices are not known, at least this. */
  totalPence: z.number().int(),
  wasteShareOf: z.enum(['opened', 'total']),
  /** `null` where a price in it is not known, or nothing was opened. */
  wasteShare: z.number().nullable(),
  wasteBy: z.array(z.strictObject({ why: wasted.shape.why.unwrap(), pence: z.number().int() })),
});

export type CaseCostInput = z.output<typeof caseCostInput>;
export type CaseCostOutput = z.output<typeof caseCostOutput>;
export type CostPart = 'implanted' | 'wasted' | 'trays' | 'pouches' | 'singleUse' | 'loans';
export type WasteReason = z.output<typeof wasted>['why'];
