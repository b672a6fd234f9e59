import { slotBounds } from '@/lib/trace/slotBounds';
import { traceWords } from '@/lib/wording/trace';
import type { Answer } from '../calculation';
import type { TraceInput, TraceOutput } from './schema';

/** What each case may have had of one lot from a slot in which lots mix (calculations.md §11). */
export function trace({ lot, firstHereAtMs, events, now }: TraceInput): Answer<TraceOutput> {
  const { outcomes: _, ...found } = slotBounds({ events, now }, { lot, firstHereAtMs });
  const answer: TraceOutput = {
    ...found,
    destinations: found.destinations.map(({ why, isBeside: _beside, lastAtMs: _at, ...one }) => ({
      ...one,
      reasons: why.map((reason) => traceWords.why(reason, lot)),
    })),
    contradiction: found.contradiction && traceWords.contradiction(found.contradiction),
  };
  return { outcome: 'answered', answer, working: traceWords.working(answer, lot) };
}
