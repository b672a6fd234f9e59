import { eq } from 'drizzle-orm';
import { type PersonWork, planPeople } from '@/lib/exchange/plans/people';
import { personId } from '@/lib/identity/ids';
import { refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { role } from '@/lib/people/role';
import { exchangeWords as words } from '@/lib/wording/exchange';
import { credentials, people, sessions } from '../../schema';
import { personEntry, putPerson } from '../people/add-person';
import { changeRole } from '../people/change-role';
import { leavePerson } from '../people/leave-person';
import { inside, type ListWork, sentenceOf } from './work';

export const peopleWork: ListWork<PersonWork> = {
  known: async () => ({}),
  async plan(read, rows) {
    const everybody = await read.select().from(people);
    return planPeople(rows, { people: everybody.map((one) => ({ ...one, role: role.parse(one.role) })) });
  },
  async apply(write, outcome, request) {
    const { now, newId, person } = request;
    if (outcome.id === null) {
      const entry = personEntry.safeParse(outcome.work);
      if (!entry.success) return refusedFor(problemsFromZod(entry.error));
      const added = await putPerson(write, { now, newId, person, entry: entry.data, passwordHash: null });
      if (!added.ok) return added;
      const before = { role: outcome.work.role };
      return {
        ok: true,
        value: [
          {
            did: 'added',
            subjectKind: 'person',
            subjectId: added.value.id,
            name: outcome.name,
            revision: null,
            before,
          },
        ],
      };
    }
    const id = personId.parse(outcome.id);
    const from = outcome.changes[0]?.from ?? '';
    const changed = await changeRole({
      db: inside(write),
      now,
      person,
      personId: id,
      role: outcome.work.role,
    });
    if (!changed.ok) return changed;
    const before = { role: from, to: outcome.work.role };
    return {
      ok: true,
      value: [
        { did: 'changed', subjectKind: 'person', subjectId: id, name: outcome.name, revision: null, before },
      ],
    };
  },
  async takeBack(write, effect, { now, person }) {
    const id = personId.parse(effect.subjectId);
    const before = effect.before as { role: string; to?: string };
    const [row] = await write.select().from(people).where(eq(people.id, id));
    const expected = effect.did === 'added' ? before.role : before.to;
    if (!row || row.leftAt !== null || row.role !== expected) return words.nowAnother;
    const request = { db: inside(write), now, person, personId: id };
    if (effect.did === 'changed') {
      const done = await changeRole({ ...request, role: role.parse(before.role) });
      return done.ok ? null : sentenceOf(done.refusal);
    }
    const [secret] = await write.select().from(credentials).where(eq(credentials.personId, id));
    const [session] = await write
      .select({ id: sessions.id })
      .from(sessions)
      .where(eq(sessions.personId, id))
      .limit(1);
    if (secret || session) return words.signsIn;
    const done = await leavePerson(request);
    return done.ok ? null : sentenceOf(done.refusal);
  },
};
