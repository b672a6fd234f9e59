import type { Tone } from '@/app/_ui/tone';
import type { FindingGroup } from '@/lib/plans/planFinding';

export const GROUP_TONES: Record<FindingGroup, Tone> = {
  stop: 'stop',
  caution: 'attention',
  remark: 'neutral',
  notEstablished: 'unknown',
  note: 'neutral',
};
