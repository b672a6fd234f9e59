import type { WorkingStep } from '@/lib/calculations/calculation';
import type { LifeThing, ThingLife } from '@/lib/calculations/serviceLife/schema';
import type { CalculationWords } from './calculations';

export const serviceLifeDescription: CalculationWords = {
  title: 'Service life',
  question:
    'When do bits and marked pieces reach the uses or cycles stated for them, over the cases that are booked?',
  formula: [
    'One piece: due after the first booked case with uses so far + uses booked ≥ uses allowed, or the same of cycles; the sooner counts',
    'A slot of m unmarked pieces: some piece may be due once their uses together reach the limit L, and one must be once they reach m × (L − 1) + 1',
    'Where nobody knows which pieces of a slot were replaced: may be due by the most cycles, must be by the least',
  ],
  assumptions: [
    'A limit of ten allows ten: the piece is replaced after the tenth.',
    'A booked case uses and cycles the piece once, unless stated otherwise.',
    'One limit that is stated decides; where neither is, nothing is established.',
    'Wear is judged by eye at every inspection, whatever the count says.',
  ],
  sources: [
    { text: 'Limits: the maker’s instructions for use, as the catalogue states them' },
    { text: 'Pigeonhole principle, for slots of unmarked pieces' },
  ],
};

export const LIFE_STATE_WORDS: Record<ThingLife['state'], string> = {
  within: 'within its limits',
  replaceAfter: 'due within what is booked',
  mayBeDue: 'may be due',
  replaceNow: 'replace now',
  notEstablished: 'not established',
};

/** `1 → '1st'`, `12 → '12th'`, `22 → '22nd'`. */
export function ordinal(place: number): string {
  const tens = place % 100;
  if (tens >= 11 && tens <= 13) return `${place}th`;
  return `${place}${['th', 'st', 'nd', 'rd'][place % 10] ?? 'th'}`;
}

const BY: Record<'uses' | 'cycles', string> = { uses: 'uses', cycles: 'cycles' };

export const serviceLifeWords = {
  limitMissing: (thing: string) => `how many uses or cycles are allowed of ${thing}`,
  usesMissing: (thing: string) => `how many uses ${thing} has had`,
  cyclesMissing: (thing: string) => `how many cycles ${thing} has had`,
  mostBelowLeast: (thing: string) =>
    `“${thing}”: the most cycles lie below the least; correct one of the two.`,
  bookedTwice: (name: string, thing: string) =>
    `${name} is booked twice for “${thing}”: name each case once.`,
  sentence(facts: Omit<ThingLife, 'sentence'>, { booked }: LifeThing): string {
    const { state, mayAfter, mustAfter, by } = facts;
    const limit = by === null ? 'limit' : `limit of ${BY[by]}`;
    switch (state) {
      case 'replaceNow':
        return `The ${limit} is reached: replace it before the next case.`;
      case 'replaceAfter':
        return `Replace after the ${ordinal(mayAfter ?? 0)} of ${booked.length} booked: the ${limit} is reached then.`;
      case 'mayBeDue':
        return mayAfter === 0
          ? `One piece of this slot may have reached the ${limit}: look at each, or mark them.`
          : `One piece of this slot may reach the ${limit} after the ${ordinal(mayAfter ?? 0)} of ${booked.length} booked${
              mustAfter === null ? '' : `, and must by the ${ordinal(mustAfter)}`
            }: look at each, or mark them.`;
      case 'within':
        return booked.length === 0
          ? 'Within its limits.'
          : `Within its limits after all ${booked.length} booked.`;
      case 'notEstablished':
        return 'Not established: see what is missing.';
    }
  },
  working(
    { thing, uses, cycles, mostCycles, limitUses, limitCycles, booked, pieces }: LifeThing,
    life: ThingLife,
  ): WorkingStep {
    const of = (so: number | string | null, limit: number | null, word: string) =>
      `${so ?? 'not known'} of ${limit ?? 'not stated'} ${word}`;
    return {
      label: pieces === 1 ? thing : `${thing}, slot of ${pieces}`,
      expression: `${of(uses, limitUses, 'uses')}, ${of(mostCycles === null ? cycles : `${cycles}–${mostCycles}`, limitCycles, 'cycles')}, ${booked.length} booked`,
      value: LIFE_STATE_WORDS[life.state],
    };
  },
};
