import type { Database } from '@/db/client';
import type { Person } from '@/db/queries/people';
import type { Given } from '../command';

/** A person who proved who they are, at the database. */
export interface AtWork {
  given: Given;
  db: Database;
  person: Person;
}
