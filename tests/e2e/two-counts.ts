import Database from 'better-sqlite3';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { type DemoPerson, PEOPLE } from '@/seed/hospital/people';
import type { Hospital } from './harness';

interface Line {
  id: string;
  expected: number;
  mustHaveClass: number;
  item: string;
}

/** Everything a set must hold, by the hospital's own record. */
export function linesOf({ database }: Hospital, setId: string): Line[] {
  const file = new Database(database, { readonly: true });
  try {
    return file
      .prepare<[string], Line>(
        `SELECT line.id, line.expected, line.must_have_class AS mustHaveClass, item.name AS item
         FROM sets JOIN configuration_lines AS line ON line.version_id = sets.version_id
         JOIN items AS item ON item.id = line.item_id
         WHERE sets.id = ? ORDER BY line.layer, line.row, line.slot`,
      )
      .all(setId);
  } finally {
    file.close();
  }
}

/** Signed in by a request, as a workstation would send it. */
async function at(address: string, person: DemoPerson) {
  const name = PEOPLE.find(({ id }) => id === person)?.name;
  const answer = await fetch(`${address}/api/v1/people/sign-in`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ name, password: DEMO_PASSWORD }),
  });
  const cookie = answer.headers.getSetCookie().map((one) => one.split(';')[0]);
  const { sessionId, ticket } = (await answer.json()) as { sessionId: string; ticket: string };
  return {
    session: { id: sessionId, ticket },
    async send<T>(path: string, body: unknown): Promise<T> {
      const sent = await fetch(`${address}${path}`, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json', Cookie: cookie.join('; ') },
        body: JSON.stringify(body),
      });
      const text = await sent.text();
      if (!sent.ok) throw new Error(`${path}: ${sent.status} ${text}`);
      return JSON.parse(text) as T;
    },
  };
}

/** Counts a set line by line and closes the count; then, where a second person is named, the same as their blind check. */
export async function countTwice(
  { address }: Hospital,
  setId: string,
  found: readonly { lineId: string; pieces: number }[],
  people: readonly [DemoPerson, DemoPerson] | readonly [DemoPerson],
): Promise<void> {
  for (const [turn, person] of people.entries()) {
    const purpose = turn === 0 ? 'count' : 'check';
    const { session, send } = await at(address, person);
    const mark = `${setId.slice(4)}-${purpose}`;
    const begun = { countId: `count_${mark}`, setId, purpose };
    const { countId } = await send<{ countId: string }>('/api/v1/bench', begun);
    const entries = found.map(({ lineId, pieces }, order) => ({
      entry: {
        id: `entry_${mark}-${order}`,
        act: { kind: 'found', lineId, pieces },
        doneAt: new Date().toISOString(),
      },
      session,
    }));
    for (let from = 0; from < entries.length; from += 50) {
      const sent = { entries: entries.slice(from, from + 50) };
      const { delivered } = await send<{ delivered: { ok: boolean }[] }>(
        `/api/v1/bench/${countId}/entries`,
        sent,
      );
      if (delivered.some(({ ok }) => !ok)) throw new Error(JSON.stringify(delivered));
    }
    await send(`/api/v1/bench/${countId}/close`, {
      entryIds: entries.map(({ entry }) => entry.id),
      meaning: purpose === 'count' ? 'iCounted' : 'iChecked',
      proof: { secret: DEMO_PASSWORD },
    });
  }
}
