import { type SQL, sql } from 'drizzle-orm';
import type { DateBounds } from '@/lib/fhir/dateBounds';
import type { UsedPieceFacts } from '@/lib/fhir/deviceUsage';
import { mayRead, type Reading } from '../../reader';
import { among, every, type ItemAsked, ofItems, type PageOf, pageOf, within } from './conditions';

/** A piece of a move of the journal: the how many-th, from 1. */
export interface PieceKey {
  seq: number;
  nth: number;
}

export interface UsedPiecesAsked {
  keys: readonly PieceKey[] | null;
  after: PieceKey | null;
  limit: number;
  item: ItemAsked;
  lots: readonly string[] | null;
  cases: readonly string[] | null;
  /** As `deviceUsageStatus` says it. */
  statuses: readonly string[] | null;
  used: readonly DateBounds[];
}

interface Row extends Omit<UsedPieceFacts, 'nth' | 'item' | 'takenBack'> {
  quantity: number;
  takenBack: number;
  itemId: string;
  code: string;
  name: string;
  gtin: string | null;
}

/**
 * Pieces that were implanted or wasted in cases, in the order of the journal, one row a piece. What a record of use says is read
 * once it is closed: until then it may still be taken back without a word.
 */
export async function usedPiecesPage(db: Reading, asked: UsedPiecesAsked): Promise<PageOf<UsedPieceFacts>> {
  mayRead(db, 'readHospital');
  const { keys, after } = asked;
  const rows = await db.read.all<Row>(sql`
    SELECT move.seq, move.act, move.reason, move.quantity, move.lot, move.use_by AS useBy, move.done_at AS doneAt,
      struck.move_seq IS NOT NULL AS takenBack, items.id AS itemId, items.code, items.name, items.gtin,
      cases.reference AS caseReference,
      max(move.entered_at, coalesce(record.closed_at, ''), coalesce(correction.entered_at, '')) AS changedAt
    FROM piece_moves move JOIN items ON items.id = move.item_id JOIN cases ON cases.id = move.case_id
    LEFT JOIN case_uses record ON record.case_id = move.case_id
    LEFT JOIN moves_taken_back struck ON struck.move_seq = move.seq LEFT JOIN use_entries correction ON correction.id = struck.entry_id
    WHERE move.act IN ('implanted', 'wasted') AND (record.case_id IS NULL OR record.closed_at IS NOT NULL) AND ${every(
      keys &&
        among(
          sql`move.seq`,
          keys.map(({ seq }) => seq),
        ),
      after && sql`(move.seq > ${after.seq} OR (move.seq = ${after.seq} AND move.quantity > ${after.nth}))`,
      ofItems(sql`move.item_id`, asked.item),
      among(sql`move.lot`, asked.lots),
      among(sql`cases.reference`, asked.cases),
      among(STATUS, asked.statuses),
      within(sql`move.done_at`, asked.used),
    )}
    ORDER BY move.seq LIMIT ${asked.limit + 1}`);
  const pieces = rows.flatMap(({ quantity, takenBack, itemId, code, name, gtin, ...row }) =>
    Array.from({ length: quantity }, (_, index): UsedPieceFacts => {
      const item = { id: itemId, code, name, gtin };
      return { ...row, nth: index + 1, takenBack: takenBack === 1, item };
    }),
  );
  const isAsked = ({ seq, nth }: PieceKey) =>
    keys === null || keys.some((key) => key.seq === seq && key.nth === nth);
  const isLater = ({ seq, nth }: PieceKey) =>
    after === null || seq > after.seq || (seq === after.seq && nth > after.nth);
  return pageOf(
    pieces.filter((piece) => isAsked(piece) && isLater(piece)),
    asked.limit,
  );
}

/** The table of `lib/fhir/deviceUsage.ts`, so that a status can be searched for; a test compares the two. */
const STATUS: SQL = sql`CASE WHEN struck.move_seq IS NOT NULL THEN 'entered-in-error' WHEN move.act = 'implanted' THEN 'active' ELSE 'not-done' END`;
