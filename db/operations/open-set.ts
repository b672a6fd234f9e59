import { and, eq } from 'drizzle-orm';
import type { SetId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { canBeCounted } from '@/lib/sets/count';
import { turnStep } from '@/lib/sets/setState';
import type { Database } from '../client';
import { appendLedger } from '../ledger';
import type { Person } from '../queries/people';
import { sets } from '../schema';

interface OpenSet {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  setId: SetId;
  baseRevision: number;
}

/**
 * Brings a sealed set to the bench and opens its wrap, so that it can be counted. It is no longer sterile, and nothing
 * here makes it so again.
 */
export async function openSet({
  db,
  now,
  person,
  setId,
  baseRevision,
}: OpenSet): Promise<Outcome<{ revision: number }>> {
  if (!may(person.role, 'openSet')) return refused('notPermitted', `${person.name} can’t open a set.`);
  return db.tx(async (write) => {
    const [set] = await write.select().from(sets).where(eq(sets.id, setId));
    if (!set) return refused('notFound', 'There is no such set.');
    if (set.revision !== baseRevision) {
      return refused('conflict', `${set.code} was changed by someone else. Nothing was saved.`, {
        revision: set.revision,
      });
    }
    if (canBeCounted(turnStep.parse(set.step))) return refused('frozen', `${set.code} is open already.`);
    const revision = set.revision + 1;
    await write
      .update(sets)
      .set({ step: 'onBench', stepSince: now, readyAt: null, useBy: null, revision })
      .where(and(eq(sets.id, setId), eq(sets.revision, baseRevision)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'open-set',
      subjectKind: 'set',
      subjectId: setId,
      detail: { from: set.step, revision },
    });
    return { ok: true, value: { revision } };
  });
}
