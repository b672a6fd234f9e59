import 'server-only';
import type { Database } from '@/db/client';
import { ENDPOINTS, type Endpoint, SCREENS, type Screen } from '@/lib/people/access';
import { peopleWords } from '@/lib/wording/people';
import { database } from './database';
import { problemResponse } from './problem-response';
import { isFromHere } from './same-origin';
import { type PresentSession, presentSession } from './session';

/** What is declared as open to anybody: the way in. */
type OpenTo<Declared> = { [K in keyof Declared]: Declared[K] extends 'anybody' ? K : never }[keyof Declared];
type OpenScreen = OpenTo<typeof SCREENS>;
type OpenEndpoint = OpenTo<typeof ENDPOINTS>;

/** Somebody at the door: who they are already, if anybody. The store is read for the program, not for them. */
export interface Visit {
  db: Database;
  session: PresentSession | null;
}

/** The first line of a page that shows the way in. It hands out nothing of the hospital by itself. */
export async function approach<K extends OpenScreen & Screen>(screen: K): Promise<Visit> {
  if (!Object.hasOwn(SCREENS, screen)) throw new Error(`${screen} is not declared`);
  return { db: database(), session: await presentSession() };
}

/** A route handler of the way in. */
export function openEndpoint<K extends OpenEndpoint & Endpoint>(
  key: K,
  handle: (visit: Visit & { request: Request }) => Promise<Response>,
): (request: Request) => Promise<Response> {
  if (!Object.hasOwn(ENDPOINTS, key)) throw new Error(`${key} is not declared`);
  return async (request) => {
    if (!isFromHere(request.headers)) {
      const problem = { path: [], code: 'not-permitted', message: peopleWords.fromElsewhere };
      return problemResponse(403, 'Not permitted', [problem]);
    }
    return handle({ db: database(), session: await presentSession(), request });
  };
}
