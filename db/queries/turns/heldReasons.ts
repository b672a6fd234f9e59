import { and, desc, eq, gte, ne } from 'drizzle-orm';
import { type HeldBecause, heldBecause } from '@/lib/sets/setState';
import type { Queries } from '../../client';
import { people, turnSteps } from '../../schema';

/** One reason a set is held for. */
export interface HeldReason {
  because: HeldBecause;
  note: string | null;
  at: string;
  personId: string | null;
  by: string | null;
}

/** Every reason a held set is held for, the first first. Only meaningful while it is held; inside or outside a write. */
export async function heldReasons(read: Queries, setId: string): Promise<HeldReason[]> {
  const [began] = await read
    .select({ seq: turnSteps.seq })
    .from(turnSteps)
    .where(and(eq(turnSteps.setId, setId), eq(turnSteps.step, 'held'), ne(turnSteps.fromStep, 'held')))
    .orderBy(desc(turnSteps.seq))
    .limit(1);
  if (!began) return [];
  const rows = await read
    .select({ step: turnSteps, by: people.name })
    .from(turnSteps)
    .leftJoin(people, eq(people.id, turnSteps.personId))
    .where(and(eq(turnSteps.setId, setId), gte(turnSteps.seq, began.seq)))
    .orderBy(turnSteps.seq);
  return rows.flatMap(({ step, by }) => {
    const because = heldBecause.safeParse(step.because);
    return because.success
      ? [{ because: because.data, note: step.note, at: step.doneAt, personId: step.personId, by }]
      : [];
  });
}
