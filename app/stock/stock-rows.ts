import type { ShelfLotRow } from '@/db/queries/shelf/shelfRow';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { type ShelfLife, shelfLifeOf } from '@/lib/stock/shelfLife';
import { NOT_TAKEN_WORDS, turnWords } from '@/lib/wording/shelf';
import { FORM_WORDS, heldWords, ownerWords } from '@/lib/wording/stock';

interface ItemOfRow {
  itemId: string;
  code: string;
  name: string;
  maker: string;
  status: ShelfLotRow['status'];
  /** What is searched, small letters; empty in a browser. */
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

/** The heaps of one item as rows of both tables. */
export interface ShelfOfItem {
  item: ItemTableRow;
  lots: readonly LotTableRow[];
}

const kept = new WeakMap<readonly ShelfLotRow[], ShelfOfItem & { under: string }>();

/** Rows of the very same heaps, on the same day and by the same setting, are made once; nobody may change them. */
export function keptRows(
  lots: readonly ShelfLotRow[],
  { today, soonDays }: { today: PlainDate; soonDays: number },
): ShelfOfItem {
  const under = `${today} ${soonDays}`;
  const before = kept.get(lots);
  if (before?.under === under) return before;
  const withLife = lots.map((lot) => ({ lot, life: shelfLifeOf(lot.useBy, today, soonDays) }));
  const made = { under, item: itemRow(withLife), lots: withLife.map(lotRow) };
  kept.set(lots, made);
  return made;
}

interface LotWithLife {
  lot: ShelfLotRow;
  life: ShelfLife;
}

function lotRow({ lot, life }: LotWithLife): LotTableRow {
  return {
    ...itemOf(lot),
    text: small([lot.code, lot.name, lot.maker, ...wordsOf(lot)]),
    id: lot.id,
    pieces: lot.pieces?.all ?? null,
    free: lot.pieces?.free ?? null,
    turn: lot.turn,
    turnWords:
      lot.turn === null ? (lot.because === null ? '' : NOT_TAKEN_WORDS[lot.because]) : turnWords(lot.turn),
    form: FORM_WORDS[lot.form],
    lot: lot.lot,
    useBy: lot.useBy,
    state: life,
    owner: ownerWords(lot),
    place: lot.place,
    held: lot.heldBecause === null ? null : heldWords(lot.heldBecause),
  };
}

function itemRow(own: readonly LotWithLife[]): ItemTableRow {
  const [first] = own;
  if (!first) throw new Error('an item of the shelf has a heap');
  const next = own.find(({ lot }) => lot.turn === 1);
  const many = (is: (one: LotWithLife) => boolean) => own.filter(is).length;
  // one heap the reader counts blind hides the sum, from which it could be worked out
  const sum = (of: 'all' | 'free') =>
    own.reduce<number | null>(
      (total, { lot }) => (total === null || lot.pieces === null ? null : total + lot.pieces[of]),
      0,
    );
  const { code, name, maker } = first.lot;
  return {
    ...itemOf(first.lot),
    text: small([code, name, maker, ...own.flatMap(({ lot }) => wordsOf(lot))]),
    pieces: sum('all'),
    free: sum('free'),
    heaps: own.length,
    next: next ? { lot: next.lot.lot, useBy: next.lot.useBy, state: next.life, place: next.lot.place } : null,
    past: many(({ life }) => life === 'past'),
    soon: many(({ life }) => life === 'soon'),
    none: many(({ life }) => life === 'none'),
    held: many(({ lot }) => lot.heldBecause !== null),
    consignment: many(({ lot }) => lot.owner === 'consignment'),
  };
}
