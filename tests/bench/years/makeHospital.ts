import Sqlite from 'better-sqlite3';
import { migrate } from '@/db/migrate';
import type { Size } from './size';
import { Writing } from './writing';

/**
 * Writes a hospital of that size into a new file at `path`, straight into the tables: every turn with its steps, pack and load,
 * every case with what was used, the journal of pieces, and a ledger whose chain holds. Indexes and triggers are set aside
 * meanwhile; what triggers would have kept is worked out at the end.
 */
export function makeHospital(path: string, size: Size, say: (line: string) => void = () => {}): void {
  migrate(path);
  const db = new Sqlite(path);
  for (const pragma of [
    'journal_mode = OFF',
    'synchronous = OFF',
    'foreign_keys = OFF',
    'cache_size = -400000',
    'temp_store = MEMORY',
  ])
    db.pragma(pragma);
  const aside = db
    .prepare<[], { type: string; name: string; sql: string }>(
      `SELECT type, name, sql FROM sqlite_schema WHERE sql IS NOT NULL AND (type = 'trigger' OR (type = 'index'
        AND tbl_name IN ('ledger', 'turn_steps', 'packs', 'loads', 'load_packs', 'case_picks', 'case_returns', 'piece_moves', 'slot_holdings', 'turns')))`,
    )
    .all();
  for (const { type, name } of aside) db.exec(`DROP ${type} "${name}"`);
  db.exec('BEGIN');
  const writing = new Writing(db, size);
  say('catalogue, configurations and sets are there');
  writing.years(say);
  db.exec('COMMIT');
  for (const { type, sql, name } of aside) {
    if (type !== 'index') continue;
    db.exec(sql);
    say(`index ${name}`);
  }
  keptByTriggers(db);
  for (const { type, sql } of aside) if (type === 'trigger') db.exec(sql);
  db.exec('ANALYZE');
  db.pragma('journal_mode = WAL');
  db.close();
}

/** What triggers keep, worked out at once; in the order of its key, as one sort is cheaper than millions of searches. */
function keptByTriggers(db: Sqlite.Database): void {
  db.exec(`INSERT INTO ledger_things SELECT DISTINCT thing, seq FROM ledger_names ORDER BY thing, seq;
    INSERT INTO usage_months (item_id, month, implanted, wasted, not_found, refilled)
      SELECT item_id, substr(done_on, 1, 7), sum(iif(act = 'implanted', quantity, 0)), sum(iif(act = 'wasted', quantity, 0)),
        sum(iif(act = 'notFound', quantity, 0)), sum(iif(act = 'refilled', quantity, 0))
      FROM piece_moves WHERE act IN ('implanted', 'wasted', 'notFound', 'refilled') GROUP BY 1, 2;
    INSERT INTO slot_holdings (set_id, line_id, quantity) SELECT set_id, line_id, found FROM set_contents;
    INSERT INTO set_completeness (set_id, lines, expected, found, surplus, unsound, uncounted, musts, below, short_1, short_2, short_3,
      short_4) SELECT * FROM set_completeness_worked_out;
    INSERT INTO stage_ends (configuration_id, stage, seq, began_at, ended_at) SELECT * FROM stage_ends_worked_out;
    INSERT INTO shelf_months (item_id, month, units) SELECT item_id, month, units FROM shelf_months_worked_out;
    INSERT INTO set_cycles (set_id, cycles) SELECT set_id, cycles FROM set_cycles_worked_out;`);
  // slots whose record says more than a count would be among `slot_knots`: here no lot is read as it leaves, and all is entered in order
}
