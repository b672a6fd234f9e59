import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { oneOf } from '@/app/api/v1/_reading/one';
import { changeSetting } from '@/db/operations/settings/change-setting';
import { listSettings, settingHistory } from '@/db/queries/settings';
import { SETTING_KEYS } from '@/lib/settings/fields';

const members = z.strictObject({
  baseRevision: z.number('the revision you saw').int().min(0),
  entry: z.unknown(),
  because: z.string().max(2000),
});

/** Its fields by name, as the screen sends them; each is read as its own setting asks. */
const settingEntry = z.record(z.string(), z.union([z.string(), z.boolean(), z.array(z.string())]));

/** Changes one local setting, whole. */
export const PUT = endpoint(
  'PUT /api/v1/settings/[key]',
  { body: members.extend({ entry: settingEntry }) },
  async ({ db, person, request, params }) => {
    const key = SETTING_KEYS.find((one) => one === params.key);
    if (!key) return noSuch('setting');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(await changeSetting({ db, now: now(), person, key, ...body.value }));
  },
);

/** One local setting with every change of it. */
export const GET = oneOf('GET /api/v1/settings/[key]', { what: 'setting' }, async ({ db, params }) => {
  const key = SETTING_KEYS.find((one) => one === params.key);
  if (key === undefined) return null;
  const [[setting], history] = await Promise.all([listSettings(db, [key]), settingHistory(db, key)]);
  return setting ? { ...setting, history } : null;
});
