import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { expect, it, onTestFinished } from 'vitest';
import { migrate } from '@/db/migrate';

/** A database as it was before this migration, with what `fill` puts into it; answers its path. */
function before(fill: (db: Sqlite.Database) => void): string {
  const folder = mkdtempSync(join(tmpdir(), 'case-life-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const earlier = join(folder, 'migrations');
  cpSync(join(process.cwd(), 'db', 'migrations'), earlier, { recursive: true });
  for (const name of readdirSync(earlier)) if (name >= '0010') rmSync(join(earlier, name));
  const path = join(folder, 'hospital.sqlite');
  migrate(path, earlier);
  const db = new Sqlite(path);
  db.pragma('foreign_keys = ON');
  fill(db);
  db.close();
  return path;
}

it('keeps every scan, reply and order when the table of scans is made anew', () => {
  const path = before((db) => {
    db.exec("INSERT INTO people (id, name, role) VALUES ('person_a', 'A', 'technician')");
    const scan = db.prepare(
      `INSERT INTO scans (id, text, how, separators, person_id, context_kind, context_id, verdict, meaning, sentence, before_id,
         done_at, entered_at, late) VALUES (?, ?, 'typed', 'mayBeLost', 'person_a', ?, ?, 'unknown', '{}', 'x', ?, 'd', 'e', 0)`,
    );
    scan.run('scan_1', 'one', 'none', null, null);
    scan.run('scan_2', 'two', 'set', 'set_x', 'scan_1');
    scan.run('scan_3', 'three', 'bench', 'count_x', null);
    db.exec(
      "INSERT INTO scan_replies (scan_id, reply, person_id, replied_at) VALUES ('scan_2', 'same', 'person_a', 'r')",
    );
  });
  const rows = (db: Sqlite.Database) => ({
    scans: db.prepare('SELECT * FROM scans ORDER BY seq').all(),
    replies: db.prepare('SELECT * FROM scan_replies').all(),
  });
  const old = new Sqlite(path);
  const kept = rows(old);
  old.close();
  expect(kept.scans).toHaveLength(3);
  migrate(path);
  const db = new Sqlite(path);
  onTestFinished(() => void db.close());
  expect(rows(db)).toEqual(kept);
  expect(db.pragma('foreign_key_check')).toEqual([]);
  // what made them safe before still does
  expect(() => db.exec("DELETE FROM scans WHERE id = 'scan_3'")).toThrow(/append-only/);
  expect(() => db.exec("UPDATE scans SET text = 'other' WHERE id = 'scan_3'")).toThrow(/append-only/);
  const put = (kind: string) =>
    db
      .prepare(
        `INSERT INTO scans (id, text, how, separators, person_id, context_kind, context_id, verdict, meaning, sentence, done_at,
           entered_at, late) VALUES (?, 't', 'typed', 'mayBeLost', 'person_a', ?, 'case_x', 'unknown', '{}', 'x', 'd', 'e', 0)`,
      )
      .run(`scan_${kind}`, kind);
  put('kit');
  put('kitCheck');
  expect(db.prepare('SELECT count(*) FROM scans').pluck().get()).toBe(5);
});
