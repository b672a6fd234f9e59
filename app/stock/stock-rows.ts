import type { ShelfLotRow } from '@/db/queries/shelf/shelfLots';
import { groupBy } from '@/lib/lists/groupBy';
import type { ShelfLife } from '@/lib/stock/shelfLife';
import { NOT_TAKEN_WORDS, turnWords } from '@/lib/wording/shelf';
import { FORM_WORDS, heldWords, ownerWords } from '@/lib/wording/stock';

interface ItemOfRow {
  itemId: string;
  code: string;
  name: string;
  maker: string;
  status: ShelfLotRow['status'];
  /** What is searched, small letters; empty where nothing is searched for. */
  text: string;
}

/** A heap as a row of the table. */
export interface LotTableRow extends ItemOfRow {
  id: string;
  /** `null`: the reader counts it now. */
  pieces: number | null;
  free: number | null;
  turn: number | null;
  turnWords: string;
  form: string;
  lot: string | null;
  useBy: string | null;
  state: ShelfLife;
  owner: string;
  place: string;
  held: string | null;
}

/** An item as a row of the table, with the heap that is taken first. */
export interface ItemTableRow extends ItemOfRow {
  pieces: number | null;
  free: number | null;
  heaps: number;
  /** Its lot, use-by and place; `null` where nothing may be taken today. */
  next: { lot: string | null; useBy: string | null; state: ShelfLife; place: string } | null;
  past: number;
  soon: number;
  held: number;
  none: number;
  consignment: number;
}

const small = (words: readonly (string | null)[]): string =>
  words
    .filter((word) => word !== null)
    .join(' ')
    .toLowerCase();

const itemOf = (lot: ShelfLotRow) => ({
  itemId: lot.itemId,
  code: lot.code,
  name: lot.name,
  maker: lot.maker,
  status: lot.status,
});

const wordsOf = (lot: ShelfLotRow) => [
  lot.lot,
  lot.place,
  FORM_WORDS[lot.form],
  ownerWords(lot),
  ...lot.labels,
];

export function lotRows(
  lots: readonly ShelfLotRow[],
  lifeOf: readonly ShelfLife[],
  isSearched: boolean,
): LotTableRow[] {
  return lots.map((lot, at) => ({
    ...itemOf(lot),
    text: isSearched ? small([lot.code, lot.name, lot.maker, ...wordsOf(lot)]) : '',
    id: lot.id,
    pieces: lot.pieces?.all ?? null,
    free: lot.pieces?.free ?? null,
    turn: lot.turn,
    turnWords:
      lot.turn === null ? (lot.because === null ? '' : NOT_TAKEN_WORDS[lot.because]) : turnWords(lot.turn),
    form: FORM_WORDS[lot.form],
    lot: lot.lot,
    useBy: lot.useBy,
    state: lifeOf[at] ?? 'none',
    owner: ownerWords(lot),
    place: lot.place,
    held: lot.heldBecause === null ? null : heldWords(lot.heldBecause),
  }));
}

export function itemRows(
  lots: readonly ShelfLotRow[],
  lifeOf: readonly ShelfLife[],
  isSearched: boolean,
): ItemTableRow[] {
  const withLife = lots.map((lot, at) => ({ lot, life: lifeOf[at] ?? ('none' as const) }));
  return [...groupBy(withLife, ({ lot }) => lot.itemId).values()].flatMap((own): ItemTableRow[] => {
    const [first] = own;
    if (!first) return [];
    const next = own.find(({ lot }) => lot.turn === 1);
    const many = (is: (one: (typeof own)[number]) => boolean) => own.filter(is).length;
    // one heap the reader counts blind hides the sum, from which it could be worked out
    const sum = (of: 'all' | 'free') =>
      own.reduce<number | null>(
        (total, { lot }) => (total === null || lot.pieces === null ? null : total + lot.pieces[of]),
        0,
      );
    return [
      {
        ...itemOf(first.lot),
        text: isSearched
          ? small([
              first.lot.code,
              first.lot.name,
              first.lot.maker,
              ...own.flatMap(({ lot }) => wordsOf(lot)),
            ])
          : '',
        pieces: sum('all'),
        free: sum('free'),
        heaps: own.length,
        next: next
          ? { lot: next.lot.lot, useBy: next.lot.useBy, state: next.life, place: next.lot.place }
          : null,
        past: many(({ life }) => life === 'past'),
        soon: many(({ life }) => life === 'soon'),
        none: many(({ life }) => life === 'none'),
        held: many(({ lot }) => lot.heldBecause !== null),
        consignment: many(({ lot }) => lot.owner === 'consignment'),
      },
    ];
  });
}
