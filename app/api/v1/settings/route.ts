import { listOf } from '@/app/api/v1/_reading/list';
import { listSettings } from '@/db/queries/settings';
import { SETTING_KEYS } from '@/lib/settings/fields';

/** Every local setting, with its value and what it is where nobody has set it. */
export const GET = listOf('GET /api/v1/settings', {
  rows: ({ db }) => listSettings(db, SETTING_KEYS),
  keyOf: ({ key }) => [key],
});
