import type { Tone } from '@/app/_ui/tone';

/** How an order stands, in a word. */
export function orderStands({
  state,
  here,
  ordered,
  late,
}: {
  state: 'open' | 'closed';
  here: number;
  ordered: number;
  late: boolean;
}): { tone: Tone; word: string } {
  if (state === 'closed')
    return here === ordered
      ? { tone: 'good', word: 'All came' }
      : { tone: 'neutral', word: 'Closed, not all came' };
  if (late) return { tone: 'attention', word: 'Late' };
  return here > 0 ? { tone: 'neutral', word: 'Part of it came' } : { tone: 'neutral', word: 'Ordered' };
}
