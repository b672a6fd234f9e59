import { and, eq } from 'drizzle-orm';
import type { LoadId, NewId, SteriliserId } from '@/lib/identity/ids';
import { loadId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { loadNumberOf, loadSequence } from '@/lib/loads/load';
import { programmes } from '@/lib/loads/programme';
import { may } from '@/lib/people/permissions';
import { loadWords as words } from '@/lib/wording/loads';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { loads, sterilisers } from '../../schema';

interface MakeUpLoad {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  steriliserId: SteriliserId;
  programme: string;
}

/** Begins a load for a steriliser and one of its programmes. One is made up for a steriliser at a time. */
export async function makeUpLoad(request: MakeUpLoad): Promise<Outcome<{ id: LoadId; number: string }>> {
  const { db, now, newId, person } = request;
  if (!may(person, 'makeUpLoad'))
    return refused('notPermitted', words.notPermitted(person.name, 'make up loads'));
  return db.tx(async (write) => {
    const [steriliser] = await write
      .select()
      .from(sterilisers)
      .where(eq(sterilisers.id, request.steriliserId));
    if (!steriliser) return refused('notFound', words.noSuchSteriliser);
    if (steriliser.withdrawnAt !== null) return refused('frozen', words.withdrawnSteriliser(steriliser.name));
    const programme = programmes.parse(steriliser.programmes).find(({ name }) => name === request.programme);
    if (!programme) return refused('frozen', words.noSuchProgramme(steriliser.name, request.programme));
    const [open] = await write
      .select({ number: loads.number })
      .from(loads)
      .where(and(eq(loads.steriliserId, steriliser.id), eq(loads.state, 'makingUp')));
    if (open) return refused('frozen', words.openLoad(steriliser.name, open.number));
    const id = loadId.parse(newId('load'));
    const number = loadNumberOf(steriliser.name, await nextSequence(write));
    await write.insert(loads).values({
      id,
      number,
      steriliserId: steriliser.id,
      programme: programme.name,
      state: 'makingUp',
      madeUpBy: person.id,
      madeUpAt: now,
      revision: 1,
    });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'make-up-load',
      subjectKind: 'load',
      subjectId: id,
      detail: { number, steriliserId: steriliser.id, programme },
    });
    return { ok: true, value: { id, number } };
  });
}

async function nextSequence(write: Queries): Promise<number> {
  const rows = await write.select({ number: loads.number }).from(loads);
  return rows.reduce((most, { number }) => Math.max(most, loadSequence(number) ?? 0), 0) + 1;
}
