import type { Item } from '@/lib/catalogue/item';
import type { CountSheetOf } from '@/lib/documents/countSheet';
import { type ItemId, itemId, lineId } from '@/lib/identity/ids';
import { DEFAULT_SET_SETTINGS, type HeldLine } from '@/lib/sets/holdings';
import { bitFor, plateFor, screwFor, sleeveFor } from '../../fixtures/catalogueItems';

export const PRINTING = { hospital: 'Larkmoor Infirmary', at: '2026-01-14T06:30:00.000Z', by: 'Imogen Vale' };

export const RACK = itemId.parse('item_rack');

const LENGTHS = [10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 35, 40];

function rackItem(): Item {
  const { kind, form, ends, onlyForPlates, lengthUm, ...common } = sleeveFor();
  return {
    ...common,
    id: RACK,
    code: 'R-1',
    name: 'Screw rack',
    kind: 'rack',
    rows: 4,
    columns: 20,
    forThreadUm: null,
    lengthUm: null,
    widthUm: null,
    heightUm: null,
  };
}

export function catalogueForSheet(): Map<ItemId, Item> {
  const screws = ['cortical 3.5', 'locking 3.5'].flatMap((screwFamily, family) =>
    LENGTHS.map((mm) =>
      screwFor({
        id: itemId.parse(`item_screw-${family}-${mm}`),
        code: `C-${family}-${mm}`,
        name: `${screwFamily} × ${mm} mm`,
        screwFamily,
        lengthUm: mm * 1000,
      }),
    ),
  );
  const items: Item[] = [plateFor(), bitFor(), sleeveFor(), rackItem(), ...screws];
  return new Map(items.map((item) => [item.id, item]));
}

let made = 0;

export function lineFor(changes: Partial<HeldLine> = {}): HeldLine {
  made += 1;
  return {
    id: lineId.parse(`line_${made}`),
    itemId: bitFor().id,
    layer: 1,
    row: 1,
    slot: 1,
    rackItemId: null,
    expected: 2,
    minimum: 1,
    mustHaveClass: 1,
    substitutes: [],
    found: null,
    unsound: 0,
    condition: 'sound',
    ...changes,
  };
}

/** A screw of the rack in layer 2: family 0 or 1, its length from the list of lengths made. */
export function screwLine(family: number, mm: number, changes: Partial<HeldLine> = {}): HeldLine {
  return lineFor({
    itemId: itemId.parse(`item_screw-${family}-${mm}`),
    layer: 2,
    row: 2 + family,
    slot: LENGTHS.indexOf(mm) + 1,
    rackItemId: RACK,
    mustHaveClass: 2,
    ...changes,
  });
}

/** A set of two layers: a bit and a plate, then a rack with two families of which the second has fewer lengths. */
export function setForSheet(
  changes: Partial<CountSheetOf['set']> = {},
  lines: HeldLine[] = [
    lineFor({ itemId: bitFor().id, slot: 1 }),
    lineFor({ itemId: plateFor().id, slot: 2, expected: 1, mustHaveClass: 3, minimum: 0 }),
    lineFor({ itemId: RACK, layer: 2, expected: 1, minimum: 0, mustHaveClass: 3 }),
    ...LENGTHS.map((mm) => screwLine(0, mm, { expected: 4 })),
    ...[16, 20, 40].map((mm) => screwLine(1, mm, { expected: 3 })),
  ],
): CountSheetOf {
  return {
    set: {
      code: 'SFS-01',
      owner: 'ours',
      ownerNote: null,
      step: 'onBench',
      heldBecause: null,
      useBy: null,
      place: { name: 'Packing bench' },
      revision: 4,
      configuration: { name: 'Small fragment' },
      version: { version: 3, status: 'inForce' },
      lines,
      foreign: [],
      ...changes,
    },
    version: {
      layers: [
        { layer: 1, name: 'Instruments' },
        { layer: 2, name: 'Screws' },
      ],
      basketItemId: null,
      containerItemId: null,
    },
    items: catalogueForSheet(),
    settings: DEFAULT_SET_SETTINGS,
    printing: PRINTING,
  };
}
