import Sqlite from 'better-sqlite3';
import { expect, it } from 'vitest';
import { randomNumbers } from '@/lib/calculations/lengthCover/random';
import { demoDatabaseFile } from '../../setup/database';

/**
 * Two promises of one set that overlap must be impossible whoever asks in what order. Many people ask at once: each looks
 * whether the set is free and then, after others had their turn, promises it.
 */
const TRIES = 100_000;
const SETS = 12;
const PEOPLE = 40;
const DAY_MINUTES = 7 * 24 * 60;

interface Asked {
  caseId: string;
  setId: string;
  fromAt: string;
  untilAt: string;
}

/** A store with `SETS` sets and a case for each of a week's half hours, every promise of the demo gone. */
async function store(naive: boolean) {
  const db = new Sqlite(await demoDatabaseFile());
  db.pragma('synchronous = OFF');
  db.pragma('foreign_keys = ON');
  db.exec('DELETE FROM set_promises');
  if (naive) db.exec('DROP TRIGGER promises_never_overlap; DROP TRIGGER promises_stay_apart');
  const setIds = db
    .prepare('SELECT id FROM sets WHERE withdrawn_at IS NULL ORDER BY code LIMIT ?')
    .pluck()
    .all(SETS) as string[];
  const [theatre, surgeon] = ['SELECT id FROM theatres', "SELECT id FROM people WHERE role = 'surgeon'"].map(
    (text) => db.prepare(text).pluck().get(),
  );
  const addCase = db.prepare(
    `INSERT INTO cases (id, reference, theatre_id, case_date, starts_at, ends_at, region, limb, surgeon_id, urgency, revision)
     VALUES (?, ?, ?, ?, ?, ?, 'ankle', 'left', ?, 'booked', 1)`,
  );
  const at = (minute: number) => new Date(Date.UTC(2030, 0, 7, 0, minute)).toISOString();
  const cases = Array.from({ length: DAY_MINUTES / 30 }, (_, slot) => {
    const [starts, ends] = [slot * 30 + 60, slot * 30 + 60 + 30 * (1 + (slot % 5))];
    const id = `case_try-${slot}`;
    addCase.run(
      id,
      `LM-30-${String(slot).padStart(4, '0')}`,
      theatre,
      at(starts).slice(0, 10),
      at(starts),
      at(ends),
      surgeon,
    );
    return { id, fromAt: at(starts - 60), untilAt: at(ends + 180 + (slot % 5) * 60) };
  });
  return { db, setIds, cases };
}

async function bookAtOnce(naive: boolean): Promise<{ kept: number; refused: number; overlaps: number }> {
  const { db, setIds, cases } = await store(naive);
  const random = randomNumbers(20_260_114);
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)] as T;
  const isFree = db
    .prepare(
      'SELECT NOT EXISTS (SELECT 1 FROM set_promises WHERE set_id = ? AND from_at < ? AND ? < until_at)',
    )
    .pluck();
  const keep = db.prepare(
    "INSERT INTO set_promises (id, set_id, case_id, from_at, until_at, chosen_by) VALUES (?, ?, ?, ?, ?, 'person')",
  );
  const free = db.prepare('DELETE FROM set_promises WHERE id = ?');
  // each has looked and goes on when it is next their turn
  const looked: (Asked | null)[] = Array.from({ length: PEOPLE }, () => null);
  const live: string[] = [];
  let [kept, refused] = [0, 0];
  db.exec('BEGIN IMMEDIATE');
  for (let tries = 0; tries < TRIES; ) {
    const person = Math.floor(random() * PEOPLE);
    const asked = looked[person];
    if (!asked) {
      const [one, setId] = [pick(cases), pick(setIds)];
      if (isFree.get(setId, one.untilAt, one.fromAt) === 1)
        looked[person] = { caseId: one.id, setId, fromAt: one.fromAt, untilAt: one.untilAt };
      else tries += 1;
      continue;
    }
    looked[person] = null;
    tries += 1;
    const id = `promise_${tries}`;
    try {
      keep.run(id, asked.setId, asked.caseId, asked.fromAt, asked.untilAt);
      live.push(id);
      kept += 1;
    } catch (error) {
      expect((error as Error).message).toMatch(/promised to another case over that time|UNIQUE/);
      refused += 1;
    }
    // what is taken back is free again, so that the week never fills up
    if (live.length > 100) free.run(live.splice(Math.floor(random() * live.length), 1)[0]);
  }
  const overlaps = db
    .prepare(
      `SELECT count(*) FROM set_promises a JOIN set_promises b ON a.set_id = b.set_id AND a.id < b.id
       AND a.from_at < b.until_at AND b.from_at < a.until_at`,
    )
    .pluck()
    .get() as number;
  db.exec('COMMIT');
  db.close();
  return { kept, refused, overlaps };
}

it(`keeps ${TRIES} interleaved tries apart, where looking first does not`, async () => {
  const defended = await bookAtOnce(false);
  const naive = await bookAtOnce(true);
  expect(defended.overlaps).toBe(0);
  expect(defended.kept).toBeGreaterThan(1_000);
  expect(defended.refused).toBeGreaterThan(1_000);
  // the control: whoever only looks before promising does double-book
  expect(naive.overlaps).toBeGreaterThan(0);
});

it('lets one promise begin when another ends, and moves none onto another', async () => {
  const { db, setIds, cases } = await store(false);
  const [one] = cases;
  if (!one) throw new Error('no case');
  const setId = setIds[0];
  const add = db.prepare(
    "INSERT INTO set_promises (id, set_id, case_id, from_at, until_at, chosen_by) VALUES (?, ?, ?, ?, ?, 'person')",
  );
  add.run('promise_a', setId, one.id, one.fromAt, one.untilAt);
  const next = cases.find(({ fromAt }) => fromAt === one.untilAt);
  if (!next) throw new Error('no case begins as that set comes back');
  add.run('promise_b', setId, next.id, next.fromAt, next.untilAt);
  const longer = db.prepare('UPDATE set_promises SET until_at = ? WHERE id = ?');
  expect(() => longer.run(next.untilAt, 'promise_a')).toThrow(/another case over that time/);
  const other = db.prepare('UPDATE set_promises SET set_id = ? WHERE id = ?');
  add.run('promise_c', setIds[1], cases[1]?.id, cases[1]?.fromAt, cases[1]?.untilAt);
  expect(() => other.run(setId, 'promise_c')).toThrow(/another case over that time/);
  db.close();
});

it.each([
  ['a time that does not cover the case', { until_at: '2030-01-07T01:15:00.000Z' }, /covers its case/],
  ['an instant written otherwise', { from_at: '2030-01-07T00:00Z' }, /CHECK/],
])('refuses %s', async (_, change, message) => {
  const { db, setIds, cases } = await store(false);
  const one = cases[0];
  const row = { from_at: one?.fromAt, until_at: one?.untilAt, ...change };
  expect(() =>
    db
      .prepare(
        "INSERT INTO set_promises (id, set_id, case_id, from_at, until_at, chosen_by) VALUES ('promise_x', ?, ?, ?, ?, 'person')",
      )
      .run(setIds[0], one?.id, row.from_at, row.until_at),
  ).toThrow(message);
  db.close();
});

it('refuses to move or cancel a case under its promises, and to promise what is cancelled or out of service', async () => {
  const { db, setIds, cases } = await store(false);
  const one = cases[0];
  const add = db.prepare(
    "INSERT INTO set_promises (id, set_id, case_id, from_at, until_at, chosen_by) VALUES (?, ?, ?, ?, ?, 'person')",
  );
  add.run('promise_a', setIds[0], one?.id, one?.fromAt, one?.untilAt);
  const later = db.prepare(
    "UPDATE cases SET starts_at = '2030-02-01T08:00:00.000Z', ends_at = '2030-02-01T09:00:00.000Z' WHERE id = ?",
  );
  const cancel = db.prepare(
    "UPDATE cases SET cancelled_at = '2030-01-01T08:00:00.000Z', cancelled_because = 'x' WHERE id = ?",
  );
  expect(() => later.run(one?.id)).toThrow(/promises of the case first/);
  expect(() => cancel.run(one?.id)).toThrow(/promises of the case first/);
  db.exec('DELETE FROM set_promises');
  cancel.run(one?.id);
  expect(() => add.run('promise_b', setIds[0], one?.id, one?.fromAt, one?.untilAt)).toThrow(/not cancelled/);
  expect(() => later.run(one?.id)).toThrow(/cancelled case is not moved/);
  db.prepare("UPDATE sets SET withdrawn_at = '2030-01-01T08:00:00.000Z' WHERE id = ?").run(setIds[1]);
  const two = cases[1];
  expect(() => add.run('promise_c', setIds[1], two?.id, two?.fromAt, two?.untilAt)).toThrow(/out of service/);
  db.close();
});
