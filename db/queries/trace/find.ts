import { type SQL, sql } from 'drizzle-orm';
import { identifier } from '@/lib/calculations/identifier/identifier';
import { searchFrom } from '@/lib/catalogue/search';
import { mayRead, type Reading } from '../../reader';
import { searchCatalogue } from '../catalogueSearch';
import { meaningOf } from '../scans/meaningOf';

/** What a search names, each with the question that traces it. */
export type Found =
  | { kind: 'lot'; itemId: string; name: string; lot: string; receivedAt: string }
  | { kind: 'item'; itemId: string; code: string; name: string }
  | { kind: 'set'; setId: string; code: string }
  | { kind: 'load'; loadId: string; number: string }
  | { kind: 'case'; caseId: string; reference: string };

export interface Search {
  found: Found[];
  /** The lot a code states that nothing here is known of. */
  unknownLot: string | null;
}

const MOST = 40;

/** Lots of this very number, whatever they are of. */
export const lotsNamed = (lot: string): SQL => sql`
  SELECT item.id AS itemId, item.name, move.lot, min(move.done_at) AS receivedAt
    FROM piece_moves move INDEXED BY piece_moves_by_lot JOIN items item ON item.id = move.item_id
    WHERE move.lot = ${lot} GROUP BY move.item_id ORDER BY item.code LIMIT ${MOST}`;

/** The lots of an item, the newest first. */
export const lotsOfItem = (itemId: string): SQL => sql`
  SELECT move.item_id AS itemId, item.name, move.lot, min(move.done_at) AS receivedAt
    FROM piece_moves move INDEXED BY piece_moves_by_item JOIN items item ON item.id = move.item_id
    WHERE move.item_id = ${itemId} AND move.lot IS NOT NULL GROUP BY move.lot ORDER BY receivedAt DESC LIMIT ${MOST}`;

type LotRow = { itemId: string; name: string; lot: string; receivedAt: string };

/**
 * What a typed or scanned text names: a maker's code with its lot, a lot number, a set, load, case or pack, or an item by
 * code or name. All that fits is told; nothing is chosen.
 */
export async function findForTrace(db: Reading, typed: string, now: string): Promise<Search> {
  mayRead(db, 'readHospital');
  const text = typed.trim();
  if (text === '') return { found: [], unknownLot: null };
  const { read } = db;
  const found: Found[] = [];
  const lots = (rows: LotRow[]) => found.push(...rows.map((row) => ({ kind: 'lot' as const, ...row })));
  lots(read.all(lotsNamed(text)) as LotRow[]);
  let unknownLot: string | null = null;
  const said = identifier({ text, currentYear: Number(now.slice(0, 4)), separators: 'mayBeLost' });
  if (said.outcome === 'answered') {
    const meaning = await meaningOf(read, text, said.answer);
    switch (meaning.kind) {
      case 'item': {
        const { itemId, code, name, lot } = meaning;
        if (lot !== null) {
          const its = (read.all(lotsNamed(lot)) as LotRow[]).filter((row) => row.itemId === itemId);
          if (its.length === 0) unknownLot = lot;
          else lots(its);
        }
        found.push({ kind: 'item', itemId, code, name });
        if (lot === null) lots(read.all(lotsOfItem(itemId)) as LotRow[]);
        break;
      }
      case 'set':
        found.push({ kind: 'set', setId: meaning.setId, code: meaning.code });
        break;
      case 'pack':
        if (meaning.setId !== null) found.push({ kind: 'set', setId: meaning.setId, code: meaning.code });
        if (meaning.itemId !== null && meaning.lot !== null)
          lots((read.all(lotsNamed(meaning.lot)) as LotRow[]).filter((row) => row.itemId === meaning.itemId));
        if (meaning.loadId !== null)
          found.push({ kind: 'load', loadId: meaning.loadId, number: 'of the pack' });
        break;
      case 'load':
        found.push({ kind: 'load', loadId: meaning.loadId, number: meaning.number });
        break;
      case 'case':
        found.push({ kind: 'case', caseId: meaning.caseId, reference: meaning.reference });
        break;
      case 'stock':
        if (meaning.lot !== null)
          lots((read.all(lotsNamed(meaning.lot)) as LotRow[]).filter((row) => row.itemId === meaning.itemId));
        break;
      default:
        break;
    }
  }
  const known = new Set(found.flatMap((one) => (one.kind === 'item' ? [one.itemId] : [])));
  const items = await searchCatalogue(db, searchFrom(new URLSearchParams({ q: text })));
  for (const { id, code, name } of items.slice(0, MOST))
    if (!known.has(id)) found.push({ kind: 'item', itemId: id, code, name });
  return { found: distinct(found), unknownLot };
}

const keyOf = (one: Found) => JSON.stringify({ ...one, name: null });

const distinct = (found: readonly Found[]): Found[] => [
  ...new Map(found.map((one) => [keyOf(one), one])).values(),
];
