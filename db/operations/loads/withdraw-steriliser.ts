import { and, eq, inArray } from 'drizzle-orm';
import type { SteriliserId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { loadWords as words } from '@/lib/wording/loads';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { loads, sterilisers } from '../../schema';
import { reasonProblems, standingInTheWay } from './at-load';

interface WithdrawSteriliser {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  steriliserId: SteriliserId;
  /** Out of service, or back in it. */
  out: boolean;
  reason: string;
}

/** Takes a steriliser out of service, or back into it, with the reason. Loads that are not decided come first. */
export async function withdrawSteriliser(request: WithdrawSteriliser): Promise<Outcome<{ out: boolean }>> {
  const { db, now, person, out } = request;
  const reason = request.reason.trim();
  if (!may(person, 'manageSterilisers'))
    return refused('notPermitted', words.notPermitted(person.name, 'take sterilisers out of service'));
  const problems = reasonProblems(reason, words.reasonNeeded);
  if (problems.length > 0) return refusedFor(problems);
  return db.tx(async (write) => {
    const [steriliser] = await write
      .select()
      .from(sterilisers)
      .where(eq(sterilisers.id, request.steriliserId));
    if (!steriliser) return refused('notFound', words.noSuchSteriliser);
    if ((steriliser.withdrawnAt !== null) === out) return { ok: true, value: { out } };
    const open = await write
      .select({ number: loads.number })
      .from(loads)
      .where(
        and(
          eq(loads.steriliserId, steriliser.id),
          inArray(loads.state, ['makingUp', 'running', 'awaitingAcceptance']),
        ),
      );
    if (out && open.length > 0)
      return standingInTheWay(
        open.map(({ number }) => ({
          path: [],
          code: 'load-open',
          message: words.loadsOpen(steriliser.name, number),
        })),
      );
    await write
      .update(sterilisers)
      .set({ withdrawnAt: out ? now : null })
      .where(eq(sterilisers.id, steriliser.id));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: out ? 'withdraw-steriliser' : 'bring-back-steriliser',
      subjectKind: 'steriliser',
      subjectId: steriliser.id,
      detail: { reason },
    });
    return { ok: true, value: { out } };
  });
}
