import { eq } from 'drizzle-orm';
import { abandoningProblems } from '@/lib/bench/closing';
import { stateOf } from '@/lib/bench/state';
import type { CountId } from '@/lib/identity/ids';
import { type Outcome, refusedFor } from '@/lib/identity/refusal';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import { entriesOf } from '../../queries/bench/turnCounts';
import type { Person } from '../../queries/people';
import { benchCounts } from '../../schema';
import { ownOpenCount } from './own-count';

interface AbandonCount {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  countId: CountId;
}

/** Gives up an open count. Its entries stay on record and count for nothing. */
export async function abandonCount(request: AbandonCount): Promise<Outcome<{ countId: string }>> {
  const { db, now, person, countId } = request;
  return db.tx(async (write) => {
    const own = await ownOpenCount(write, countId, person);
    if (!own.ok && own.refusal.because !== 'frozen') return own;
    const [count] = await write.select().from(benchCounts).where(eq(benchCounts.id, countId));
    // sealed, refitted or out of service meanwhile: then giving up is the one thing left to do
    if (!own.ok && (count?.closedAt ?? count?.abandonedAt ?? null) !== null) return own;
    const entries = await entriesOf(write, countId);
    const problems = abandoningProblems(stateOf(entries));
    if (problems.length > 0) return refusedFor(problems);
    await write.update(benchCounts).set({ abandonedAt: now }).where(eq(benchCounts.id, countId));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'abandon-count',
      subjectKind: 'set',
      subjectId: count?.setId ?? '',
      detail: { countId, entries: entries.length },
    });
    return { ok: true, value: { countId } };
  });
}
