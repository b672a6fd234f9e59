import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import type { Item } from '@/lib/catalogue/item';
import { ITEM_STATUS_WORDS } from '@/lib/wording/catalogue';

const TONES: Record<Item['status'], Tone> = { current: 'good', withdrawn: 'attention', recalled: 'stop' };

/** How an item stands in the catalogue, in word, shape and colour. */
export function itemStatusTag(status: string) {
  const known = status as Item['status'];
  return (
    <Status tone={TONES[known]} look="plain">
      {ITEM_STATUS_WORDS[known]}
    </Status>
  );
}
