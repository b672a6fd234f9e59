import 'server-only';
import type { LedgerFilter } from '@/db/queries/ledger/entries';
import { type NamedThing, thingNamed } from '@/db/queries/ledger/thingNamed';
import type { Reading } from '@/db/reader';
import { personId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import { instantOf } from '@/lib/theatre/localTime';

/** What the address asks of the ledger, as typed. */
export interface AskedFields {
  of: string;
  person: string;
  act: string;
  from: string;
  to: string;
}

export interface Asked {
  fields: AskedFields;
  thing: NamedThing | null;
  filter: LedgerFilter;
  before: number | null;
  /** What could not be understood, by field. */
  problems: { path: string; sentence: string }[];
}

type Params = Record<string, string | string[] | undefined>;

/** Reads what is asked; what cannot be understood is told and leaves its field out, never the whole page. */
export async function readAsked(db: Reading, params: Params): Promise<Asked> {
  const text = (name: string) => {
    const value = params[name];
    return (typeof value === 'string' ? value : (value?.[0] ?? '')).trim().slice(0, 100);
  };
  const fields = {
    of: text('of'),
    person: text('person'),
    act: text('act'),
    from: text('from'),
    to: text('to'),
  };
  const problems: Asked['problems'] = [];
  const thing = fields.of === '' ? null : await thingNamed(db, fields.of);
  if (fields.of !== '' && thing === null) {
    problems.push({
      path: 'of',
      sentence: `No set, case, load, pack or steriliser is called “${fields.of}”.`,
    });
  }
  const person = personId.safeParse(fields.person).data ?? null;
  const day = (name: 'from' | 'to', daysOn: number) => {
    if (fields[name] === '') return null;
    const date = plainDate.safeParse(fields[name]);
    if (!date.success) {
      problems.push({ path: name, sentence: 'Give a date, such as 2026-01-14.' });
      return null;
    }
    const next = new Date(Date.parse(`${date.data}T12:00:00Z`) + daysOn * 86_400_000)
      .toISOString()
      .slice(0, 10);
    return instantOf(plainDate.parse(next), '00:00');
  };
  const before = Number(text('before'));
  return {
    fields,
    thing,
    filter: {
      things: [...(thing === null ? [] : [thing.id]), ...(person === null ? [] : [person])],
      action: fields.act === '' ? null : fields.act,
      from: day('from', 0),
      to: day('to', 1),
    },
    before: Number.isSafeInteger(before) && before > 0 ? before : null,
    problems,
  };
}

/** The address of the ledger with these fields; empty ones are left out. */
export function ledgerHref(
  fields: Partial<AskedFields>,
  more: Record<string, string> = {},
  path = '/ledger',
): string {
  const params = new URLSearchParams(
    Object.entries({ ...fields, ...more }).filter(([, value]) => value !== '' && value !== undefined),
  );
  return params.size === 0 ? path : `${path}?${params}`;
}
