import { eq, type SQL, sql } from 'drizzle-orm';
import { recallReach } from '@/lib/trace/recall';
import type { Queries } from '../../client';
import { mayRead, type Reading } from '../../reader';
import { recalls } from '../../schema';
import { recallNames } from './recallNames';
import { ofRecall, type RecallRow } from './recallRow';

export interface RecallInList {
  id: string;
  number: string;
  what: string;
  reason: string;
  isRehearsal: boolean;
  openedAt: string;
  openedBy: string;
  closedAt: string | null;
  /** Cases that had it, or may have had it, as it was opened. */
  confirmed: number;
  possible: number;
  acknowledged: number;
  asked: number;
}

/** Closed recalls, the newest first, and where the next page begins. */
export interface ClosedRecalls {
  recalls: RecallInList[];
  /** `null`: there are no older ones. */
  olderThan: string | null;
}

const PAGE = 20;

const COLUMNS = sql`one.id, one.number, one.kind, one.item_id AS itemId, one.lot, one.set_id AS setId, one.load_id AS loadId,
  one.reason, one.is_rehearsal AS isRehearsal, one.found, one.opened_at AS openedAt, one.closed_at AS closedAt,
  coalesce((SELECT name FROM people WHERE id = one.opened_by), 'somebody') AS openedBy,
  (SELECT count(*) FROM recall_tasks task WHERE task.recall_id = one.id) AS asked,
  (SELECT count(acknowledged_at) FROM recall_tasks task WHERE task.recall_id = one.id) AS acknowledged`;

/** Every recall that is open, the newest first. */
export const openOnes = sql`
  SELECT ${COLUMNS} FROM recalls one INDEXED BY recalls_open WHERE one.closed_at IS NULL
    ORDER BY one.opened_at DESC, one.id DESC`;

/** A page of those closed, older than a number; numbers only grow. */
export const closedPage = (olderThan: string): SQL => sql`
  SELECT ${COLUMNS} FROM recalls one INDEXED BY recalls_closed WHERE one.closed_at IS NOT NULL AND one.number < ${olderThan}
    ORDER BY one.number DESC LIMIT ${PAGE + 1}`;

export async function listOpenRecalls(db: Reading): Promise<RecallInList[]> {
  mayRead(db, 'readHospital');
  return listed(db.read, db.read.all(openOnes) as Row[]);
}

/** What a recall is called, without what it reaches; `null` where there is none. */
export async function recallHeading(
  db: Reading,
  id: string,
): Promise<{ number: string; isRehearsal: boolean } | null> {
  mayRead(db, 'readHospital');
  const [row] = await db.read
    .select({ number: recalls.number, isRehearsal: recalls.isRehearsal })
    .from(recalls)
    .where(eq(recalls.id, id));
  return row ?? null;
}

/** Recalls, open and closed, the newest first; those older than a number where one is given. */
export async function recallsAfter(
  db: Reading,
  { after, limit }: { after: string | null; limit: number },
): Promise<RecallInList[]> {
  mayRead(db, 'readHospital');
  const rows = db.read.all(sql`
    SELECT ${COLUMNS} FROM recalls one WHERE one.number < ${after ?? AFTER_ALL} ORDER BY one.number DESC LIMIT ${limit}`);
  return listed(db.read, rows as Row[]);
}

/** @param olderThan the number of a recall, as `olderThan` of the page before; `null`: the first page */
export async function listClosedRecalls(db: Reading, olderThan: string | null): Promise<ClosedRecalls> {
  mayRead(db, 'readHospital');
  const rows = db.read.all(closedPage(olderThan ?? AFTER_ALL)) as Row[];
  const listedHere = await listed(db.read, rows.slice(0, PAGE));
  return { recalls: listedHere, olderThan: rows.length > PAGE ? (listedHere.at(-1)?.number ?? null) : null };
}

/** After the number of every recall. */
const AFTER_ALL = 'S';

type Row = Pick<RecallRow, 'id' | 'number' | 'kind' | 'itemId' | 'lot' | 'setId' | 'loadId' | 'reason'> &
  Pick<RecallRow, 'openedAt' | 'closedAt' | 'openedBy'> & {
    isRehearsal: number;
    found: string;
    asked: number;
    acknowledged: number;
  };

async function listed(read: Queries, rows: readonly Row[]): Promise<RecallInList[]> {
  const list: RecallInList[] = [];
  for (const { kind, itemId, lot, setId, loadId, found, isRehearsal, ...one } of rows) {
    const { cases } = recallReach.parse(JSON.parse(found));
    list.push({
      ...one,
      what: (await recallNames(read, ofRecall({ kind, itemId, lot, setId, loadId }))).what,
      isRehearsal: isRehearsal === 1,
      confirmed: cases.filter(({ standing }) => standing === 'confirmed').length,
      possible: cases.filter(({ standing }) => standing === 'possible').length,
    });
  }
  return list;
}
