import Sqlite from 'better-sqlite3';
import { openDatabase } from '@/db/client';
import { CONFIGURATIONS } from '@/seed/configurations/configurations';
import { linesOf, type VersionPlan } from '@/seed/configurations/layout';
import { insertStarterRules } from '@/seed/rules/insertStarterRules';

/** Cases a day, over so many days from tomorrow on; those of the first days have sets promised to them. */
const CASES_A_DAY = 55;
const DAYS = 14;
const PROMISED_DAYS = 2;
const THEATRES = 14;
const MINUTE = 60_000;
const DAY = 86_400_000;
const iso = (ms: number) => new Date(ms).toISOString();

/** Where the sets are on a working day, in hundredths of them; the rest is in the sterile store. */
const AT: readonly (readonly [step: string, hundredths: number])[] = [
  ['inTheatre', 6],
  ['comingBack', 2],
  ['washing', 3],
  ['onBench', 4],
  ['packed', 2],
  ['held', 1],
];

/**
 * Gives a made hospital the present that its record ends before: sets on their way, one in eight short of something, kinds of
 * set with what they must hold and promise, heaps on the shelves, cases with plans and promised sets for a fortnight. Only the
 * record of the past is as long as the years; all of this is as large in a hospital of one year as of ten.
 */
export async function writeToday(path: string, now: string): Promise<void> {
  const db = new Sqlite(path);
  const triggers = db
    .prepare<[], { name: string; sql: string }>(
      `SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' AND tbl_name IN
        ('sets', 'turn_steps', 'configuration_versions', 'configuration_lines', 'cases', 'set_promises', 'stock', 'plans')`,
    )
    .all();
  db.transaction(() => {
    for (const { name } of triggers) db.exec(`DROP TRIGGER "${name}"`);
    kinds(db);
    setsToday(db, now);
    shelves(db, now);
    casesToCome(db, now);
    // lines of a version never change, but here they did
    db.exec(`DELETE FROM set_completeness; INSERT INTO set_completeness (set_id, lines, expected, found, surplus, unsound, uncounted,
      musts, below, short_1, short_2, short_3, short_4) SELECT * FROM set_completeness_worked_out`);
    for (const { sql } of triggers) db.exec(sql);
  })();
  db.close();
  const store = openDatabase(path);
  await store.tx((write) => insertStarterRules(write));
  store.close();
}

/** The made catalogue holds the demo's items several times over: the first of each. */
const made = (text: string) => text.replaceAll(/"(item_[^"]+)"/g, '"$1-r0"');

const demoKinds = (): { lines: ReturnType<typeof linesOf>; plan: VersionPlan }[] =>
  CONFIGURATIONS.flatMap(({ code, versions }) =>
    versions.flatMap((plan) => (plan.status === 'inForce' ? [{ plan, lines: linesOf(code, plan) }] : [])),
  );

/** One made kind of set after the other holds what a kind of the demo does, as far as it has lines. */
function kinds(db: Sqlite.Database): void {
  const demo = demoKinds();
  const known = new Set(db.prepare<[], string>('SELECT id FROM items').pluck().all());
  const lineOf = db.prepare(
    'UPDATE configuration_lines SET item_id = ?, expected = ?, minimum = ?, must_have_class = ?, substitutes = ? WHERE id = ?',
  );
  const versionOf = db.prepare('UPDATE configuration_versions SET layers = ?, promises = ? WHERE id = ?');
  const versions = db.prepare<[], string>('SELECT id FROM configuration_versions ORDER BY id').pluck().all();
  const linesOfVersion = db.prepare<[string], string>(
    'SELECT id FROM configuration_lines WHERE version_id = ? ORDER BY layer, row, slot',
  );
  versions.forEach((version, at) => {
    const kind = demo[at % demo.length];
    if (!kind) return;
    versionOf.run('[{"layer":1,"name":"Layer 1"}]', made(JSON.stringify(kind.plan.promises)), version);
    const lines = linesOfVersion.pluck().all(version);
    kind.lines.slice(0, lines.length).forEach((line, nth) => {
      const id = `${line.itemId}-r0`;
      if (!known.has(id)) return;
      const { expected, minimum, mustHaveClass, substitutes } = line;
      lineOf.run(
        id,
        expected,
        minimum,
        mustHaveClass,
        made(JSON.stringify(substitutes)),
        lines[nth] as string,
      );
    });
  });
  db.exec(`UPDATE set_contents SET found = (SELECT expected FROM configuration_lines WHERE id = line_id);
    UPDATE sterilisers SET programmes = '[{"name":"134 °C wrapped","bandMillicelsius":[134000,137000],"holdSeconds":180}]'`);
}

function setsToday(db: Sqlite.Database, now: string): void {
  const ids = db.prepare<[], string>('SELECT id FROM sets ORDER BY id').pluck().all();
  const put = db.prepare(
    `UPDATE sets SET step = ?, held_because = ?, step_since = ?, turn_id = (SELECT id FROM turns WHERE set_id = sets.id
      ORDER BY number DESC LIMIT 1), use_by = iif(? = 'inSterileStore', ?, NULL) WHERE id = ?`,
  );
  const lacks = db.prepare(
    `UPDATE set_contents SET found = max(0, found - ?) WHERE set_id = ? AND line_id = (SELECT line_id FROM set_contents
      WHERE set_id = ? ORDER BY line_id LIMIT 1 OFFSET ?)`,
  );
  const held = db.prepare(
    `INSERT INTO turn_steps (set_id, turn_id, from_step, step, because, done_at, entered_at)
      SELECT id, turn_id, 'inSterileStore', 'held', held_because, step_since, step_since FROM sets WHERE id = ?`,
  );
  const since = Date.parse(now) - 6 * 60 * MINUTE;
  ids.forEach((id, at) => {
    let mark = (at * 37) % 100;
    const step = AT.find(([, hundredths]) => {
      mark -= hundredths;
      return mark < 0;
    });
    const where = step?.[0] ?? 'inSterileStore';
    const because = where === 'held' ? 'loadDoubt' : null;
    put.run(
      where,
      because,
      iso(since + (at % 300) * MINUTE),
      where,
      iso(Date.parse(now) + 90 * DAY).slice(0, 10),
      id,
    );
    if (because !== null) held.run(id);
    if (at % 8 === 0)
      for (let piece = 0; piece < 1 + (at % 3); piece += 1)
        lacks.run(1 + (at % 2), id, id, (at + piece * 13) % 80);
  });
}

/** Every item in three heaps; the used-up ones of the record stay. */
function shelves(db: Sqlite.Database, now: string): void {
  const items = db.prepare<[], string>('SELECT id FROM items').pluck().all();
  const heap = db.prepare(
    `INSERT INTO stock (id, item_id, form, lot, use_by, quantity, owner, place_id, revision)
      VALUES (?, ?, ?, ?, ?, ?, 'ours', 'place_store', 1)`,
  );
  items.forEach((id, at) => {
    for (let nth = 0; nth < 3; nth += 1) {
      const useBy = iso(Date.parse(now) + ((at * 7 + nth * 300) % 900) * DAY - 20 * DAY).slice(0, 10);
      const form = nth === 0 && at % 5 === 0 ? 'pouch' : 'unsterile';
      heap.run(`stock_today-${at}-${nth}`, id, form, `T${at}-${nth}`, useBy, 1 + ((at + nth) % 9));
    }
  });
}

function casesToCome(db: Sqlite.Database, now: string): void {
  for (let theatre = 0; theatre < THEATRES; theatre += 1)
    db.prepare('INSERT INTO theatres (id, name) VALUES (?, ?)').run(
      `theatre_today-${theatre}`,
      `Theatre ${theatre + 10}`,
    );
  const constructs = demoKinds().flatMap(({ plan }) => plan.promises.map(({ construct }) => construct));
  const sets = db
    .prepare<[], string>(`SELECT id FROM sets WHERE step = 'inSterileStore' ORDER BY id`)
    .pluck()
    .all();
  const booked = db.prepare(
    `INSERT INTO cases (id, reference, theatre_id, case_date, starts_at, ends_at, region, limb, surgeon_id, urgency, revision)
      VALUES (?, ?, ?, ?, ?, ?, ?, 'left', 'person_s0', 'booked', 1)`,
  );
  const plan = db.prepare(
    `INSERT INTO plans (id, case_id, version, status, body, written_by, written_at, confirmed_by, confirmed_at, revision)
      VALUES (?, ?, 1, 'confirmed', ?, 'person_s0', ?, 'person_s0', ?, 1)`,
  );
  const promise = db.prepare(
    `INSERT INTO set_promises (id, set_id, case_id, from_at, until_at, chosen_by) VALUES (?, ?, ?, ?, ?, 'planning')`,
  );
  const morning = Date.parse(`${now.slice(0, 10)}T08:00:00.000Z`);
  for (let day = 0; day < DAYS; day += 1)
    for (let nth = 0; nth < CASES_A_DAY; nth += 1) {
      const number = day * CASES_A_DAY + nth;
      const construct = constructs[number % constructs.length];
      if (!construct) throw new Error('the demo promises constructs');
      const startsAt = morning + (day + 1) * DAY + Math.floor(nth / THEATRES) * 150 * MINUTE;
      const id = `case_today-${number}`;
      booked.run(
        id,
        `LM-TD-${number.toString(36).toUpperCase().padStart(4, '0')}`,
        `theatre_today-${nth % THEATRES}`,
        iso(startsAt).slice(0, 10),
        iso(startsAt),
        iso(startsAt + 120 * MINUTE),
        construct.region,
      );
      plan.run(`plan_today-${number}`, id, made(JSON.stringify({ ...construct, limb: 'left' })), now, now);
      if (day >= PROMISED_DAYS) continue;
      for (let set = 0; set < 3; set += 1) {
        const setId = sets[(number * 3 + set) * 7];
        if (setId === undefined) continue;
        promise.run(
          `promise_today-${number}-${set}`,
          setId,
          id,
          iso(startsAt - 60 * MINUTE),
          iso(startsAt + 480 * MINUTE),
        );
      }
    }
}
