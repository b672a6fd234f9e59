import { type MakerId, makerId, type NewId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { comparableName } from '@/lib/people/name';
import { may } from '@/lib/people/permissions';
import { exchangeWords as words } from '@/lib/wording/exchange';
import type { Database } from '../client';
import { appendLedger } from '../ledger';
import type { Person } from '../queries/people';
import { makers } from '../schema';

interface AddMaker {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  name: string;
}

const LONGEST = 80;

/** Adds a maker whose items the catalogue is to have. One that goes by that name already is answered as it is. */
export async function addMaker(request: AddMaker): Promise<Outcome<{ id: MakerId }, never>> {
  const { db, now, newId, person } = request;
  const name = request.name.normalize('NFC').trim().replace(/\s+/g, ' ');
  if (!may(person, 'editCatalogue')) return refused('notPermitted', words.mayNot(person.name));
  if (name === '' || name.length > LONGEST)
    return refusedFor([{ path: ['name'], code: 'name-length', message: words.makerName(LONGEST) }]);
  return db.tx(async (write) => {
    const there = await write.select().from(makers);
    const known = there.find((one) => comparableName(one.name) === comparableName(name));
    if (known) return { ok: true, value: { id: makerId.parse(known.id) } };
    const id = makerId.parse(newId('maker'));
    await write.insert(makers).values({ id, name });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'add-maker',
      subjectKind: 'maker',
      subjectId: id,
      detail: { name },
    });
    return { ok: true, value: { id } };
  });
}
