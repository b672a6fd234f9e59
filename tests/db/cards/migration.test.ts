import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { expect, it, onTestFinished } from 'vitest';
import { migrate } from '@/db/migrate';

const MIGRATION = '0012-feeds-and-cards.sql';

it('every start that was saved before becomes its own first version, and none is lost', () => {
  const folder = mkdtempSync(join(tmpdir(), 'kitwright-migration-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const [migrations, path] = [join(folder, 'migrations'), join(folder, 'old.sqlite')];
  // as it was before: everything that comes earlier by name
  cpSync('db/migrations', migrations, {
    recursive: true,
    filter: (source) => !source.endsWith('.sql') || (source.split('/').at(-1) ?? '') < MIGRATION,
  });
  migrate(path, migrations);
  const before = new Sqlite(path);
  before.exec(`
    INSERT INTO people (id, name, role) VALUES ('person_a', 'A', 'surgeon'), ('person_b', 'B', 'surgeon');
    INSERT INTO plan_starts (id, person_id, name, body, saved_at) VALUES
      ('start_1', 'person_a', 'Ankle', '{"b":1, "a":2}', '2026-01-01T00:00:00.000Z'),
      ('start_2', 'person_b', 'Ankle', '{}', '2026-01-02T00:00:00.000Z');`);
  before.close();
  cpSync(join('db/migrations', MIGRATION), join(migrations, MIGRATION));
  expect(migrate(path, migrations).applied).toEqual([MIGRATION]);
  const after = new Sqlite(path);
  onTestFinished(() => {
    after.close();
  });
  const versions = after
    .prepare('SELECT start_id, version, body, saved_by, saved_at FROM plan_start_versions ORDER BY start_id')
    .all();
  // the very text of each is kept
  expect(versions).toEqual([
    {
      start_id: 'start_1',
      version: 1,
      body: '{"b":1, "a":2}',
      saved_by: 'person_a',
      saved_at: '2026-01-01T00:00:00.000Z',
    },
    {
      start_id: 'start_2',
      version: 1,
      body: '{}',
      saved_by: 'person_b',
      saved_at: '2026-01-02T00:00:00.000Z',
    },
  ]);
  expect(after.prepare('SELECT count(*) AS n, sum(version) AS v FROM plan_starts').get()).toEqual({
    n: 2,
    v: 2,
  });
});
