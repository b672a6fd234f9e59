import { bits } from './bits';
import { boxes } from './boxes';
import { cutters } from './cutters';
import { drivers } from './drivers';
import type { ItemEntry } from './entry';
import { otherInstruments } from './otherInstruments';
import { plates } from './plates';
import { screws } from './screws';
import { sleeves } from './sleeves';

/** The demo's whole catalogue, with what is deliberately wrong with some of it. */
export function catalogueEntries(): ItemEntry[] {
  const entries: ItemEntry[] = [
    ...plates(),
    ...screws(),
    ...bits(),
    ...sleeves(),
    ...cutters(),
    ...drivers(),
    ...otherInstruments(),
    ...boxes(),
  ];
  return entries.map((entry) => ({ ...entry, ...(UNUSUAL[entry.code] as object) }));
}

/** Entries that differ from their line: values nobody has stated, and designs no longer to be used. */
const UNUSUAL: Record<string, Partial<ItemEntry>> = {
  'CR-P35-HS-08': { status: 'withdrawn' },
  'CR-B28-200': { status: 'recalled' },
  'CR-C40-40': { coreUm: null } as Partial<ItemEntry>,
  'CR-P35-K-05': { thicknessUm: null } as Partial<ItemEntry>,
  'SF-W-40': { material: null, massGrams: null },
  'CR-D-H25-S': { suppliedSterile: null },
};
