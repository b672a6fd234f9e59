import { and, asc, eq, sql } from 'drizzle-orm';
import { parseSetting, type SettingKey, type SettingValue } from '@/lib/settings/local';
import type { Queries } from '../client';
import { prepared } from '../prepared';
import { mayRead, type Reading } from '../reader';
import { ledger, people, settings } from '../schema';

const settingOfKey = prepared((read) =>
  read
    .select({ value: settings.value })
    .from(settings)
    .where(eq(settings.key, sql.placeholder('key')))
    .prepare(),
);

/** One local setting, with its defaults where the hospital has set none. Inside or outside a write. */
export async function readSetting<K extends SettingKey>(read: Queries, key: K): Promise<SettingValue<K>> {
  return parseSetting(key, settingOfKey(read).get({ key })?.value);
}

/** A setting as it stands, for the screen: `revision` 0 and no owner where the hospital has set nothing. */
export interface SettingOnFile {
  key: SettingKey;
  value: Record<string, unknown>;
  defaults: Record<string, unknown>;
  revision: number;
  changedBy: string | null;
  changedAt: string | null;
}

/** Every local setting, in the order of `keys`. */
export async function listSettings(db: Reading, keys: readonly SettingKey[]): Promise<SettingOnFile[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({ setting: settings, by: people.name })
    .from(settings)
    .leftJoin(people, eq(people.id, settings.changedBy));
  return keys.map((key) => {
    const row = rows.find(({ setting }) => setting.key === key);
    return {
      key,
      value: parseSetting(key, row?.setting.value),
      defaults: parseSetting(key, undefined),
      revision: row?.setting.revision ?? 0,
      changedBy: row?.by ?? null,
      changedAt: row?.setting.changedAt ?? null,
    };
  });
}

/** One change of a setting, as the ledger has it. */
export interface SettingChange {
  seq: number;
  doneAt: string;
  person: string | null;
  because: string;
  before: Record<string, unknown>;
  after: Record<string, unknown>;
}

/** Every change of one setting, oldest first. */
export async function settingHistory(db: Reading, key: SettingKey): Promise<SettingChange[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({ seq: ledger.seq, doneAt: ledger.doneAt, person: people.name, detail: ledger.detail })
    .from(ledger)
    .leftJoin(people, eq(people.id, ledger.personId))
    .where(
      and(eq(ledger.subjectKind, 'setting'), eq(ledger.subjectId, key), eq(ledger.action, 'change-setting')),
    )
    .orderBy(asc(ledger.seq));
  return rows.map(({ detail, ...row }) => {
    const { because, before, after } = detail as Pick<SettingChange, 'because' | 'before' | 'after'>;
    return { ...row, because, before, after };
  });
}
