import type { Database } from '@/db/client';
import { addPerson } from '@/db/operations/people/add-person';
import { changeRole } from '@/db/operations/people/change-role';
import { leavePerson } from '@/db/operations/people/leave-person';
import { resetPassword } from '@/db/operations/people/reset-password';
import { unlockPerson } from '@/db/operations/people/unlock-person';
import { claimedByName } from '@/db/queries/credentials';
import { listColleagues, type Person } from '@/db/queries/people';
import { newPassword } from '@/db/secrets';
import { ROLE_WORDS, role } from '@/lib/people/role';
import { answerOf, newId, provenPerson } from '../administrator';
import { type Answer, CannotDo, type Command, type Given } from '../command';
import { openAtHand } from '../open';
import { placesOf } from '../places';

const USAGE = `list | add NAME ROLE | role NAME ROLE | reset NAME | unlock NAME | leave NAME, each but list with --as ADMINISTRATOR`;
const ROLES = role.options.join(', ');

/**
 * Who works here. Whoever changes anything does so as an administrator, by name and password, and the ledger says so: that
 * they can reach the machine is no proof of who they are.
 */
export const user: Command = {
  usage: USAGE,
  does: 'lists who works here; adds somebody, changes a role, resets a password, as a named administrator',
  words: [1, 3],
  options: { as: { type: 'string' } },
  async run(given) {
    const { database } = placesOf(given.env);
    const db = openAtHand(database);
    try {
      const [act = ''] = given.words;
      if (act === 'list') return list(await listColleagues(db));
      const does = ACTS[act];
      if (!does || given.words.length !== does.words) throw new CannotDo(`Usage: kitwright user ${USAGE}`);
      return await does.run({ ...given, db, person: await provenPerson(db, given) });
    } finally {
      db.close();
    }
  },
};

type AtUser = Given & { db: Database; person: Person };

const ACTS: Record<string, { words: number; run(at: AtUser): Promise<Answer> }> = {
  add: {
    words: 3,
    async run({ db, person, now, words: [, name = '', wanted = ''] }) {
      const firstPassword = newPassword();
      const entry = { name, role: roleNamed(wanted) };
      const added = await addPerson({ db, now: now().toISOString(), newId, person, firstPassword, entry });
      const { id } = answerOf(added);
      return {
        exit: 0,
        lines: [
          `${name} works here now as ${ROLE_WORDS[entry.role].toLowerCase()}.`,
          toldOnce(firstPassword),
        ],
        json: { id, name, role: entry.role, firstPassword },
      };
    },
  },
  role: {
    words: 3,
    async run(at) {
      const wanted = roleNamed(at.words[2] ?? '');
      const whom = await named(at);
      const { db, person, now } = at;
      answerOf(await changeRole({ db, now: now().toISOString(), person, personId: whom.id, role: wanted }));
      return {
        exit: 0,
        lines: [`${whom.name} is ${ROLE_WORDS[wanted].toLowerCase()} now.`],
        json: { id: whom.id, role: wanted },
      };
    },
  },
  reset: {
    words: 2,
    async run(at) {
      const whom = await named(at);
      const firstPassword = newPassword();
      const { db, person, now } = at;
      answerOf(
        await resetPassword({ db, now: now().toISOString(), person, personId: whom.id, firstPassword }),
      );
      return {
        exit: 0,
        lines: [
          `${whom.name} has a new password; every session of theirs has ended.`,
          toldOnce(firstPassword),
        ],
        json: { id: whom.id, firstPassword },
      };
    },
  },
  unlock: {
    words: 2,
    async run(at) {
      const whom = await named(at);
      const { db, person, now } = at;
      answerOf(await unlockPerson({ db, now: now().toISOString(), person, personId: whom.id }));
      return { exit: 0, lines: [`${whom.name} may try again at once.`], json: { id: whom.id } };
    },
  },
  leave: {
    words: 2,
    async run(at) {
      const whom = await named(at);
      const { db, person, now } = at;
      answerOf(await leavePerson({ db, now: now().toISOString(), person, personId: whom.id }));
      return { exit: 0, lines: [`${whom.name} has left.`], json: { id: whom.id } };
    },
  },
};

const toldOnce = (password: string) =>
  `Password for the first sign-in, told only here and to be changed then: ${password}`;

function list(people: readonly Person[]): Answer {
  const width = Math.max(4, ...people.map(({ name }) => name.length));
  return {
    exit: 0,
    lines: people.map((one) => `${one.name.padEnd(width)}  ${ROLE_WORDS[one.role]}`),
    json: people,
  };
}

function roleNamed(text: string) {
  const parsed = role.safeParse(text);
  if (!parsed.success) throw new CannotDo(`“${text}” is no role. Roles: ${ROLES}.`);
  return parsed.data;
}

async function named({ db, words: [, name = ''] }: AtUser): Promise<Person> {
  const { person } = await claimedByName(db, name);
  if (!person) throw new CannotDo(`Nobody of the name “${name}” works here.`);
  return person;
}
