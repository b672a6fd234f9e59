import { and, eq, isNull } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import type { ShortLine } from '@/lib/sets/short/ask';
import type { Queries } from '../../client';
import type { Person } from '../../queries/people';
import { items, refillJobs, sets } from '../../schema';
import { tellPerson } from '../turns/tell-person';

interface KeepRefillJobs {
  setId: string;
  turnId: string | null;
  /** Every line of the set that holds less than it should. */
  short: readonly Pick<ShortLine, 'lineId' | 'itemId' | 'short'>[];
  person: Person;
  now: string;
  newId: NewId;
}

/**
 * Keeps the refill jobs of a set in step with what is short in it, inside the caller's transaction: a line that is short
 * has one open job; a job whose line is whole again is fixed, and whoever found the shortage is told.
 */
export async function keepRefillJobs(write: Queries, request: KeepRefillJobs): Promise<void> {
  const { setId, turnId, short, person, now, newId } = request;
  const open = await write
    .select()
    .from(refillJobs)
    .where(and(eq(refillJobs.setId, setId), isNull(refillJobs.fixedAt), isNull(refillJobs.droppedBecause)));
  for (const { lineId, itemId, short: quantity } of short) {
    const job = open.find((one) => one.lineId === lineId);
    if (!job)
      await write.insert(refillJobs).values({
        id: newId('refill'),
        setId,
        lineId,
        itemId,
        quantity,
        foundBy: person.id,
        openedAt: now,
        turnId,
      });
    else if (job.quantity !== quantity)
      await write.update(refillJobs).set({ quantity }).where(eq(refillJobs.id, job.id));
  }
  const whole = open.filter((job) => !short.some(({ lineId }) => lineId === job.lineId));
  for (const job of whole) {
    await write.update(refillJobs).set({ fixedBy: person.id, fixedAt: now }).where(eq(refillJobs.id, job.id));
    if (job.foundBy === person.id) continue;
    await tellPerson(write, {
      kind: 'shortageFixed',
      detail: {
        setCode: await codeOf(write, setId),
        itemName: await nameOf(write, job.itemId),
        quantity: job.quantity,
        by: person.name,
      },
      personId: job.foundBy,
      href: `/sets/${setId}`,
      now,
      newId,
    });
  }
}

async function codeOf(write: Queries, id: string): Promise<string> {
  const [row] = await write.select({ code: sets.code }).from(sets).where(eq(sets.id, id));
  return row?.code ?? id;
}

async function nameOf(write: Queries, id: string): Promise<string> {
  const [row] = await write.select({ name: items.name }).from(items).where(eq(items.id, id));
  return row?.name ?? id;
}
