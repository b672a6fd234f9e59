import type { Database } from '@/db/client';
import { type BroughtIn, bringIn, type Seen } from '@/db/operations/exchange/bring-in';
import type { ExchangeChoices } from '@/db/operations/exchange/work';
import { listPeople, type Person } from '@/db/queries/people';
import type { ListKind } from '@/lib/exchange/list';
import { LISTS } from '@/lib/exchange/lists/lists';
import { readExchangeFile } from '@/lib/exchange/readFile';
import type { NewId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import type { Role } from '@/lib/people/role';

export const NOW = '2026-01-14T07:00:00.000Z';

export const NOTHING_CHOSEN: ExchangeChoices = {
  sheet: null,
  encoding: null,
  columns: {},
  dateOrder: null,
  decimal: null,
  repaired: [],
  kept: [],
  empty: 'keep',
  newMakers: [],
  more: null,
  fewer: null,
  note: '',
};

let made = 0;
export const newId: NewId = (prefix) => {
  made += 1;
  return `${prefix}_in-${made}`;
};

export async function personOf(db: Database, role: Role): Promise<Person> {
  const found = (await listPeople(db)).find((one) => one.role === role);
  if (!found) throw new Error(`nobody is ${role}`);
  return found;
}

interface Asked {
  db: Database;
  list: ListKind;
  /** A CSV as text, or the bytes of a file. */
  file: string | Uint8Array;
  person: Person;
  choices?: Partial<ExchangeChoices>;
  seen?: Seen | null;
  now?: string;
}

/** Tries a file, or brings it in as it was seen. */
export async function ask({
  db,
  list,
  file,
  person,
  choices = {},
  seen = null,
  now = NOW,
}: Asked): Promise<Outcome<BroughtIn, never>> {
  const bytes = typeof file === 'string' ? new TextEncoder().encode(file) : file;
  const chosen = { ...NOTHING_CHOSEN, ...choices };
  const read = await readExchangeFile(bytes, LISTS[list], chosen);
  if (!read.ok) throw new Error(read.fault.code);
  return bringIn({ db, now, newId, person, list, bytes, file: read.file, choices: chosen, seen });
}

/** What a try came to; throws where the file is refused as a whole. */
export async function tried(asked: Asked): Promise<BroughtIn> {
  const outcome = await ask(asked);
  if (!outcome.ok) throw new Error(outcome.refusal.problems.map(({ message }) => message).join(' '));
  return outcome.value;
}

/** Tries a file and brings it in as it was tried. */
export async function broughtIn(asked: Asked): Promise<Outcome<BroughtIn, never>> {
  return ask({ ...asked, seen: await tried(asked) });
}

export const kinds = ({ outcomes }: BroughtIn) => outcomes.map(({ kind, name }) => `${kind} ${name}`);
export const faults = ({ problems }: BroughtIn) =>
  problems.map(({ row, column, code }) => `${row} ${column} ${code}`);
