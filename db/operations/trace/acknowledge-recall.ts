import { and, eq, isNull } from 'drizzle-orm';
import type { RecallId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { recallWords as words } from '@/lib/wording/recall';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { recalls, recallTasks } from '../../schema';

interface AcknowledgeRecall {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  recallId: RecallId;
  /** What was found or done; may be blank. */
  note: string;
}

const MOST_NOTE = 400;

/** A person says that they know of a recall and did what they were asked. For themselves alone. */
export async function acknowledgeRecall(
  request: AcknowledgeRecall,
): Promise<Outcome<{ acknowledged: number }, never>> {
  const { db, now, person, recallId } = request;
  if (!may(person, 'acknowledgeRecall')) return refused('notPermitted', words.mayNot('acknowledge a recall'));
  const note = request.note.trim();
  const problems = [
    ...(note.length > MOST_NOTE
      ? [{ path: ['note'], code: 'too-long', message: words.tooLong(MOST_NOTE) }]
      : []),
    ...textProblems(note, ['note']),
  ];
  if (problems.length > 0) return refusedFor(problems);
  return db.tx(async (write) => {
    const [recall] = await write.select().from(recalls).where(eq(recalls.id, recallId));
    if (!recall) return refused('notFound', words.noSuch);
    const mine = and(eq(recallTasks.recallId, recallId), eq(recallTasks.personId, person.id));
    const asked = await write.select().from(recallTasks).where(mine);
    if (asked.length === 0) return refused('notPermitted', words.noTask);
    const done = await write
      .update(recallTasks)
      .set({ acknowledgedAt: now, note: note || null })
      .where(and(mine, isNull(recallTasks.acknowledgedAt)))
      .returning({ task: recallTasks.task });
    // the same sent twice: it was acknowledged by the first
    if (done.length === 0) return { ok: true, value: { acknowledged: 0 } };
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'acknowledge-recall',
      subjectKind: 'recall',
      subjectId: recallId,
      detail: { number: recall.number, tasks: done.map(({ task }) => task), note: note || null },
    });
    return { ok: true, value: { acknowledged: done.length } };
  });
}
