import { and, desc, eq, gt, inArray, notInArray } from 'drizzle-orm';
import { BOOKKEEPING_ACTS } from '@/lib/ledger/effect';
import type { PlainDate } from '@/lib/quantities/plainDate';
import type { ListEntry } from '@/lib/theatre/report/attribution';
import { type DayLook, type DayView, dayView, seenDay } from '@/lib/theatre/report/seen';
import { whyWords } from '@/lib/wording/day-changes';
import { mayRead, type Reading } from '../../reader';
import { dayLooks, ledger, ledgerThings, people } from '../../schema';
import { hiddenFrom } from '../bench/blind';

/**
 * The last look of a person at a day: the one at this view, or else the newest at another, so that who read the report of
 * the day before is told in the morning what changed overnight. `null`: they never marked the day as seen.
 */
export async function lastLook(
  db: Reading,
  personId: string,
  view: DayView,
  day: PlainDate,
): Promise<DayLook | null> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select()
    .from(dayLooks)
    .where(and(eq(dayLooks.personId, personId), eq(dayLooks.day, day)))
    .orderBy(desc(dayLooks.shownAt));
  const row = rows.find((one) => one.view === view) ?? rows[0];
  if (!row) return null;
  const { shownAt, ledgerSeq, seen } = row;
  return { view: dayView.parse(row.view), shownAt, ledgerSeq, seen: seenDay.parse(seen) };
}

/** SQLite takes 32,766 values a statement; a day names far fewer. */
const MOST_THINGS = 2_000;
const MOST_ENTRIES = 2_000;

/**
 * Entries made after a look that name one of these cases or sets, the newest first; none of a set that the reader is to check
 * blind.
 */
export async function entriesSince(
  db: Reading,
  ledgerSeq: number,
  things: readonly string[],
): Promise<ListEntry[]> {
  mayRead(db, 'readHospital');
  const hidden = await hiddenFrom(db);
  const asked = things.filter((thing) => !hidden.has(thing)).slice(0, MOST_THINGS);
  if (asked.length === 0) return [];
  const rows = await db.read
    .select({
      seq: ledger.seq,
      thing: ledgerThings.thing,
      at: ledger.doneAt,
      by: people.name,
      action: ledger.action,
      detail: ledger.detail,
      subjectId: ledger.subjectId,
    })
    .from(ledgerThings)
    .innerJoin(ledger, eq(ledger.seq, ledgerThings.seq))
    .leftJoin(people, eq(people.id, ledger.personId))
    .where(
      and(
        inArray(ledgerThings.thing, asked),
        gt(ledgerThings.seq, ledgerSeq),
        notInArray(ledger.action, [...BOOKKEEPING_ACTS]),
      ),
    )
    .orderBy(desc(ledger.seq))
    .limit(MOST_ENTRIES);
  const entries = new Map<number, ListEntry & { things: string[] }>();
  for (const { thing, detail, subjectId, ...row } of rows) {
    if (hidden.has(subjectId)) continue;
    const entry = entries.get(row.seq) ?? { ...row, why: whyWords(detail), things: [] };
    entry.things.push(thing);
    entries.set(row.seq, entry);
  }
  return [...entries.values()];
}
