import type { OperationKey } from '@/clients/typescript/client';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import type { Act } from '@/lib/people/permissions';
import type { DemoPerson } from '@/seed/hospital/people';
import { type ApiServer, apiServer } from '../server';

type SignedIn = Awaited<ReturnType<ApiServer['asPerson']>>;

/** A hospital in which people have signed in, each once. */
export interface Desk extends ApiServer {
  as(person: DemoPerson): Promise<SignedIn>;
}

/** A write on top of a revision, as it is taken now. */
export interface Attempt {
  by: DemoPerson;
  /** What a token must be issued for to do it, where that is not the act of the address. */
  act?: Act;
  /** Somebody proves it, so that no token does it. */
  here?: true;
  path: Record<string, string>;
  /** Without its revision: `If-Match` says it. */
  body: object;
  /** The present one. */
  revision: number;
}

/** Makes the thing, or finds it in the demo, and says what would be done with it. */
export type Row = (desk: Desk) => Promise<Attempt>;
/** By method and address as the description has them; what follows a blank tells two acts of one address apart. */
export type Rows = Record<string, Row>;

export const proof = { secret: DEMO_PASSWORD };
export const proofOf = (personId: DemoPerson) => ({ who: { personId }, secret: DEMO_PASSWORD });

export async function desk(): Promise<Desk> {
  const server = await apiServer();
  const signedIn = new Map<string, Promise<SignedIn>>();
  return {
    ...server,
    as(person) {
      const known = signedIn.get(person) ?? server.asPerson(person);
      signedIn.set(person, known);
      return known;
    },
  };
}

/** The revision that an address of the API tells of a thing by its ETag. */
export async function seen(
  { as }: Desk,
  key: OperationKey,
  path: Record<string, string>,
  by: DemoPerson = 'person_maurice-oduya',
): Promise<number> {
  const reader = await as(by);
  const answered = await reader.call(key, { path } as never);
  const revision = /^"(\d+)"$/.exec(answered.etag ?? '')?.[1];
  if (!answered.ok || revision === undefined)
    throw new Error(`${key} told ${answered.status} ${answered.etag}`);
  return Number(revision);
}

export function first<T>(all: readonly T[], what: string): T {
  const [one] = all;
  if (one === undefined) throw new Error(`there is no ${what}`);
  return one;
}
