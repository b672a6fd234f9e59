import { eq, sql } from 'drizzle-orm';
import type { NewId, SetId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { canBeCounted } from '@/lib/sets/count';
import { turnStep } from '@/lib/sets/setState';
import { turnWords } from '@/lib/wording/turns';
import type { Database } from '../client';
import type { Person } from '../queries/people';
import { packs, sets } from '../schema';
import { takeStep } from './turns/take-step';

interface OpenSet {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  setId: SetId;
  baseRevision: number;
}

/**
 * Brings a sealed set to the bench and opens its wrap, so that it can be counted. It is no longer sterile, and nothing
 * here makes it so again.
 */
export async function openSet(request: OpenSet): Promise<Outcome<{ revision: number }>> {
  const { db, now, newId, person, setId, baseRevision } = request;
  if (!may(person.role, 'openSet')) return refused('notPermitted', `${person.name} can’t open a set.`);
  return db.tx(async (write) => {
    const [set] = await write.select().from(sets).where(eq(sets.id, setId));
    if (!set) return refused('notFound', turnWords.noSuchSet);
    if (set.revision !== baseRevision)
      return refused('conflict', turnWords.changed(set.code), { revision: set.revision });
    if (canBeCounted(turnStep.parse(set.step))) return refused('frozen', `${set.code} is open already.`);
    if (set.packId !== null)
      await write
        .update(packs)
        .set({ state: 'opened', revision: sql`${packs.revision} + 1` })
        .where(eq(packs.id, set.packId));
    const taken = await takeStep(write, {
      set,
      to: 'onBench',
      action: 'open-set',
      person,
      now,
      newId,
      change: { readyAt: null, useBy: null, packId: null },
    });
    return taken.ok ? { ok: true, value: { revision: taken.value.revision } } : taken;
  });
}
