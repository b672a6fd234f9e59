import type { z } from 'zod';
import type { item } from '@/lib/catalogue/item';
import { micronsFromMm } from '@/lib/quantities/length';
import { demoGtin } from './demoGtin';
import { MAKERS, type MakerKey } from './makers';

/** A catalogue entry as written here; `loadDemo` parses every one before it is stored. */
export type ItemEntry = z.input<typeof item>;
export type EntryOf<K extends ItemEntry['kind']> = Extract<ItemEntry, { kind: K }>;
export type PlateEntry = EntryOf<'plate'>;
export type ScrewEntry = EntryOf<'screw'>;

type Common = Omit<EntryOf<'basket'>, 'kind' | 'lengthUm' | 'widthUm' | 'heightUm'>;

/** The id of the entry with that code. */
export const idOfCode = (code: string) => `item_${code.toLowerCase().replaceAll(/[./]/g, '-')}`;

/** Millimetres to micrometres, leaving "not stated" as it is; sums of tenths are rounded back to what they mean. */
export const um = (mm: number | null) => (mm === null ? null : micronsFromMm(mm.toFixed(3)));

/** What a reprocessable instrument of steel carries unless said otherwise. */
export function instrument(maker: MakerKey, code: string, name: string, more: Partial<Common> = {}): Common {
  return {
    id: idOfCode(code),
    code,
    name,
    nickname: null,
    makerId: MAKERS[maker].id,
    side: null,
    material: 'iso7153-1',
    suppliedSterile: false,
    use: 'reprocessable',
    reprocessingLimit: null,
    massGrams: 60,
    unitCostPence: 9_500,
    packMultiple: 1,
    gtin: demoGtin(code),
    partsPerPiece: 1,
    status: 'current',
    ...more,
  };
}

/** What an implant carries: single use, in its maker's metal. */
export function implant(maker: MakerKey, code: string, name: string, more: Partial<Common> = {}): Common {
  return instrument(maker, code, name, {
    material: MAKERS[maker].implantMaterial,
    use: 'singleUse',
    ...more,
  });
}
