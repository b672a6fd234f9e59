import type { StockPlan } from './stockPlan';

/** A pouch packed here: no maker's lot, and a use-by of our own. */
const pouch = (
  code: string,
  quantity: number,
  useByDays: number,
  place: StockPlan['place'] = 'place_pouch-1',
  more: Partial<StockPlan> = {},
): StockPlan => ({
  code,
  form: 'pouch',
  quantity,
  lot: null,
  useByDays,
  place,
  ...more,
});

/** Sterile from the maker, by lot. */
const pack = (
  code: string,
  quantity: number,
  lot: string,
  useByDays: number,
  more: Partial<StockPlan> = {},
): StockPlan => ({
  code,
  form: 'sterilePacked',
  quantity,
  lot,
  useByDays,
  place: 'place_implant-cupboard',
  ...more,
});

/** Loose on the shelf, to refill racks from. */
const shelf = (code: string, quantity: number, lot: string | null): StockPlan => ({
  code,
  form: 'unsterile',
  quantity,
  lot,
  useByDays: null,
  place: 'place_general-stores',
});

const consignment = { owner: 'consignment', place: 'place_consignment' } as const;

const POUCHES: StockPlan[] = [
  // the one limiter of the night case
  pouch('PT-L-1500', 1, 88),
  pouch('PT-L-4000', 1, 70),
  pouch('CR-S-E35', 1, 64),
  pouch('CR-S-E45', 1, 40),
  pouch('CR-B25-110', 3, 90),
  pouch('CR-B25-180', 1, 2),
  pouch('CR-B28-165', 2, 51),
  pouch('CR-B32-145', 2, 75),
  pouch('CR-B45-145', 1, 75),
  pouch('SF-B27-110', 1, 33),
  pouch('CR-D-H25', 2, 100),
  pouch('CR-D-H25-S', 2, 100),
  pouch('CR-D-X15-S', 1, 100),
  pouch('CR-D-H15', 1, -6, 'place_pouch-2'),
  pouch('SF-D-X08-S', 1, 45),
  pouch('SF-D-X15-S', 1, 80),
  pouch('CR-G-SMALL', 1, 58),
  pouch('CR-G-LARGE', 1, 58),
  pouch('PT-H-SMALL', 2, 120, 'place_pouch-2'),
  pouch('PT-H-LARGE', 1, 120, 'place_pouch-2'),
  pouch('PT-P-WIRE', 1, 20, 'place_pouch-2'),
  pouch('PT-S-W16', 2, 95, 'place_pouch-2'),
  pouch('PT-F-P180', 2, 110, 'place_pouch-2'),
  pouch('PT-F-P205', 1, 110, 'place_pouch-2'),
  pouch('PT-X-HOOK', 1, 14, 'place_pouch-2'),
  pouch('PT-X-SCREWOUT', 1, 140, 'place_pouch-2'),
  pouch('CR-T-HA45', 1, 30),
  pouch('CR-C35-24', 1, 25, 'place_pouch-2'),
  // held: the wrap was torn
  pouch('SF-S-T27', 1, 60, 'place_held-shelf', { heldBecause: 'wrapWetTornOrUnsealed' }),
];

const PACKS: StockPlan[] = [
  ...['L', 'R'].flatMap((side) => [
    pack(`SF-PT50-${side}-05`, 1, `PT5${side}-2207`, 410),
    pack(`SF-PT50-${side}-07`, 1, `PT5${side}-2214`, 395),
    pack(`SF-DF50-${side}-09`, 1, `DF5${side}-1903`, 230, consignment),
    pack(`SF-DF50-${side}-11`, 1, `DF5${side}-1911`, 228, consignment),
  ]),
  pack('SF-Q50-N-09', 1, 'Q50-0915', 340),
  pack('SF-Q50-N-10', 1, 'Q50-1002', 340),
  pack('SF-DF50-L-07', 1, 'DF5L-1888', 1),
  pack('SF-PT50-R-09', 1, 'PT5R-1750', -3),
  // cannulated screws by lot, the earliest first out; one lot is past its use-by
  ...[30, 32, 34, 36, 38, 40, 42, 44, 46].flatMap((mm) => [
    pack(`SF-N40-${mm}`, 2, `N40-${mm}-A`, 28),
    pack(`SF-N40-${mm}`, 2, `N40-${mm}-B`, 300),
  ]),
  pack('SF-N40-40', 1, 'N40-40-Z', -11),
  pack('SF-N40-50', 2, 'N40-50-A', 5),
  // single screws in sterile packs, for lengths that run out
  pack('SF-L27-20', 2, 'L27-5521', 120),
  pack('SF-L27-22', 2, 'L27-5537', 2),
  pack('SF-L27-24', 1, 'L27-5540', 160),
  pack('SF-L35-36', 1, 'L35-8104', 44, consignment),
  pack('SF-L35-40', 2, 'L35-8110', 90, consignment),
  pack('SF-DR27-R-03', 1, 'DR27-3302', 4, consignment),
  pack('SF-DR27-L-03', 1, 'DR27-3311', 200, consignment),
  pack('SF-PH35-03', 1, 'PH35-0417', 260, consignment),
  pack('SF-L50-70', 2, 'L50-6620', 75),
  // recalled lot, held until it goes back
  pack('SF-C35-16', 4, 'C35-4009', 500, { place: 'place_held-shelf', heldBecause: 'recall' }),
];

const SHELF: StockPlan[] = [
  ...[12, 14, 16, 18, 20, 22, 24, 26, 28, 30].map((mm) => shelf(`CR-C35-${mm}`, 10, `C35-${mm}-91`)),
  ...[14, 16, 18, 20, 22, 24].map((mm) => shelf(`CR-L35-${mm}`, 6, `L35-${mm}-40`)),
  ...[18, 20, 22, 24].map((mm) => shelf(`SF-L27-${mm}`, 5, `L27-${mm}-18`)),
  ...[32, 34, 36, 38, 40].map((mm) => shelf(`CR-C45-${mm}`, 10, `C45-${mm}-77`)),
  ...[5, 6, 7, 8].map((count) => shelf(`CR-P35-H-0${count}`, 3, `H35-${count}-12`)),
  shelf('CR-B25-110', 12, 'B25-330'),
  shelf('CR-B28-165', 6, 'B28-318'),
  shelf('SF-B25-125', 9, 'B25-T44'),
  shelf('PT-W-16-150', 80, 'W16-2'),
  shelf('PT-W-12-150', 60, 'W12-2'),
  shelf('PT-D-Q', 1, null),
  shelf('PT-C-FILTER', 400, null),
  shelf('PT-C-SEAL', 300, null),
  shelf('PT-C-POUCH', 800, null),
];

/** Everything on the shelves of the demo outside sets. */
export const STOCK: StockPlan[] = [...POUCHES, ...PACKS, ...SHELF];
