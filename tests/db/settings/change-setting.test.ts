import { beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { findLedgerBreak } from '@/db/ledger';
import { changeSetting } from '@/db/operations/settings/change-setting';
import { loadFitEngine } from '@/db/queries/fitRules';
import { listPeople, type Person } from '@/db/queries/people';
import { loadSetSettings } from '@/db/queries/sets';
import { listSettings, readSetting, settingHistory } from '@/db/queries/settings';
import { ledger, settings } from '@/db/schema';
import { plainDate } from '@/lib/quantities/plainDate';
import { demoDatabase } from '../../setup/database';

const now = '2026-01-14T08:00:00.000Z';
const today = plainDate.parse('2026-01-14');
const because = 'our trolleys carry no more';
const lighter = { massLimitsGrams: '6; 9', warnAtPercent: '85' };
let db: Database;
let manager: Person;
let technician: Person;

beforeEach(async () => {
  db = await demoDatabase();
  const people = await listPeople(db);
  const of = (role: Person['role']) => people.find((one) => one.role === role);
  const [one, other] = [of('theatreManager'), of('technician')];
  if (!one || !other) throw new Error('the demo has both');
  [manager, technician] = [one, other];
});

const change = (more: Partial<Parameters<typeof changeSetting<'sets'>>[0]> = {}) =>
  changeSetting({ db, now, person: manager, key: 'sets', baseRevision: 0, entry: lighter, because, ...more });

describe('changing a local setting', () => {
  it('keeps the old value, the new one, who and why, and is read at once by what depends on it', async () => {
    const before = await readSetting(db.read, 'sets');
    expect(await change()).toEqual({ ok: true, value: { revision: 1 } });
    expect(await loadSetSettings(db)).toEqual({ massLimitsGrams: [6000, 9000], warnAtPercent: 85 });
    const [entry] = await settingHistory(db, 'sets');
    expect(entry).toMatchObject({
      person: manager.name,
      because,
      before,
      after: { massLimitsGrams: [6000, 9000], warnAtPercent: 85 },
    });
    const [listed] = await listSettings(db, ['sets']);
    expect(listed).toMatchObject({ revision: 1, changedBy: manager.name, changedAt: now, defaults: before });
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('is refused to roles that may not, and without a reason, with everything else that is wrong', async () => {
    expect(await change({ person: technician })).toMatchObject({ refusal: { because: 'notPermitted' } });
    const wrong = await change({ entry: { massLimitsGrams: 'none' }, because: ' so ' });
    expect(wrong.ok ? [] : wrong.refusal.problems.map(({ path }) => path.join('.'))).toEqual([
      'massLimitsGrams',
      'warnAtPercent',
      'because',
    ]);
    expect((await db.read.select().from(settings)).map(({ key }) => key)).not.toContain('sets');
    const acts = (await db.read.select().from(ledger)).map(({ action }) => action);
    expect(acts).not.toContain('change-setting');
  });

  it('overwrites nobody: the second of two is refused with the value as it stands', async () => {
    await change();
    const late = await change({ entry: { massLimitsGrams: '8', warnAtPercent: '90' } });
    expect(late).toMatchObject({
      ok: false,
      refusal: { because: 'conflict', current: { revision: 1, value: { massLimitsGrams: [6000, 9000] } } },
    });
    expect(await change({ baseRevision: 1 })).toMatchObject({ refusal: { because: 'frozen' } });
  });

  it('is noticed by the fit engine that was kept', async () => {
    const before = await loadFitEngine(db, today);
    const entry = { sleeveToleranceUm: '0.15' };
    expect(
      (await changeSetting({ db, now, person: manager, key: 'fit', baseRevision: 0, entry, because })).ok,
    ).toBe(true);
    const after = await loadFitEngine(db, today);
    expect([before.settings.sleeveToleranceUm, after.settings.sleeveToleranceUm]).toEqual([200, 150]);
  });
});
