import { and, desc, eq, getTableColumns, sql } from 'drizzle-orm';
import { identifier } from '@/lib/calculations/identifier/identifier';
import type { IdentifierOutput } from '@/lib/calculations/identifier/schema';
import type { SessionId, WorkstationId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { countedThing, type IncomingScan } from '@/lib/scanning/incoming';
import type { ScanAnswer, ScanContext, ScanMeaning, ScanVerdict } from '@/lib/scanning/meaning';
import { namesPerson } from '@/lib/scanning/personCode';
import { scanSentence, scanWords as words } from '@/lib/wording/scans';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { prepared } from '../../prepared';
import type { Person } from '../../queries/people';
import { meaningOf } from '../../queries/scans/meaningOf';
import { answerFromRow } from '../../queries/scans/scanRow';
import { readSetting } from '../../queries/settings';
import { people, scans } from '../../schema';

/** By whom and where a scan was made: the session of its own moment, not of the moment it is sent. */
export interface ScannedBy {
  person: Person;
  sessionId: SessionId | null;
  workstationId: WorkstationId | null;
}

interface RecordScans {
  db: Pick<Database, 'tx'>;
  now: string;
  /** In the order they were made. `by` is refused where it could not be told. */
  scans: readonly { scan: IncomingScan; by: Outcome<ScannedBy, never> }[];
}

/**
 * Stores scans and says what each means, all in one durable write. A scan that is sent again is answered as before; one
 * that cannot be taken is refused alone, and the others stand.
 */
export async function recordScans({ db, now, scans: given }: RecordScans): Promise<Outcome<ScanAnswer>[]> {
  // reading a text may take a moment and needs no store: it is done before the write begins
  const read = given.map(({ scan, by }) => ({ scan, by, reading: readText(scan, now) }));
  return db.tx(async (write) => {
    const { lateAfterMinutes } = await readSetting(write, 'bench');
    const answers: Outcome<ScanAnswer>[] = [];
    for (const one of read) {
      answers.push(
        one.by.ok ? await recordScan(write, { ...one, by: one.by.value, now, lateAfterMinutes }) : one.by,
      );
    }
    return answers;
  });
}

const readText = ({ text, separators }: IncomingScan, now: string): IdentifierOutput => {
  const answer = identifier({ text, separators, currentYear: Number(now.slice(0, 4)) });
  const output = answer.outcome === 'answered' ? answer.answer : answer.known;
  if (!output) throw new Error('a code is always read as something');
  return output as IdentifierOutput;
};

interface RecordOne {
  scan: IncomingScan;
  by: ScannedBy;
  reading: IdentifierOutput;
  now: string;
  lateAfterMinutes: number;
}

const storedScan = prepared((write) =>
  write
    .select()
    .from(scans)
    .where(eq(scans.id, sql.placeholder('id')))
    .prepare(),
);

const insertScan = prepared((write) => {
  const { seq: _countsByItself, ...columns } = getTableColumns(scans);
  const row = Object.fromEntries(Object.keys(columns).map((name) => [name, sql.placeholder(name)]));
  return write
    .insert(scans)
    .values(row as unknown as typeof scans.$inferInsert)
    .prepare();
});

async function recordScan(write: Queries, one: RecordOne): Promise<Outcome<ScanAnswer>> {
  const { scan, by, reading, now, lateAfterMinutes } = one;
  if (!may(by.person, 'recordScan')) return refused('notPermitted', words.notThisSession);
  if (namesPerson(scan.text, reading) !== null) return refused('invalid', words.namesAPerson);
  const stored = storedScan(write).get({ id: scan.id });
  if (stored) {
    const same = stored.text === scan.text && stored.personId === by.person.id;
    return same
      ? { ok: true, value: await answerFromRow(write, stored) }
      : refused('conflict', words.otherScan);
  }
  const meaning = await meaningOf(write, scan.text, reading);
  const thing = scan.context.kind === 'none' ? null : countedThing(meaning);
  const before = thing ? scannedBefore(write, scan.context, thing.key) : null;
  const verdict = verdictOf(meaning, before !== null, thing?.single ?? false);
  // a browser's clock may be fast: nothing was done later than it was entered
  const doneAt = Date.parse(scan.doneAt) > Date.parse(now) ? now : scan.doneAt;
  const row = {
    id: scan.id,
    text: scan.text,
    how: scan.how,
    separators: scan.separators,
    personId: by.person.id,
    sessionId: by.sessionId,
    workstationId: by.workstationId,
    contextKind: scan.context.kind,
    contextId: contextId(scan.context),
    thing: thing?.key ?? null,
    verdict,
    meaning,
    says: reading.state === 'unknown' ? null : reading.says,
    sentence: scanSentence(meaning, verdict, before, now),
    beforeId: before?.scanId ?? null,
    doneAt,
    enteredAt: now,
    late: Date.parse(now) - Date.parse(doneAt) > lateAfterMinutes * 60_000,
  };
  insertScan(write).run(row);
  await appendLedger(write, {
    doneAt,
    enteredAt: now,
    personId: by.person.id,
    action: 'record-scan',
    subjectKind: 'scan',
    subjectId: scan.id,
    detail: { text: scan.text, how: scan.how, context: scan.context, verdict, meaning: meaning.kind },
  });
  const { says, sentence, late } = row;
  return {
    ok: true,
    value: { id: scan.id, verdict, meaning, says, sentence, before, doneAt, enteredAt: now, late },
  };
}

function contextId(context: ScanContext): string | null {
  switch (context.kind) {
    case 'none':
      return null;
    case 'bench':
      return context.countId;
    case 'load':
      return context.loadId;
    case 'set':
      return context.setId;
    case 'kit':
    case 'kitBack':
    case 'use':
      return context.caseId;
    case 'kitCheck':
      return context.checkId;
  }
}

const lastOfThing = prepared((write) =>
  write
    .select({ id: scans.id, at: scans.doneAt, by: people.name })
    .from(scans)
    .innerJoin(people, eq(people.id, scans.personId))
    .where(
      and(
        eq(scans.contextKind, sql.placeholder('kind')),
        eq(scans.contextId, sql.placeholder('id')),
        eq(scans.thing, sql.placeholder('thing')),
      ),
    )
    .orderBy(desc(scans.seq))
    .limit(1)
    .prepare(),
);

/** The last scan of that thing in that context. */
function scannedBefore(
  write: Queries,
  context: ScanContext,
  thing: string,
): { scanId: ScanAnswer['id']; at: string; by: string } | null {
  const last = lastOfThing(write).get({ kind: context.kind, id: contextId(context) ?? '', thing });
  return last ? { scanId: last.id as ScanAnswer['id'], at: last.at, by: last.by } : null;
}

function verdictOf(meaning: ScanMeaning, before: boolean, single: boolean): ScanVerdict {
  if (meaning.kind === 'refused' || meaning.kind === 'unknown') return meaning.kind;
  if (!before) return 'understood';
  return single ? 'already' : 'ask';
}
