import { and, desc, eq, lt } from 'drizzle-orm';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { addDays, type PlainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import type { DayView, SeenCase } from '@/lib/theatre/report/seen';
import { dayChangesWords as words } from '@/lib/wording/day-changes';
import type { Database } from '../../client';
import type { Person } from '../../queries/people';
import { dayLooks, ledger } from '../../schema';

interface MarkDaySeen {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  view: DayView;
  day: PlainDate;
  /** When the page was made, and the newest entry of the ledger then. */
  shownAt: string;
  ledgerSeq: number;
  /** What the page showed. */
  seen: readonly SeenCase[];
}

/** Whoever looks back further than this reads the ledger. */
const KEPT_DAYS = 60;

/**
 * Keeps that a person has seen a day as it was shown to them; what came between showing and marking stays news. A page shown
 * before the look on record changes nothing. A mark for reading, so the ledger does not speak of it.
 */
export async function markDaySeen(request: MarkDaySeen): Promise<Outcome<{ shownAt: string }>> {
  const { db, now, person, view, day, shownAt, ledgerSeq, seen } = request;
  if (!may(person, 'readHospital')) return refused('notPermitted', words.mayNotLook(person.name));
  if (shownAt > now) return refused('frozen', words.notYet);
  return db.tx(async (write) => {
    const [head] = await write.select({ seq: ledger.seq }).from(ledger).orderBy(desc(ledger.seq)).limit(1);
    if (ledgerSeq > (head?.seq ?? 0)) return refused('frozen', words.notYet);
    const own = and(eq(dayLooks.personId, person.id), eq(dayLooks.view, view), eq(dayLooks.day, day));
    const [before] = await write
      .select({ shownAt: dayLooks.shownAt, ledgerSeq: dayLooks.ledgerSeq })
      .from(dayLooks)
      .where(own);
    if (before && (before.shownAt >= shownAt || before.ledgerSeq > ledgerSeq))
      return { ok: true, value: { shownAt: before.shownAt } };
    const look = { shownAt, markedAt: now, ledgerSeq, seen };
    if (before) await write.update(dayLooks).set(look).where(own);
    else await write.insert(dayLooks).values({ personId: person.id, view, day, ...look });
    const oldest = addDays(wallClock(now).date, -KEPT_DAYS);
    await write.delete(dayLooks).where(and(eq(dayLooks.personId, person.id), lt(dayLooks.day, oldest)));
    return { ok: true, value: { shownAt } };
  });
}
