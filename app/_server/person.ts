import 'server-only';
import { cookies } from 'next/headers';
import { cache } from 'react';
import { listPeople, type Person } from '@/db/queries/people';
import { database } from './database';

export const ACTING_COOKIE = 'acting';

/**
 * Who is acting at this screen: the person chosen in the header, or the first technician until one is
 * chosen. It says who is meant, not who it is proven to be; there is no sign-in in this version.
 */
export const actingPerson = cache(async (): Promise<Person> => {
  const [people, jar] = await Promise.all([listPeople(database()), cookies()]);
  const chosen = jar.get(ACTING_COOKIE)?.value;
  const person =
    people.find(({ id }) => id === chosen) ?? people.find(({ role }) => role === 'technician') ?? people[0];
  if (!person) throw new Error('nobody is entered yet: load the demo, or add a person');
  return person;
});
