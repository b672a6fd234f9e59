import { expect, it } from 'vitest';
import { highsSolver } from '@/app/_server/solver/highs';
import { setTurnaroundInput } from '@/lib/calculations/setTurnaround/schema';
import { setTurnaround } from '@/lib/calculations/setTurnaround/setTurnaround';
import { itemId } from '@/lib/identity/ids';
import type { PlanningFacts } from '@/lib/theatre/planning/facts';
import { riskLines } from '@/lib/theatre/planning/risk';
import { turnaroundInput } from '@/lib/theatre/planning/turnaroundInput';
import { besidesWords, boardWords, marginWords, neededWords } from '@/lib/wording/at-risk';
import { caseStandingWords } from '@/lib/wording/case-standing';
import { caseOf, factsOf, NOW, setOf } from './facts';

async function linesOf(facts: PlanningFacts) {
  const input = turnaroundInput(facts);
  if (!input) return riskLines(facts, null);
  const said = await setTurnaround(setTurnaroundInput.parse({ ...input, repairsFor: [] }), {
    solver: highsSolver,
  });
  return riskLines(facts, said.outcome === 'answered' ? said.answer : said.known);
}
const at = (time: string, day = '14') => `2026-01-${day}T${time}:00.000Z`;
const called = { now: NOW, pouch: (id: string) => id, item: (id: string) => id.replace('item_', '') };

it('the worst come first, then the most urgent, then the soonest needed', async () => {
  const lines = await linesOf(
    factsOf(
      [
        caseOf('READY', at('09:00'), { urgency: 'now', by: ['A-01'] }),
        caseOf('LATE', at('16:00'), { by: ['B-01'] }),
        caseOf('DRAFT', at('10:00'), { confirmed: false, by: ['C-01'] }),
        caseOf('SHORT', at('15:00'), { by: 'short' }),
        caseOf('NONE', at('14:00'), { urgency: 'today', by: null }),
        caseOf('SOONER', at('14:30'), { by: 'short' }),
      ],
      [setOf('A-01'), setOf('B-01', 60, 90), setOf('C-01')],
    ),
  );
  expect(lines.map(({ case: { reference }, level }) => [reference, level])).toEqual([
    ['NONE', 'stops'],
    ['SOONER', 'stops'],
    ['SHORT', 'stops'],
    ['DRAFT', 'notSure'],
    ['LATE', 'notSure'],
    ['READY', 'fine'],
  ]);
});

it('says when a set is needed, when it is there, and what is left between the two', async () => {
  const [line] = await linesOf(
    factsOf([caseOf('ONE', at('10:00'), { by: ['A-01'] })], [setOf('A-01', 60, 100)]),
  );
  // needed at 09:00, there nine times in ten at 08:10
  expect(line).toMatchObject({
    needBy: at('09:00'),
    time: { kind: 'coming', readyAt: at('08:10'), marginMinutes: 50, tight: false },
  });
  expect(line && neededWords(line.needBy, NOW)).toBe('needed by 09:00');
  expect(line && marginWords(line.time)).toBe('50 min to spare');
  const [tight] = await linesOf(
    factsOf([caseOf('ONE', at('10:00'), { by: ['A-01'] })], [setOf('A-01', 60, 130)]),
  );
  expect(tight && marginWords(tight.time)).toBe('20 min to spare, which is tight');
  const [late] = await linesOf(
    factsOf([caseOf('ONE', at('10:00'), { by: ['A-01'] })], [setOf('A-01', 60, 175)]),
  );
  // there at 09:25
  expect(late?.time).toEqual({ kind: 'misses', slipMinutes: 25 });
});

it('what nobody knows is said to be unknown', async () => {
  const lines = await linesOf(
    factsOf(
      [caseOf('ONE', at('10:00'), { by: ['A-01'] })],
      [setOf('A-01', null)],
      [{ case: 'ONE', set: 'A-01' }],
    ),
  );
  const [line] = lines;
  expect(line).toMatchObject({ level: 'stops', time: { kind: 'unknown' } });
  expect(line?.givenUp).toEqual([{ set: 'A-01', because: 'readyUnknown' }]);
  expect(line && besidesWords(line)).toEqual([
    'A-01 is promised to it, but nobody can say when it is ready.',
  ]);
  expect(line && marginWords(line.time)).toBe('nobody can say when it is ready');
});

it('names the case that has the set, and the sets that are not promised yet', async () => {
  const facts = factsOf(
    [
      caseOf('FIRST', at('09:00'), { by: ['A-01'] }),
      caseOf('NEXT', at('12:00'), { by: ['A-01'], theatre: '2' }),
    ],
    [setOf('A-01')],
  );
  const lines = await linesOf(facts);
  const [next, first] = lines;
  expect(next?.case.reference).toBe('NEXT');
  const words = next && caseStandingWords(next.standing, { ...called, confirmed: true });
  expect(words).toMatchObject({ word: 'No set free' });
  // its two hours end at 11:00, and the turn takes five nine times in ten
  expect(words?.sentence).toContain('A-01 is with FIRST until 16:00');
  expect(first?.notPromised).toEqual(['A-01']);
  expect(first && besidesWords(first).join()).toContain('A-01 is not promised to it yet');
});

it('says what it is short of by name and number, and which sets hold it out of reach', () => {
  const [screw, bit, other] = ['screw', 'bit', 'longer-bit'].map((name) => itemId.parse(`item_${name}`));
  if (!screw || !bit || !other) throw new Error('ids');
  const short = (missing: Parameters<typeof caseStandingWords>[0]) =>
    caseStandingWords(missing, { ...called, confirmed: true }).sentence;
  expect(
    short({
      kind: 'shortOf',
      missing: [
        { kind: 'pieces', pieces: 2, anyOf: [screw], asked: screw },
        {
          kind: 'chain',
          anyOf: [[{ itemId: bit, pieces: 1 }], [{ itemId: other, pieces: 1 }]],
          slots: ['pilotBit'],
        },
      ],
      outOfReach: ['A-07'],
    }),
  ).toBe(
    'Short of 2 × screw; 1 × bit or 1 × longer-bit. A-07 holds some of it, but can’t come round in time: held, past use-by, or let go for one other case.',
  );
  expect(
    short({
      kind: 'shortOf',
      missing: [
        { kind: 'pieces', pieces: 1, anyOf: [], asked: screw },
        { kind: 'chain', anyOf: [], slots: ['driver'] },
      ],
      outOfReach: [],
    }),
  ).toBe(
    'Short of 1 × screw, for which nothing current serves; driver, which nothing in the catalogue makes up.',
  );
});

it('counts the board in words', () => {
  expect(boardWords(0, 0, 0)).toBe('No case to come.');
  expect(boardWords(2, 1, 9)).toBe('Two cases cannot go as they stand, one is not sure, nine are ready.');
  expect(boardWords(1, 0, 0)).toBe('One case cannot go as it stands, none is not sure, none is ready.');
  expect(boardWords(0, 2, 1)).toBe('No case is stopped, two are not sure, one is ready.');
  expect(boardWords(0, 0, 1)).toBe('The one case is ready.');
  expect(boardWords(0, 0, 4)).toBe('All four are ready.');
});
