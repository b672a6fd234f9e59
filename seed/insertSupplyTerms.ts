import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { supplyTermsRows } from '@/db/schema';
import { MAKERS } from './catalogue/makers';

/** What is agreed with two of the makers. How long the third one takes nobody has stated yet. */
export async function insertSupplyTerms(write: Queries, at: string): Promise<void> {
  const stated = {
    reviewDays: null,
    servicePercent: null,
    changedBy: 'person_dilys-harrow',
    changedAt: at,
    revision: 1,
  };
  await insertMany(write, supplyTermsRows, [
    {
      ...stated,
      id: 'terms_demo-1',
      makerId: MAKERS.carrowby.id,
      itemId: null,
      leadDays: 5,
      leadSdDays: 2,
      shelfLifeDays: 1_825,
    },
    {
      ...stated,
      id: 'terms_demo-2',
      makerId: MAKERS.sallowfen.id,
      itemId: null,
      leadDays: 10,
      leadSdDays: 3,
      shelfLifeDays: 1_460,
    },
  ]);
}
