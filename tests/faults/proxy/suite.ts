import { randomUUID } from 'node:crypto';
import Sqlite from 'better-sqlite3';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { ledgerFaults, openCopy } from '../hospital';
import { random, wholeBelow } from '../random';
import { type Acting, actingAs, newScan, SCANS, scanBody } from '../scanner';
import type { Found, Suite } from '../suite';
import { badNetwork, type Mischief } from './badNetwork';
import { onceFaults, type SentOnce } from './checker';

const BENCH = '/api/v1/bench';
const entriesOf = (count: string) => `/api/v1/bench/${count}/entries`;
const DELIVERIES = '/api/v1/deliveries';
const useOf = (id: string) => `/api/v1/cases/${id}/use/entries`;

/** Half of all exchanges go well; a sender tries again until it hears that it was stored. */
const MISCHIEF: readonly Mischief[] = [
  'none',
  'none',
  'none',
  'none',
  'loseRequest',
  'loseReply',
  'double',
  'doubleLater',
];
const TRIES = 60;

/**
 * A network that loses replies after the work was done, and doubles requests: scans, bench entries, receipts and entries of
 * use, each sent with an id of its own until it is acknowledged, are there once, and the pieces of a receipt lie on the shelf
 * once.
 */
export const proxy: Suite = {
  unit: 'sendings',
  size: 400,
  async run({ size, seed, template, say }) {
    const draw = random(seed);
    const hospital = await openCopy({ template, name: 'proxy' });
    const network = await badNetwork(
      hospital.address,
      () => MISCHIEF[wholeBelow(draw, MISCHIEF.length)] ?? 'none',
    );
    try {
      const things = await preparedThings(hospital.address, hospital.database);
      const each = Math.ceil(size / things.length);
      const outcomes = await Promise.all(things.map((thing) => sendAll(network.address, thing, each)));
      say(`${each * things.length} sent`);
      await network.close();
      await hospital.stop();
      return found(
        hospital.database,
        network.done,
        things.map((thing, at) => ({ ...thing, ...(outcomes[at] as Sent) })),
      );
    } finally {
      await network.close();
      await hospital.close();
    }
  },
};

/** One kind of write: how one is made with an id of its own, and where it is found afterwards. */
interface Thing {
  kind: string;
  person: Acting;
  make(): { id: string; path: string; body: unknown; pieces: number };
  isTaken(text: string, id: string): boolean;
  stored: string;
  entered: string | null;
  /** Query of the pieces on the shelf, by the id. */
  lying: string | null;
}

interface Sent {
  acknowledged: Set<string>;
  unknown: Set<string>;
  pieces: { id: string; sent: number }[];
  refused: string[];
}

async function sendAll(address: string, thing: Thing, count: number): Promise<Sent> {
  const sent: Sent = { acknowledged: new Set(), unknown: new Set(), pieces: [], refused: [] };
  for (let number = 0; number < count; number += 1) {
    const { id, path, body, pieces } = thing.make();
    sent.unknown.add(id);
    for (let tries = 0; tries < TRIES && sent.unknown.has(id); tries += 1) {
      const text = typeof body === 'string' ? body : JSON.stringify(body);
      try {
        const answer = await fetch(address + path, {
          method: 'POST',
          headers: { 'Content-Type': 'application/json', Cookie: thing.person.cookie },
          body: text,
        });
        const said = await answer.text();
        if (!answer.ok || !thing.isTaken(said, id)) {
          sent.refused.push(`${answer.status} ${said.slice(0, 200)}`);
          break;
        }
        sent.unknown.delete(id);
        sent.acknowledged.add(id);
        if (thing.lying) sent.pieces.push({ id, sent: pieces });
      } catch {
        // nothing is known of what arrived: it is sent again
      }
    }
  }
  return sent;
}

async function preparedThings(address: string, database: string): Promise<Thing[]> {
  const technician = await actingAs(address, 'Wren Adeyemi', DEMO_PASSWORD);
  const keeper = await actingAs(address, 'Dilys Harrow', DEMO_PASSWORD);
  const scrub = await actingAs(address, 'Ruth Okonjo', DEMO_PASSWORD);
  const { itemId, placeId, caseId, setId } = ofTheDemo(database);
  const count = `count_${randomUUID()}`;
  const begun = await fetch(address + BENCH, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', Cookie: technician.cookie },
    body: JSON.stringify({ countId: count, setId, purpose: 'count' }),
  });
  if (!begun.ok) throw new Error(`no count was begun: ${await begun.text()}`);
  const { countId } = (await begun.json()) as { countId: string };
  const entry = (person: Acting, id: string, more: object) => ({
    entries: [
      {
        entry: { id, doneAt: new Date().toISOString(), ...more },
        session: { id: person.sessionId, ticket: person.ticket },
      },
    ],
  });
  const isDelivered = (text: string, id: string) => {
    const [one] = (JSON.parse(text) as { delivered: { id: string; ok: boolean }[] }).delivered;
    return one?.id === id && one.ok;
  };
  return [
    {
      kind: 'scans',
      person: technician,
      make: () => {
        const scan = newScan('KW-UNKNOWN-1');
        return { id: scan.id, path: SCANS, body: scanBody(scan), pieces: 0 };
      },
      isTaken: (text) => /"ok":true/.test(text),
      stored: 'SELECT id FROM scans',
      entered: "SELECT subject_id FROM ledger WHERE action = 'record-scan'",
      lying: null,
    },
    {
      kind: 'bench entries',
      person: technician,
      make: () => {
        const id = `entry_${randomUUID()}`;
        const act = { kind: 'note', text: `seen ${id}` };
        return { id, path: entriesOf(countId), body: entry(technician, id, { act }), pieces: 0 };
      },
      isTaken: isDelivered,
      stored: `SELECT id FROM bench_entries WHERE count_id = '${countId}'`,
      entered: null,
      lying: null,
    },
    {
      kind: 'receipts',
      person: keeper,
      make: () => {
        const id = `delivery_${randomUUID()}`;
        const line = {
          id: `deliveryLine_${randomUUID()}`,
          itemId,
          form: 'sterilePacked',
          lot: id.slice(9),
          useBy: '2031-01-01',
          count: 3,
          unit: 'pieces',
          placeId,
          owner: 'ours',
          held: null,
          useByReadAgain: false,
          scanId: null,
        };
        const arrivedOn = new Date().toISOString().slice(0, 10);
        const body = { id, supplier: 'Fernhollow', reference: id.slice(9, 17), arrivedOn, lines: [line] };
        return { id, path: DELIVERIES, body, pieces: 3 };
      },
      isTaken: (text, id) => (JSON.parse(text) as { id: string }).id === id,
      stored: 'SELECT id FROM deliveries',
      entered: null,
      lying: 'SELECT coalesce(sum(quantity), 0) FROM stock WHERE lot = substr(?, 10)',
    },
    {
      kind: 'entries of use',
      person: scrub,
      make: () => {
        const id = `entry_${randomUUID()}`;
        const act = {
          kind: 'delay',
          minutes: 5,
          reasonId: null,
          step: null,
          about: null,
          note: null,
          because: null,
        };
        return { id, path: useOf(caseId), body: entry(scrub, id, { act, scanId: null }), pieces: 0 };
      },
      isTaken: isDelivered,
      stored: `SELECT id FROM use_entries WHERE case_id = '${caseId}'`,
      entered: null,
      lying: null,
    },
  ];
}

/** Things of the demo that each kind of write is about. */
function ofTheDemo(database: string) {
  const connection = new Sqlite(database, { readonly: true });
  const one = (sql: string) => {
    const found = connection.prepare(sql).pluck().get() as string | undefined;
    if (found === undefined) throw new Error(`the demo has nothing for: ${sql}`);
    return found;
  };
  try {
    return {
      itemId: one("SELECT id FROM items WHERE status = 'current' AND kind = 'screw' LIMIT 1"),
      placeId: one('SELECT place_id FROM stock LIMIT 1'),
      caseId: one(
        'SELECT case_id FROM case_lives WHERE taken_at IS NOT NULL AND case_id NOT IN (SELECT case_id FROM case_uses WHERE closed_at IS NOT NULL) LIMIT 1',
      ),
      setId: one("SELECT id FROM sets WHERE step = 'onBench' LIMIT 1"),
    };
  } finally {
    connection.close();
  }
}

function found(database: string, done: Record<Mischief, number>, things: readonly (Thing & Sent)[]): Found {
  const connection = new Sqlite(database, { readonly: true });
  const all = (sql: string) => connection.prepare(sql).pluck().all() as string[];
  const outcomes = things.map(({ kind, acknowledged, unknown, refused, ...thing }): SentOnce => {
    // what the demo holds already was sent by none of ours
    const ours = (ids: string[]) => ids.filter((id) => acknowledged.has(id) || unknown.has(id));
    const lying = thing.lying === null ? null : connection.prepare(thing.lying).pluck();
    return {
      kind,
      acknowledged,
      unknown,
      stored: ours(all(thing.stored)),
      entered: thing.entered === null ? null : ours(all(thing.entered)),
      pieces: lying ? thing.pieces.map(({ id, sent }) => ({ id, sent, there: lying.get(id) as number })) : [],
      refused,
    };
  });
  connection.close();
  const sum = (of: (one: SentOnce) => number) => outcomes.reduce((all, one) => all + of(one), 0);
  return {
    tried: sum(({ acknowledged, unknown }) => acknowledged.size + unknown.size),
    acknowledged: sum(({ acknowledged }) => acknowledged.size),
    lost: sum(({ acknowledged, stored }) => [...acknowledged].filter((id) => !stored.includes(id)).length),
    seen: [
      `${done.loseRequest} requests lost, ${done.loseReply} replies dropped after the work was done, ${done.double} sent twice at once, ${done.doubleLater} once more after the answer`,
      outcomes.map(({ kind, acknowledged }) => `${acknowledged.size} ${kind}`).join(', '),
    ],
    faults: [...outcomes.flatMap(onceFaults), ...ledgerFaults(database)],
    notTried: [],
  };
}
