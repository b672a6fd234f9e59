import { type Act, may } from '@/lib/people/permissions';
import type { Queries } from './client';
import type { Person } from './queries/people';

/** The program itself, in scripts, tests and while it starts; on a screen or an endpoint it is always a person. */
export const THE_PROGRAM = 'theProgram';
export type Reader = Person | typeof THE_PROGRAM;

/** What a query of a screen is given: where to read, and for whom. */
export interface Reading {
  read: Queries;
  reader: Reader;
}

/** A query was asked for somebody who may not see it. Screens and endpoints ask first, so this is the last guard. */
export class NotPermitted extends Error {
  /** The web framework answers an error so marked with 403 and the page for it, where a screen did not ask first. */
  readonly digest = 'NEXT_HTTP_ERROR_FALLBACK;403';

  constructor(readonly act: Act) {
    super(`not permitted: ${act}`);
    this.name = 'NotPermitted';
  }
}

/** The first line of every exported query. */
export function mayRead({ reader }: Pick<Reading, 'reader'>, act: Act): void {
  if (reader !== THE_PROGRAM && !may(reader, act)) throw new NotPermitted(act);
}
