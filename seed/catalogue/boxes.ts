import { type EntryOf, instrument, um } from './entry';

const rack = (
  code: string,
  name: string,
  rows: number,
  columns: number,
  forThreadMm: number | null,
): EntryOf<'rack'> => ({
  ...instrument('pelham', code, name, {
    massGrams: 120 + rows * columns * 3,
    unitCostPence: 28_000,
    partsPerPiece: 2,
  }),
  kind: 'rack',
  rows,
  columns,
  forThreadUm: um(forThreadMm),
  lengthUm: um(columns * 9 + 20),
  widthUm: um(rows * 12 + 20),
  heightUm: um(42),
});

const basket = (
  code: string,
  name: string,
  l: number,
  w: number,
  h: number,
  massGrams: number,
): EntryOf<'basket'> => ({
  ...instrument('pelham', code, name, { massGrams, unitCostPence: 14_500 }),
  kind: 'basket',
  lengthUm: um(l),
  widthUm: um(w),
  heightUm: um(h),
});

const container = (
  code: string,
  name: string,
  l: number,
  w: number,
  h: number,
  massGrams: number,
): EntryOf<'container'> => ({
  ...instrument('pelham', code, name, {
    material: 'other',
    massGrams,
    unitCostPence: 39_000,
    partsPerPiece: 2,
  }),
  kind: 'container',
  lengthUm: um(l),
  widthUm: um(w),
  heightUm: um(h),
});

/** Racks, baskets and containers; sizes of the usual half and full module, common practice, no source. */
export function boxes(): (EntryOf<'rack'> | EntryOf<'basket'> | EntryOf<'container'>)[] {
  return [
    rack('PT-R-MINI', 'Screw rack, mini', 4, 12, 2),
    rack('PT-R-27', 'Screw rack 2.7', 3, 17, 2.7),
    rack('PT-R-SMALL', 'Screw rack, small', 4, 24, 3.5),
    rack('PT-R-SMALL-L', 'Screw rack, small, with locking row', 5, 24, 3.5),
    rack('PT-R-LARGE', 'Screw rack, large', 4, 24, 4.5),
    rack('PT-R-LARGE-L', 'Screw rack, large, with locking row', 5, 24, 5),
    basket('PT-Y-HALF', 'Basket, half module, 50 mm', 255, 245, 50, 520),
    basket('PT-Y-FULL-50', 'Basket, full module, 50 mm', 540, 253, 50, 940),
    basket('PT-Y-FULL-100', 'Basket, full module, 100 mm', 540, 253, 100, 1_180),
    container('PT-Z-HALF', 'Container, half module', 300, 280, 110, 1_650),
    container('PT-Z-FULL-150', 'Container, full module, 150 mm', 590, 280, 150, 2_900),
    container('PT-Z-FULL-200', 'Container, full module, 200 mm', 590, 280, 200, 3_300),
  ];
}
