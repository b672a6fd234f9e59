import { and, eq, isNull } from 'drizzle-orm';
import type { RecallId } from '@/lib/identity/ids';
import { changedTo, type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { type Attestation, attests } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { recallWords as words } from '@/lib/wording/recall';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { lotOnRecord } from '../../queries/trace/lotFacts';
import { recalls, recallTasks } from '../../schema';

interface CloseRecall {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  recallId: RecallId;
  /** As it was seen. */
  baseRevision: number;
  because: string;
  attestation: Attestation;
  second: { person: Person; attestation: Attestation };
}

const MOST_BECAUSE = 600;

/**
 * Closes a recall, for which two people stand and say what was found and done. It never happens by itself, lifts no hold, and
 * keeps the balance and who had not acknowledged as they were.
 */
export async function closeRecall(request: CloseRecall): Promise<Outcome<{ revision: number }, never>> {
  const { db, now, person, recallId, attestation, second } = request;
  for (const one of [person, second.person])
    if (!may(one, 'closeRecall')) return refused('notPermitted', words.mayNot('close a recall'));
  if (second.person.id === person.id) return refused('notPermitted', words.secondIsSame);
  const because = request.because.trim();
  const problems: Problem[] = [];
  if (because === '') problems.push({ path: ['because'], code: 'needed', message: words.noteNeeded });
  if (because.length > MOST_BECAUSE)
    problems.push({ path: ['because'], code: 'too-long', message: words.tooLong(MOST_BECAUSE) });
  problems.push(...textProblems(because, ['because']));
  if (problems.length > 0) return refusedFor(problems);
  return db.tx(async (write) => {
    const proven =
      attests(attestation, person.id, 'iCloseThisRecall', now) &&
      attests(second.attestation, second.person.id, 'iCloseThisRecall', now);
    if (!proven) return refused('notPermitted', words.proveFirst);
    const [recall] = await write.select().from(recalls).where(eq(recalls.id, recallId));
    if (!recall) return refused('notFound', words.noSuch);
    if (recall.closedAt !== null) return refused('frozen', words.closedAlready);
    if (recall.revision !== request.baseRevision) return changedTo(words.changed, recall.revision);
    const waiting = await write
      .select({ personId: recallTasks.personId, task: recallTasks.task })
      .from(recallTasks)
      .where(and(eq(recallTasks.recallId, recallId), isNull(recallTasks.acknowledgedAt)));
    const balance =
      recall.kind === 'lot' && recall.itemId !== null && recall.lot !== null
        ? (lotOnRecord(write, recall.itemId, recall.lot)?.trace.balance ?? null)
        : null;
    const revision = recall.revision + 1;
    await write
      .update(recalls)
      .set({
        closedBy: person.id,
        closedWith: second.person.id,
        closedAt: now,
        closedBecause: because,
        balance,
        revision,
      })
      .where(eq(recalls.id, recallId));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'close-recall',
      subjectKind: 'recall',
      subjectId: recallId,
      detail: {
        number: recall.number,
        rehearsal: recall.isRehearsal,
        because,
        balance,
        notAcknowledged: waiting,
        attested: said(attestation),
        second: { personId: second.person.id, attested: said(second.attestation) },
      },
    });
    return { ok: true, value: { revision } };
  });
}

const said = ({ meaning, method, at }: Attestation) => ({ meaning, method, at });
