import { eq } from 'drizzle-orm';
import { parseSetting, type SettingKey, type SettingValue } from '@/lib/settings/local';
import type { Queries } from '../client';
import { settings } from '../schema';

/** One local setting, with its defaults where the hospital has set none. Inside or outside a write. */
export async function readSetting<K extends SettingKey>(read: Queries, key: K): Promise<SettingValue<K>> {
  const [row] = await read.select().from(settings).where(eq(settings.key, key));
  return parseSetting(key, row?.value);
}
