import Sqlite from 'better-sqlite3';
import { ledgerFaults, openCopy } from '../hospital';
import { random, wholeBelow } from '../random';
import type { Found, Suite } from '../suite';
import { badNetwork, type Mischief } from './badNetwork';
import { onceFaults, type SentOnce } from './checker';
import { preparedThings, type Thing } from './things';

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
