import { type SQL, sql } from 'drizzle-orm';
import type { DateBounds } from '@/lib/fhir/dateBounds';
import type { UsedPieceFacts } from '@/lib/fhir/deviceUsage';
import { wallClock } from '@/lib/theatre/localTime';
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
  const rows = await db.read.all<Row>(usedPiecesQuery(asked));
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

/** The moves of a page and one more, each with all of its pieces; asked for its plan by the tests. */
export function usedPiecesQuery({ keys, after, ...asked }: UsedPiecesAsked): SQL {
  return sql`
    SELECT move.seq, move.act, move.reason, move.quantity, move.lot, move.use_by AS useBy, move.done_at AS doneAt,
      struck.move_seq IS NOT NULL AS takenBack, items.id AS itemId, items.code, items.name, items.gtin,
      cases.reference AS caseReference,
      max(move.entered_at, coalesce(record.closed_at, ''), coalesce(correction.entered_at, '')) AS changedAt
    -- the journal first, whatever is asked: its order is the order of the pages, so that a page is read and no more
    FROM piece_moves move CROSS JOIN items ON items.id = move.item_id CROSS JOIN cases ON cases.id = move.case_id
    LEFT JOIN case_uses record ON record.case_id = move.case_id
    LEFT JOIN moves_taken_back struck ON struck.move_seq = move.seq LEFT JOIN use_entries correction ON correction.id = struck.entry_id
    WHERE move.act IN ('implanted', 'wasted') AND (record.case_id IS NULL OR record.closed_at IS NOT NULL) AND ${every(
      keys &&
        among(
          sql`move.seq`,
          keys.map(({ seq }) => seq),
        ),
      after && sql`move.seq >= ${after.seq} AND (move.seq > ${after.seq} OR move.quantity > ${after.nth})`,
      ofItems(sql`move.item_id`, asked.item),
      among(sql`move.lot`, asked.lots),
      asked.cases && sql`move.case_id IN (SELECT id FROM cases WHERE ${among(sql`reference`, asked.cases)})`,
      among(STATUS, asked.statuses),
      // of what was corrected there is little: it is looked up, not looked for
      asked.statuses?.every((status) => status === 'entered-in-error')
        ? sql`move.seq IN (SELECT move_seq FROM moves_taken_back)`
        : null,
      onDays(asked.used, after),
    )}
    ORDER BY move.seq LIMIT ${asked.limit + 1}`;
}

/** By the hospital’s day, which the journal is indexed by, and then by the instant. */
function onDays(used: readonly DateBounds[], after: PieceKey | null): SQL | null {
  if (used.length === 0) return null;
  const days = used.flatMap(({ from, until }) => [
    from === null ? null : sql`done_on >= ${wallClock(from).date}`,
    until === null ? null : sql`done_on <= ${wallClock(until).date}`,
  ]);
  const inRange = every(...days, after && sql`seq >= ${after.seq}`);
  return every(
    sql`move.seq IN (SELECT seq FROM piece_moves WHERE act IN ('implanted', 'wasted') AND ${inRange})`,
    within(sql`move.done_at`, used),
  );
}

/** The table of `lib/fhir/deviceUsage.ts`, so that a status can be searched for; a test compares the two. */
const STATUS: SQL = sql`CASE WHEN struck.move_seq IS NOT NULL THEN 'entered-in-error' WHEN move.act = 'implanted' THEN 'active' ELSE 'not-done' END`;
