import { and, eq, isNull } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import type { HeldLine } from '@/lib/sets/holdings';
import type { Queries } from '../../client';
import type { Person } from '../../queries/people';
import { items, refillJobs, type sets } from '../../schema';
import { tellPerson } from '../turns/tell-person';

interface KeepRefillJobs {
  set: Pick<typeof sets.$inferSelect, 'id' | 'code'>;
  turnId: string | null;
  /** Every line of the set as it is now; `found: null` where nobody counted it. */
  lines: readonly Pick<HeldLine, 'id' | 'itemId' | 'expected' | 'found'>[];
  person: Person;
  now: string;
  newId: NewId;
}

/**
 * Keeps the refill jobs of a set in step with what is short in it, inside the caller's transaction: a line that is short
 * has one open job, as large as what is short now; a job whose line was counted whole is fixed, and whoever found the
 * shortage is told. A line that nobody counted opens no job and closes none: it may be as short as it was.
 */
export async function keepRefillJobs(write: Queries, request: KeepRefillJobs): Promise<void> {
  const { set, turnId, lines, person, now, newId } = request;
  const open = await write
    .select({ job: refillJobs, itemName: items.name })
    .from(refillJobs)
    .innerJoin(items, eq(items.id, refillJobs.itemId))
    .where(and(eq(refillJobs.setId, set.id), isNull(refillJobs.fixedAt), isNull(refillJobs.droppedBecause)));
  const jobOf = new Map(open.map((row) => [row.job.lineId, row]));
  for (const { id: lineId, itemId, expected, found } of lines) {
    if (found === null) continue;
    const short = expected - found;
    const known = jobOf.get(lineId);
    if (known && short <= 0) await fixJob(write, known, request);
    else if (known && short !== known.job.quantity)
      await write.update(refillJobs).set({ quantity: short }).where(eq(refillJobs.id, known.job.id));
    else if (!known && short > 0)
      await write.insert(refillJobs).values({
        id: newId('refill'),
        setId: set.id,
        lineId,
        itemId,
        quantity: short,
        foundBy: person.id,
        openedAt: now,
        turnId,
      });
  }
}

async function fixJob(
  write: Queries,
  { job, itemName }: { job: typeof refillJobs.$inferSelect; itemName: string },
  { set, person, now, newId }: KeepRefillJobs,
): Promise<void> {
  await write.update(refillJobs).set({ fixedBy: person.id, fixedAt: now }).where(eq(refillJobs.id, job.id));
  if (job.foundBy === person.id) return;
  await tellPerson(write, {
    personId: job.foundBy,
    kind: 'shortageFixed',
    detail: { setCode: set.code, itemName, quantity: job.quantity, by: person.name },
    href: `/sets/${set.id}`,
    now,
    newId,
  });
}
