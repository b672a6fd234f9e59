import type { Queries } from '@/db/client';
import { type Person, personFromRow } from '@/db/queries/people';
import type { NewId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import { type DemoPerson, PEOPLE } from './hospital/people';

/** What an operation of the program is handed, inside the one write that loads the demo. */
export interface Acting {
  db: { read: Queries; tx<T>(work: (write: Queries) => Promise<T>): Promise<T> };
  /** Ids that are the same each time the demo is loaded. */
  newId: NewId;
}

export function actingIn(write: Queries, stem: string): Acting {
  let ids = 0;
  const newId: NewId = (prefix) => {
    ids += 1;
    return `${prefix}_demo-${stem}-${ids}`;
  };
  return { db: { read: write, tx: (work) => work(write) }, newId };
}

export function demoPerson(id: DemoPerson): Person {
  const row = PEOPLE.find((person) => person.id === id);
  if (!row) throw new Error(`the demo has no ${id}`);
  return personFromRow(row);
}

/** What the program does for its users it does for the demo: a refusal is a fault of the demo. */
export function done<T>(outcome: Outcome<T, unknown>): T {
  if (!outcome.ok) throw new Error(outcome.refusal.problems.map(({ message }) => message).join(' | '));
  return outcome.value;
}
