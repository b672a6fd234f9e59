import { and, desc, eq, gt, gte, inArray, isNull, ne, or, sql } from 'drizzle-orm';
import { type CaseId, caseId } from '@/lib/identity/ids';
import { groupBy } from '@/lib/lists/groupBy';
import {
  hasOwnList,
  LIST_ACTS,
  type ListAct,
  type ListChange,
  listChangeFrom,
} from '@/lib/theatre/listChange';
import { mayRead, type Reading } from '../../reader';
import { cases, ledger, listMarks, people, sets, theatres } from '../../schema';
import { newestEntry } from '../ledgerHead';
import type { Person } from '../people';

/** What others changed about one case, the newest first. */
export interface ChangedCase {
  id: CaseId;
  reference: string;
  startsAt: string;
  cancelled: boolean;
  changes: { seq: number; at: string; by: string; change: ListChange }[];
}

export interface ListChanges {
  /** A surgeon's own cases; everybody else has the whole list. */
  own: boolean;
  /** When this person last said they had looked; `null`: never, and then it is the last seven days. */
  since: string | null;
  /** The newest entry there is, up to which this is complete. */
  upTo: number;
  cases: ChangedCase[];
  count: number;
  /** Whether there are older ones that are not among them. */
  more: boolean;
  /** What the theatres and sets that the changes name by their ids are called. */
  names: { theatres: { id: string; name: string }[]; sets: { id: string; name: string }[] };
}

const MOST = 200;
const FIRST_LOOK_MS = 7 * 24 * 3_600_000;

/** What others changed on a person's list since they last looked, of cases that are not over; soonest case first. */
export async function listChanges(db: Reading, person: Person, now: string): Promise<ListChanges> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const own = hasOwnList(person.role);
  const [[mark], head, rooms] = await Promise.all([
    read.select().from(listMarks).where(eq(listMarks.personId, person.id)),
    newestEntry(db),
    read.select({ id: theatres.id, name: theatres.name }).from(theatres),
  ]);
  const upTo = head?.seq ?? 0;
  const firstLook = new Date(Date.parse(now) - FIRST_LOOK_MS).toISOString();
  // an entry about a plan names its case in the detail
  const about = sql<string>`CASE ${ledger.subjectKind} WHEN 'case' THEN ${ledger.subjectId} ELSE ${ledger.detail} ->> '$.caseId' END`;
  const rows = await read
    .select({ entry: ledger, booked: cases, by: people.name })
    .from(ledger)
    .innerJoin(cases, eq(cases.id, about))
    .leftJoin(people, eq(people.id, ledger.personId))
    .where(
      and(
        inArray(ledger.action, LIST_ACTS),
        mark ? gt(ledger.seq, mark.seq) : gte(ledger.enteredAt, firstLook),
        or(isNull(ledger.personId), ne(ledger.personId, person.id)),
        gt(cases.endsAt, now),
        own ? eq(cases.surgeonId, person.id) : undefined,
      ),
    )
    .orderBy(desc(ledger.seq))
    .limit(MOST + 1);
  const shown = rows.slice(0, MOST);
  const changed = [...groupBy(shown, ({ booked }) => booked.id).values()].flatMap(
    (entries): ChangedCase[] => {
      const booked = entries[0]?.booked;
      if (!booked) return [];
      return [
        {
          id: caseId.parse(booked.id),
          reference: booked.reference,
          startsAt: booked.startsAt,
          cancelled: booked.cancelledAt !== null,
          changes: entries.map(({ entry, by }) => ({
            seq: entry.seq,
            at: entry.doneAt,
            by: by ?? 'the program',
            change: listChangeFrom(entry.action as ListAct, entry.detail),
          })),
        },
      ];
    },
  );
  return {
    own,
    since: mark?.markedAt ?? null,
    upTo,
    cases: changed.sort((a, b) => a.startsAt.localeCompare(b.startsAt)),
    count: shown.length,
    more: rows.length > MOST,
    names: { theatres: rooms, sets: await setNames(db, changed) },
  };
}

async function setNames({ read }: Reading, changed: readonly ChangedCase[]) {
  const ids = changed.flatMap(({ changes }) =>
    changes.flatMap(({ change }) => (change.kind === 'planned' ? [...change.given, ...change.taken] : [])),
  );
  return read
    .select({ id: sets.id, name: sets.code })
    .from(sets)
    .where(inArray(sets.id, [...new Set(ids)]));
}
