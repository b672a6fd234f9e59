import 'server-only';
import { type Database, readAs } from '@/db/client';
import type { Person } from '@/db/queries/people';
import { ENDPOINTS, type Endpoint, type Screen } from '@/lib/people/access';
import { database } from './database';
import { actingPerson } from './person';

/** Who is here, and the store as they may read it. */
export interface Access {
  db: Database;
  person: Person;
}

/** The first line of every page and server action: who is here, or the way to sign in. */
export async function enter(_screen: Screen): Promise<Access> {
  const person = await actingPerson();
  return { db: readAs(database(), person), person };
}

type Params = Record<string, string>;

/** A route handler that only somebody who may reaches. */
export function endpoint<K extends Endpoint>(
  key: K,
  handle: (access: Access & { request: Request; params: Params }) => Promise<Response>,
): (request: Request, context: { params: Promise<Params> }) => Promise<Response> {
  if (!Object.hasOwn(ENDPOINTS, key)) throw new Error(`${key} is not declared`);
  return async (request, { params }) => {
    const person = await actingPerson();
    return handle({ db: readAs(database(), person), person, request, params: await params });
  };
}
