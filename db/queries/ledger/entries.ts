import { and, asc, desc, eq, gte, inArray, lt, lte, max, min, type SQL, sql } from 'drizzle-orm';
import { CORRECTION, type CorrectionDetail, correctionDetail } from '@/lib/ledger/correction';
import type { UseAct } from '@/lib/usage/act';
import type { Queries } from '../../client';
import { mayRead, type Reading } from '../../reader';
import { ledger, ledgerThings, people } from '../../schema';
import { hiddenFrom } from '../bench/blind';
import { type Subject, subjectsOf } from './subjects';

export interface LedgerFilter {
  /** Ids that an entry must name, as its subject or in its detail: a set, a case, a load, a person. */
  things: string[];
  action: string | null;
  /** Entered from this instant on, and before that one. */
  from: string | null;
  to: string | null;
}

export interface Correction extends CorrectionDetail {
  seq: number;
  at: string;
  by: string | null;
}

export interface LedgerRecord {
  seq: number;
  doneAt: string;
  enteredAt: string;
  person: { id: string; name: string } | null;
  action: string;
  subject: Subject;
  detail: Record<string, unknown>;
  detailText: string;
  hash: string;
  /** Corrections of this entry, the oldest first. */
  corrections: Correction[];
  /** The reader has a blind check of the set open: what the entry holds is not shown to them until they close it. */
  hidden: boolean;
  /** The entry this one corrects, where it is a correction. */
  corrects: { seq: number; action: string; doneAt: string } | null;
}

export interface LedgerPage {
  /** The newest first. */
  rows: LedgerRecord[];
  /** Where the page of older entries begins: entries before this number; `null` where there are none. */
  older: number | null;
}

/** A page of the ledger: entries before number `before`, the newest first. */
export async function readLedgerPage(
  db: Reading,
  filter: LedgerFilter,
  { before, limit }: { before: number | null; limit: number },
): Promise<LedgerPage> {
  mayRead(db, 'readLedger');
  const found = await ledgerPageQuery(db.read, filter, await spanOf(db.read, filter), before, limit + 1);
  const shown = found.slice(0, limit);
  const seqs = shown.map(({ seq }) => seq);
  const corrected = shown.flatMap(({ action, detail }) =>
    action === CORRECTION ? [correctionDetail.parse(detail).corrects] : [],
  );
  const [subjects, corrections, originals, blindTo] = await Promise.all([
    subjectsOf(db.read, shown),
    correctionsOf(db.read, seqs),
    db.read
      .select({ seq: ledger.seq, action: ledger.action, doneAt: ledger.doneAt })
      .from(ledger)
      .where(inArray(ledger.seq, corrected)),
    hiddenFrom(db),
  ]);
  const originalOf = new Map(originals.map((row) => [row.seq, row]));
  return {
    rows: shown.map(({ personName, personId, subjectKind, subjectId, ...row }) => {
      const hidden = isHidden(row, subjectId, blindTo);
      const detail = row.detail as Record<string, unknown>;
      return {
        ...row,
        detail: hidden ? {} : detail,
        detailText: hidden ? '{}' : row.detailText,
        hidden,
        person: personId === null ? null : { id: personId, name: personName ?? personId },
        subject: subjects.get(subjectId) ?? { kind: subjectKind, id: subjectId, label: null },
        corrections: hidden ? [] : (corrections.get(row.seq) ?? []),
        corrects: originalOf.get(Number(detail.corrects)) ?? null,
      };
    }),
    older: found.length > limit ? (seqs.at(-1) ?? null) : null,
  };
}

/**
 * An entry that is about a set the reader counts blind, or of a record of use that may speak of it: of single packs and of delays
 * alone it does not. What is taken back or given its reason is told by the entry it is about, whichever set that came from.
 */
function isHidden(
  { action, detail }: { action: string; detail: unknown },
  subjectId: string,
  blindTo: ReadonlySet<string>,
): boolean {
  if (blindTo.size === 0) return false;
  if (blindTo.has(subjectId) || action === 'close-use') return true;
  if (action !== 'record-use' && action !== 'correct-use') return false;
  const { act } = detail as { act: UseAct };
  if (act.kind === 'delay') return false;
  return act.kind !== 'piece' || (act.source.kind === 'slot' && blindTo.has(act.source.setId));
}

type Span = { first: number; last: number } | null;

/**
 * The query of one page. Its plan is asserted in a test: it walks one index backwards from `before` and stops at `limit`,
 * however long the ledger is.
 */
export function ledgerPageQuery(
  read: Queries,
  { things, action, from, to }: LedgerFilter,
  span: Span,
  before: number | null,
  limit: number,
) {
  const [thing, ...others] = things;
  const seq = thing === undefined ? ledger.seq : ledgerThings.seq;
  const wanted: (SQL | undefined)[] = [
    before === null ? undefined : lt(seq, before),
    span === null ? undefined : and(gte(seq, span.first), lte(seq, span.last)),
    action === null ? undefined : eq(ledger.action, action),
    // the span is where such entries can be; a clock that was put back may have left others among them
    from === null ? undefined : sql`+${ledger.enteredAt} >= ${from}`,
    to === null ? undefined : sql`+${ledger.enteredAt} < ${to}`,
    ...others.map(
      (other) =>
        sql`EXISTS (SELECT 1 FROM ledger_things AS other WHERE other.thing = ${other} AND other.seq = ${seq})`,
    ),
  ];
  const columns = {
    seq: ledger.seq,
    doneAt: ledger.doneAt,
    enteredAt: ledger.enteredAt,
    personId: ledger.personId,
    personName: people.name,
    action: ledger.action,
    subjectKind: ledger.subjectKind,
    subjectId: ledger.subjectId,
    detail: ledger.detail,
    detailText: sql<string>`${ledger.detail}`,
    hash: ledger.hash,
  };
  if (thing === undefined) {
    return read
      .select(columns)
      .from(ledger)
      .leftJoin(people, eq(people.id, ledger.personId))
      .where(and(...wanted))
      .orderBy(desc(ledger.seq))
      .limit(limit);
  }
  return read
    .select(columns)
    .from(ledgerThings)
    .innerJoin(ledger, eq(ledger.seq, ledgerThings.seq))
    .leftJoin(people, eq(people.id, ledger.personId))
    .where(and(eq(ledgerThings.thing, thing), ...wanted))
    .orderBy(desc(ledgerThings.seq))
    .limit(limit);
}

/** Between which numbers entries of a time lie; exact even where a clock was put back, from the index alone. */
export async function spanOf(read: Queries, { from, to }: LedgerFilter): Promise<Span> {
  if (from === null && to === null) return null;
  const [row] = await read
    .select({ first: min(ledger.seq), last: max(ledger.seq) })
    .from(ledger)
    .where(
      and(
        from === null ? undefined : gte(ledger.enteredAt, from),
        to === null ? undefined : lt(ledger.enteredAt, to),
      ),
    );
  return { first: row?.first ?? 1, last: row?.last ?? 0 };
}

async function correctionsOf(read: Queries, seqs: readonly number[]): Promise<Map<number, Correction[]>> {
  const found = new Map<number, Correction[]>();
  if (seqs.length === 0) return found;
  const rows = await correctionsQuery(read, seqs);
  for (const { seq, at, by, detail } of rows) {
    const one = { ...correctionDetail.parse(detail), seq, at, by };
    found.set(one.corrects, [...(found.get(one.corrects) ?? []), one]);
  }
  return found;
}

/** By the index of corrections and no other (`+`); its plan is asserted in a test. */
export function correctionsQuery(read: Queries, seqs: readonly number[]) {
  return read
    .select({ seq: ledger.seq, at: ledger.enteredAt, by: people.name, detail: ledger.detail })
    .from(ledger)
    .leftJoin(people, eq(people.id, ledger.personId))
    .where(
      sql`+${ledger.action} = 'correct-record' AND ${ledger.detail} ->> '$.corrects' IN (${sql.join(
        seqs.map((seq) => sql`${seq}`),
        sql`, `,
      )})`,
    )
    .orderBy(asc(ledger.seq));
}
