import { and, eq } from 'drizzle-orm';
import { type CountPurpose, closingProblems } from '@/lib/bench/closing';
import { type Difference, differencesOf } from '@/lib/bench/compare';
import { digestText } from '@/lib/bench/digest';
import { stateOf } from '@/lib/bench/state';
import type { CountId, NewId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Attestation, attests } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { benchWords as words } from '@/lib/wording/bench';
import type { Database, Queries } from '../../client';
import { appendLedger, sha256 } from '../../ledger';
import { lineFromRow } from '../../mappers/configuration';
import { entriesOf, openDisputes } from '../../queries/bench/turnCounts';
import type { Person } from '../../queries/people';
import { readSetting } from '../../queries/settings';
import { benchCounts, benchEntries, configurationLines, sets } from '../../schema';
import { followUp } from './follow-up';
import { ownOpenCount } from './own-count';
import { heldBefore, writeContents } from './write-contents';

interface CloseCount {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  countId: CountId;
  /** Every entry the screen made, by id: while one of them is not here, the count stays open. */
  entryIds: readonly string[];
  attestation: Attestation;
  /** For a settling: the other person, who counted with this one. */
  second?: { person: Person; attestation: Attestation } | null;
}

export interface ClosedCount {
  countId: string;
  entries: number;
  digest: string;
  revision: number;
  /** Lines on which this count differs from another person's. */
  disputed: number;
}

/**
 * Closes a count: what it found becomes what the set holds, but for lines on which it differs from another person's
 * count of this turn. There nothing is overwritten: both figures are kept, and the lines are counted again together.
 * Sent twice, it is answered as it was the first time.
 */
export async function closeCount(request: CloseCount): Promise<Outcome<ClosedCount>> {
  const { db, now, newId, person, countId, attestation, second = null } = request;
  return db.tx(async (write) => {
    const before = await closedBefore(write, request);
    if (before) return before;
    const own = await ownOpenCount(write, countId, person);
    if (!own.ok) return own;
    const { count, set } = own.value;
    const purpose = count.purpose as CountPurpose;
    const unproven = proofProblem(request, purpose);
    if (unproven) return refused('notPermitted', unproven);
    const entries = await entriesOf(write, countId);
    const missing = arrivals(entries, request.entryIds);
    if (missing) return refused('conflict', missing);
    const state = stateOf(entries);
    const rows = await write
      .select()
      .from(configurationLines)
      .where(eq(configurationLines.versionId, set.versionId));
    const lines = rows.map(lineFromRow);
    const open = await openDisputes(write, set.id);
    const disputed = purpose === 'settle' ? new Set(open.map(({ lineId }) => lineId)) : null;
    const problems = closingProblems(state, lines, disputed);
    if (problems.length > 0) return refusedFor(problems);
    const differences: Difference[] =
      purpose === 'settle' ? [] : differencesOf(state, await heldBefore(write, set), person.id);
    const digest = sha256(digestText(countId, person.id, entries));
    await write
      .update(benchCounts)
      .set({ closedAt: now, entryCount: entries.length, entryDigest: digest })
      .where(eq(benchCounts.id, countId));
    const held = await writeContents(write, { count, set, lines, state, differences, now });
    await followUp(write, {
      count,
      set,
      lines,
      state,
      differences,
      disputes: open,
      held,
      person,
      now,
      newId,
    });
    const revision = set.revision + 1;
    await write
      .update(sets)
      .set({ revision })
      .where(and(eq(sets.id, set.id), eq(sets.revision, set.revision)));
    const { lateAfterMinutes } = await readSetting(write, 'bench');
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'close-count',
      subjectKind: 'set',
      subjectId: set.id,
      detail: {
        countId,
        purpose,
        turnId: count.turnId,
        versionId: count.versionId,
        entries: entries.length,
        entryDigest: digest,
        late: await lateEntries(write, countId, lateAfterMinutes),
        lines: [...state.lines].flatMap(([lineId, { found, there }]) =>
          found === null ? [] : [{ lineId, found, there }],
        ),
        disputed: differences,
        settled: [...(disputed ?? [])],
        revision,
        attested: said(attestation),
        ...(second ? { second: { personId: second.person.id, attested: said(second.attestation) } } : {}),
      },
    });
    const value = { countId, entries: entries.length, digest, revision, disputed: differences.length };
    return { ok: true, value };
  });
}

const said = ({ meaning, method, at }: Attestation) => ({ meaning, method, at });

async function closedBefore(
  write: Queries,
  { countId, person }: CloseCount,
): Promise<Outcome<ClosedCount> | null> {
  const [row] = await write.select().from(benchCounts).where(eq(benchCounts.id, countId));
  if (!row || row.closedAt === null || row.personId !== person.id) return null;
  const [set] = await write.select().from(sets).where(eq(sets.id, row.setId));
  const disputes = await openDisputes(write, row.setId);
  return {
    ok: true,
    value: {
      countId,
      entries: row.entryCount ?? 0,
      digest: row.entryDigest ?? '',
      revision: set?.revision ?? 0,
      disputed: disputes.filter(({ secondCountId }) => secondCountId === countId).length,
    },
  };
}

/** Who closes says what they did, and proves it; a settling takes two people. */
function proofProblem(request: CloseCount, purpose: CountPurpose): string | null {
  const { person, attestation, second, now } = request;
  const meaning = purpose === 'check' ? 'iChecked' : 'iCounted';
  if (!attests(attestation, person.id, meaning, now)) return words.proofNeeded;
  if (purpose !== 'settle') return null;
  if (!second || second.person.id === person.id) return words.secondProofNeeded;
  if (!may(second.person, 'checkCount')) return words.notPermitted(second.person.name, 'check a count');
  return attests(second.attestation, second.person.id, 'iChecked', now) ? null : words.secondProofNeeded;
}

/** Whether what the screen made and what is here are the same entries. */
function arrivals(entries: readonly { id: string }[], made: readonly string[]): string | null {
  const here = new Set(entries.map(({ id }) => id));
  const wanted = new Set(made);
  const missing = [...wanted].filter((id) => !here.has(id)).length;
  if (missing > 0) return words.pending(missing, wanted.size);
  const more = [...here].filter((id) => !wanted.has(id)).length;
  return more > 0 ? words.moreHere(more) : null;
}

/** Entries that reached the record long after they were made. */
async function lateEntries(write: Queries, countId: string, afterMinutes: number): Promise<number> {
  const rows = await write
    .select({ doneAt: benchEntries.doneAt, enteredAt: benchEntries.enteredAt })
    .from(benchEntries)
    .where(eq(benchEntries.countId, countId));
  return rows.filter((row) => Date.parse(row.enteredAt) - Date.parse(row.doneAt) > afterMinutes * 60_000)
    .length;
}
