import { Status } from '@/app/_ui/status';
import type { ShelfLife } from '@/lib/stock/shelfLife';
import { USE_BY_WORDS } from '@/lib/wording/stock';

const TONES = { past: 'stop', soon: 'attention', good: 'good', none: 'neutral' } as const;

/** How a use-by stands today. */
export function LifeStatus({ life }: { life: ShelfLife }) {
  return (
    <Status tone={TONES[life]} look={life === 'past' || life === 'soon' ? 'tag' : 'plain'}>
      {USE_BY_WORDS[life]}
    </Status>
  );
}

/** An item's name, and that it is withdrawn or recalled where it is. */
export function ItemName({ name, status }: { name: string; status: 'current' | 'withdrawn' | 'recalled' }) {
  if (status === 'current') return name;
  return (
    <>
      {name} <Status tone="stop">{status}</Status>
    </>
  );
}
