import { STAGES } from '@/lib/turns/stageTimes';
import type { RoundTimes } from '../../operations/theatre/promises';
import type { Reading } from '../../reader';
import { readSetting } from '../settings';
import { loadStageTimes } from './stageTimes';

/** How long before and after a case its sets are spoken for: the hospital's lead, and what turns of each kind took. */
export async function roundTimes(db: Reading): Promise<RoundTimes> {
  const [timeOf, { leadMinutes }] = await Promise.all([loadStageTimes(db), readSetting(db.read, 'stages')]);
  return {
    leadMinutes,
    roundMinutes: (configurationId) =>
      STAGES.reduce((sum, stage) => sum + timeOf(configurationId, stage).minutes, 0),
  };
}
