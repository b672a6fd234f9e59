import type { WorkingStep } from '@/lib/calculations/calculation';
import type { TraceOutput } from '@/lib/calculations/trace/schema';
import type { Contradiction } from '@/lib/trace/contradiction';
import type { Standing, Why } from '@/lib/trace/slotBounds';
import type { Bounds } from '@/lib/trace/slotFlow';
import type { Outcome } from '@/lib/trace/slotHistory';
import type { CalculationWords } from './calculations';
import { listWords } from './numbers';

export const traceDescription: CalculationWords = {
  title: 'Trace of a lot through a slot',
  question: 'Where lots mix in a slot and were not always read, which cases had pieces of one lot?',
  formula: [
    'Every piece that left came in before, and each piece came in once: a transport from arrivals to departures',
    'A departure whose lot was read takes pieces of that lot, or of unknown lot',
    'Least and most for a case = flow of least cost, where a piece of the lot that goes to it costs 1, or earns 1',
    'Confirmed: the least is above nothing. Excluded: the most is nothing. Possible: all between',
  ],
  assumptions: [
    'A lot that was read is right, and so is the order in which pieces came and went.',
    'Any piece in the slot may be the next that is taken; nobody is assumed to take the oldest first.',
    'A piece of unknown lot may be of any lot that was in the house when it came in.',
    'Where the records contradict themselves counting proves nothing: only lots read, and times, confirm or exclude.',
  ],
  sources: [
    { text: 'Conservation: what comes in goes out or is there. Arithmetic; no further source' },
    {
      text: 'Bounds by flow: computed alike by scipy 1.17.1 milp on examples, and by trying every way on small slots',
    },
  ],
};

export const TRACE_OUTCOME_WORDS: Record<Outcome, string> = {
  implanted: 'implanted',
  wasted: 'opened or dropped, not implanted',
  notFound: 'not found',
  setAside: 'set aside for repair',
  shelf: 'taken out of the slot',
  other: 'gone another way',
};

const pieces = (count: number) => `${count} ${count === 1 ? 'piece' : 'pieces'}`;

/** `1–3`; one figure where both are the same. */
export const boundsWord = ({ lo, hi }: Bounds) => (lo === hi ? String(lo) : `${lo}–${hi}`);

export const traceWords = {
  outOfOrder: 'Tell what came and went in the order in which it happened.',

  casesNote:
    'confirmed, possible and excluded, each with its reasons; not cases from before any of it lay in a slot, or after all of it had gone',

  /** `2 confirmed`, `at least 1 confirmed (1–3)`, `possible, 0–2`, `excluded`. */
  standing({ lo, hi }: Bounds): string {
    if (hi === 0) return 'excluded';
    if (lo === 0) return `possible, ${boundsWord({ lo, hi })}`;
    return lo === hi ? `${lo} confirmed` : `at least ${lo} confirmed (${boundsWord({ lo, hi })})`;
  },

  /** The same for a reader to whom the figures may not be shown. */
  standingSeen({ lo, hi, standing }: { lo: number | null; hi: number | null; standing: Standing }): string {
    return lo === null || hi === null ? `${standing}, pieces not shown` : traceWords.standing({ lo, hi });
  },

  why(why: Why, lot: string): string {
    switch (why.kind) {
      case 'read':
        return `Lot ${lot} was read on ${pieces(why.pieces)}.`;
      case 'otherRead':
        return `Another lot was read on ${pieces(why.pieces)}.`;
      case 'leftBefore':
        return `${pieces(why.pieces)} left before any of lot ${lot} can have been there.`;
      case 'othersTooFew':
        return why.others === 0
          ? `Nothing but lot ${lot} can have been left for ${pieces(why.pieces)} of it.`
          : `Of the ${pieces(why.pieces)} not read, at most ${why.others} can have been of other lots.`;
      case 'noneLeft':
        return `Counting leaves no piece of lot ${lot} for it: all of it is accounted for elsewhere.`;
      case 'noMoreOfIt':
        return `Of the ${pieces(why.unread)} not read, at most ${why.most} can have been of lot ${lot}.`;
      case 'mixed':
        return `Lots lay mixed in the slot, and the lot of ${pieces(why.unread)} was not read.`;
      case 'contradicted':
        return `The records of the slot contradict themselves, so nothing is proven by counting; the lot of ${pieces(why.unread)} was not read.`;
    }
  },

  contradiction({ wentOut, cameIn, lots, untilMs }: Contradiction): string {
    const read = lots.filter((lot) => lot !== null);
    const which = lots.includes(null) || read.length === 0 ? '' : ` read as lot ${listWords(read)}`;
    const until =
      untilMs === null ? 'With what lies there now' : `By ${new Date(untilMs).toISOString().slice(0, 10)}`;
    return `The records contradict themselves. ${until}, ${pieces(wentOut)}${which} went out, and no more than ${cameIn} can have come in for them.`;
  },

  together({ lo, hi }: Bounds): string {
    if (hi === 0) return 'No case can have had any of it.';
    return lo === hi
      ? `Cases together exactly ${hi}.`
      : lo === 0
        ? `Cases together at most ${hi}.`
        : `Cases together ${lo} to ${hi}.`;
  },

  working(answer: TraceOutput, lot: string): WorkingStep[] {
    return [
      {
        label: 'Came in',
        expression: `lot ${lot}: ${answer.arrived.ofLot}; of unknown lot, that may be of it: ${answer.arrived.mayBe}`,
        value: pieces(answer.arrived.ofLot + answer.arrived.mayBe),
      },
      ...answer.destinations.map((one) => ({
        label: one.case ?? TRACE_OUTCOME_WORDS[one.outcome],
        expression: one.reasons.join(' '),
        value: traceWords.standing(one),
      })),
      { label: 'All cases', expression: traceWords.together(answer.cases), value: boundsWord(answer.cases) },
      {
        label: 'In the slot now',
        expression: `${pieces(answer.now.pieces)}, of the lot ${boundsWord(answer.now)}`,
        value: `hold ${answer.now.toHold}`,
      },
    ];
  },
};
