import type { Tone } from '@/app/_ui/tone';
import type { UsageOrderState } from '@/lib/consignment/state';

export const USAGE_ORDER_TONES: Record<UsageOrderState, Tone> = {
  made: 'attention',
  approved: 'attention',
  sent: 'good',
  withdrawn: 'neutral',
};
