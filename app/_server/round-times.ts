import 'server-only';
import type { RoundTimes } from '@/db/operations/theatre/promises';
import { readSetting } from '@/db/queries/settings';
import { loadStageTimes } from '@/db/queries/turns/stageTimes';
import type { Reading } from '@/db/reader';
import { STAGES } from '@/lib/turns/stageTimes';

/** How long before and after a case its sets are spoken for: the hospital's lead, and what turns of each kind took. */
export async function roundTimes(db: Reading): Promise<RoundTimes> {
  const [timeOf, { leadMinutes }] = await Promise.all([loadStageTimes(db), readSetting(db.read, 'stages')]);
  return {
    leadMinutes,
    roundMinutes: (configurationId) =>
      STAGES.reduce((sum, stage) => sum + timeOf(configurationId, stage).minutes, 0),
  };
}
