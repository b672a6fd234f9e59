import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { reasonCodes } from '@/db/schema';
import type { ReasonKind } from '@/lib/reasons/reason';

/** Reasons of the demo hospital: invented, neutral, and none of them a person's. */
const REASONS: Record<ReasonKind, readonly [code: string, words: string, retired?: 'retired'][]> = {
  waste: [
    ['W1', 'another length was needed'],
    ['W2', 'the plan changed at the table'],
    ['W3', 'fell or touched what is not sterile'],
    ['W4', 'the pack was damaged'],
    ['W5', 'opened by mistake'],
    ['W6', 'other, told in the note', 'retired'],
  ],
  delay: [
    ['D1', 'a set was not here in time'],
    ['D2', 'a piece had to be fetched'],
    ['D3', 'a piece was not found'],
    ['D4', 'a count was repeated'],
    ['D5', 'the theatre was not free'],
  ],
};

const idOf = (code: string): string => `reason_demo-${code.toLowerCase()}`;

/** The list as the demo hospital keeps it, one of it retired long ago. */
export async function insertReasons(write: Queries, retiredAt: string): Promise<void> {
  await insertMany(
    write,
    reasonCodes,
    (['waste', 'delay'] as const).flatMap((kind) =>
      REASONS[kind].map(([code, words, retired], position) => ({
        id: idOf(code),
        kind,
        code,
        words,
        position,
        retiredAt: retired ? retiredAt : null,
        revision: retired ? 2 : 1,
      })),
    ),
  );
}

/** Which reason a move of the past would be given, by what the journal has of it. */
export function reasonOfPast(journal: string | null): string {
  switch (journal) {
    case 'otherLength':
      return idOf('W1');
    case 'dropped':
      return idOf('W3');
    case 'packDamaged':
      return idOf('W4');
    default:
      return idOf('W5');
  }
}

export const DELAY_REASONS = REASONS.delay.map(([code]) => idOf(code));
