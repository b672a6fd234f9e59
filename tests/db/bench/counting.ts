import type { Database } from '@/db/client';
import { beginCount } from '@/db/operations/bench/begin-count';
import { closeCount } from '@/db/operations/bench/close-count';
import { recordEntry } from '@/db/operations/bench/record-entry';
import { listPeople, type Person } from '@/db/queries/people';
import { findSet, type SetOnFile } from '@/db/queries/sets';
import type { CountPurpose } from '@/lib/bench/closing';
import type { CountId, NewId, SetId } from '@/lib/identity/ids';
import type { Attestation, Meaning } from '@/lib/people/attestation';
import type { ConfigurationLine } from '@/lib/sets/configuration';
import { demoDatabase } from '../../setup/database';

let made = 0;
export const newId: NewId = (prefix) => {
  made += 1;
  return `${prefix}_t${made}`;
};

const BEGIN = Date.parse('2026-01-14T08:00:00.000Z');
let ticks = 0;
/** Each moment later than the one before, by a tenth of a second. */
export function tick(): string {
  ticks += 1;
  return new Date(BEGIN + ticks * 100).toISOString();
}

export const attest = (person: Person, meaning: Meaning, at: string): Attestation => ({
  personId: person.id,
  meaning,
  method: 'pin',
  at,
});

export interface Bench {
  db: Database;
  first: Person;
  second: Person;
  third: Person;
  surgeon: Person;
  set: SetOnFile;
}

/** The demo's whole set that stands on the bench, and people to count it. */
export async function bench(code = 'set_sfs-09'): Promise<Bench> {
  const db = await demoDatabase();
  const people = await listPeople(db);
  const [first, second, third] = people.filter(({ role }) => role === 'technician');
  const surgeon = people.find(({ role }) => role === 'surgeon');
  const set = await findSet(db, code);
  if (!first || !second || !third || !surgeon || !set)
    throw new Error('the demo has these people and this set');
  return { db, first, second, third, surgeon, set };
}

export async function begin(
  { db, set }: Pick<Bench, 'db' | 'set'>,
  person: Person,
  purpose: CountPurpose = 'count',
): Promise<CountId> {
  const countId = newId('count') as CountId;
  const now = tick();
  const begun = await beginCount({
    db,
    now,
    person,
    workstationId: null,
    countId,
    setId: set.id as SetId,
    purpose,
  });
  if (!begun.ok) throw new Error(JSON.stringify(begun.refusal));
  return begun.value.countId as CountId;
}

/** Makes one act durable and answers the id of its entry. */
export async function enter(db: Database, person: Person, countId: CountId, act: object): Promise<string> {
  const id = newId('entry');
  const done = await recordEntry({
    db,
    now: tick(),
    person,
    sessionId: null,
    countId,
    entry: { id, act, doneAt: tick() },
  });
  if (!done.ok) throw new Error(JSON.stringify(done.refusal));
  return id;
}

/** Counts every line of the set: what is expected, but for the lines named. */
export async function countAll(
  { db, set }: Pick<Bench, 'db' | 'set'>,
  person: Person,
  countId: CountId,
  but: Readonly<Record<string, number>> = {},
  lines: readonly ConfigurationLine[] = set.lines,
): Promise<string[]> {
  const ids: string[] = [];
  for (const { id, expected } of lines)
    ids.push(await enter(db, person, countId, { kind: 'found', lineId: id, pieces: but[id] ?? expected }));
  return ids;
}

export async function close(
  db: Database,
  person: Person,
  countId: CountId,
  entryIds: readonly string[],
  purpose: CountPurpose = 'count',
  together: Person | null = null,
) {
  const now = tick();
  const second = together ? { person: together, attestation: attest(together, 'iChecked', now) } : null;
  const attestation = attest(person, purpose === 'check' ? 'iChecked' : 'iCounted', now);
  return closeCount({ db, now, newId, person, countId, entryIds, attestation, second });
}
