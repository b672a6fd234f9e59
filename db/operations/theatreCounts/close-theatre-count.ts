import { and, eq, isNull } from 'drizzle-orm';
import type { NewId, TheatreCountId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Attestation, attests } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { countMoment } from '@/lib/theatreCounts/act';
import { closingProblems } from '@/lib/theatreCounts/closing';
import { theatreDigestText } from '@/lib/theatreCounts/digest';
import { differencesOf, reckon, type TheatreDifference } from '@/lib/theatreCounts/reckon';
import { theatreStateOf } from '@/lib/theatreCounts/state';
import { theatreCountWords as words } from '@/lib/wording/theatre-counts';
import type { Database, Queries } from '../../client';
import { appendLedger, sha256 } from '../../ledger';
import type { Person } from '../../queries/people';
import { countSubjectOf, type TheatreCountRow, theatreEntriesOf } from '../../queries/theatreCounts/counted';
import { theatreCounts, theatreQuestionActs, theatreQuestions } from '../../schema';
import { ownTheatreCount } from './own-theatre-count';

interface CloseTheatreCount {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  countId: TheatreCountId;
  /** Every entry the screen made, by id: while one of them is not here, the count stays open. */
  entryIds: readonly string[];
  attestation: Attestation;
  /** The other person who counted, who proves it too. */
  second: { person: Person; attestation: Attestation };
}

export interface ClosedTheatreCount {
  countId: string;
  questions: number;
}

/**
 * Closes a count in theatre, for which two people stand. A figure that does not come out becomes an open question, or is
 * kept with the one that is open already; nothing here settles any. Sent twice it is answered as before.
 */
export async function closeTheatreCount(
  request: CloseTheatreCount,
): Promise<Outcome<ClosedTheatreCount, never>> {
  const { db, now, newId, person, countId, entryIds, attestation, second } = request;
  return db.tx(async (write): Promise<Outcome<ClosedTheatreCount, never>> => {
    const before = await closedBefore(write, countId, person);
    if (before) return before;
    if (!may(person, 'countInTheatre'))
      return refused('notPermitted', words.mayNot(person.name, 'count in theatre'));
    const own = await ownTheatreCount(write, countId, person);
    if (!own.ok) return own;
    const count = own.value;
    if (second.person.id === person.id) return refused('notPermitted', words.secondIsSame);
    if (!may(second.person, 'countInTheatreWith'))
      return refused('notPermitted', words.secondMayNot(second.person.name));
    const proven =
      attests(attestation, person.id, 'iCounted', now) &&
      attests(second.attestation, second.person.id, 'iCounted', now);
    if (!proven) return refused('notPermitted', words.proofNeeded);
    const entries = await theatreEntriesOf(write, countId);
    const missing = arrivals(entries, entryIds);
    if (missing) return refused('conflict', missing);
    const state = theatreStateOf(entries);
    const subject = await countSubjectOf(write, count.caseId, countMoment.parse(count.moment));
    const codeOf = (setId: string) => subject.sets.find(({ id }) => id === setId)?.code ?? setId;
    const problems = closingProblems(subject, state, codeOf);
    if (problems.length > 0) return refusedFor(problems);
    const reckoned = reckon(subject, state);
    const differences = differencesOf(reckoned);
    const digest = sha256(theatreDigestText(count.id, count.personId, entries));
    await write
      .update(theatreCounts)
      .set({
        closedAt: now,
        secondPersonId: second.person.id,
        entryCount: entries.length,
        entryDigest: digest,
      })
      .where(eq(theatreCounts.id, countId));
    await openQuestions(write, count, differences, person, now, newId);
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'close-theatre-count',
      subjectKind: 'case',
      subjectId: count.caseId,
      detail: {
        countId,
        moment: count.moment,
        entries: entries.length,
        entryDigest: digest,
        figures: reckoned.map(({ key, expected, counted }) => ({ key, expected, counted })),
        notOpened: [...state.notOpened],
        differences: differences.map(({ key, expected, counted }) => ({ key, expected, counted })),
        attested: said(attestation),
        second: { personId: second.person.id, attested: said(second.attestation) },
      },
    });
    return { ok: true, value: { countId, questions: differences.length } };
  });
}

const said = ({ meaning, method, at }: Attestation) => ({ meaning, method, at });

async function closedBefore(
  write: Queries,
  countId: string,
  person: Person,
): Promise<Outcome<ClosedTheatreCount, never> | null> {
  const [row] = await write.select().from(theatreCounts).where(eq(theatreCounts.id, countId));
  if (!row || row.closedAt === null || row.personId !== person.id) return null;
  const opened = await write.select().from(theatreQuestions).where(eq(theatreQuestions.countId, countId));
  return { ok: true, value: { countId, questions: opened.length } };
}

function arrivals(entries: readonly { id: string }[], made: readonly string[]): string | null {
  const here = new Set(entries.map(({ id }) => id));
  const missing = made.filter((id) => !here.has(id)).length;
  if (missing > 0) return words.pending(missing);
  return new Set(made).size === here.size ? null : words.changed;
}

/** One open question for one thing: a later count of it that does not come out either is kept with it. */
async function openQuestions(
  write: Queries,
  count: TheatreCountRow,
  differences: readonly TheatreDifference[],
  person: Person,
  now: string,
  newId: NewId,
): Promise<void> {
  const open = await write
    .select()
    .from(theatreQuestions)
    .where(and(eq(theatreQuestions.caseId, count.caseId), isNull(theatreQuestions.settledAt)));
  for (const { setId, lineId, itemId, name, expected, counted } of differences) {
    const known = open.find((one) =>
      setId === null
        ? one.setId === null && one.thing === name
        : one.setId === setId && one.lineId === lineId,
    );
    if (known)
      await write.insert(theatreQuestionActs).values({
        id: newId('entry'),
        questionId: known.id,
        kind: 'countedAgain',
        pieces: counted,
        note: null,
        personId: person.id,
        doneAt: now,
        enteredAt: now,
      });
    else
      await write.insert(theatreQuestions).values({
        id: newId('question'),
        caseId: count.caseId,
        countId: count.id,
        setId,
        lineId,
        itemId,
        thing: name,
        expected,
        counted,
        openedAt: now,
      });
  }
}
