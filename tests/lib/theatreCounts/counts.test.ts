import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TheatreEntry } from '@/lib/theatreCounts/act';
import { closingProblems } from '@/lib/theatreCounts/closing';
import { unaccounted } from '@/lib/theatreCounts/question';
import { type CountSubject, differencesOf, reckon, type SheetLine } from '@/lib/theatreCounts/reckon';
import { theatreStateOf, thingKey } from '@/lib/theatreCounts/state';

const line = (setId: string, lineId: string, recorded: number | null): SheetLine => ({
  setId,
  lineId,
  itemId: `item_${lineId}`,
  name: lineId,
  recorded,
});
const LINES = [
  line('set_a', 'line_bit', 2),
  line('set_a', 'line_screw', 6),
  line('set_b', 'line_driver', null),
];
const thing = (setId: string, lineId: string) => ({ kind: 'line', setId, lineId }) as never;

let made = 0;
const said = (act: TheatreEntry['act'], at = '2026-01-14T09:00:00.000Z'): TheatreEntry => {
  made += 1;
  return {
    id: `entry_${made}`,
    act,
    doneAt: at.replace('00.000', `${String(made % 60).padStart(2, '0')}.000`),
  };
};
const counted = (setId: string, lineId: string, pieces: number) =>
  said({ kind: 'counted', thing: thing(setId, lineId), pieces });

const subject = (more: Partial<CountSubject> = {}): CountSubject => ({
  moment: 'first',
  lines: LINES,
  first: null,
  ...more,
});
const codeOf = (id: string) => id;

describe('a count in theatre', () => {
  it('is held against what the set was packed with, and says nothing where that is not known', () => {
    const state = theatreStateOf([
      counted('set_a', 'line_bit', 1),
      counted('set_a', 'line_screw', 6),
      counted('set_b', 'line_driver', 3),
    ]);
    const reckoned = reckon(subject(), state);
    expect(reckoned.map(({ expected, counted: here }) => [expected, here])).toEqual([
      [2, 1],
      [6, 6],
      [null, 3],
    ]);
    expect(differencesOf(reckoned)).toMatchObject([{ lineId: 'line_bit', expected: 2, counted: 1 }]);
  });

  it('is at the end held against the first, with what came to the table and without what is implanted or thrown away', () => {
    const first = theatreStateOf([
      counted('set_a', 'line_bit', 2),
      counted('set_a', 'line_screw', 6),
      counted('set_b', 'line_driver', 3),
      said({ kind: 'added', key: 'swabs', itemId: null, name: 'Swabs', pieces: 10 }),
    ]);
    const state = theatreStateOf([
      counted('set_a', 'line_bit', 2),
      counted('set_a', 'line_screw', 2),
      said({ kind: 'implanted', thing: thing('set_a', 'line_screw'), pieces: 3 }),
      said({ kind: 'discarded', thing: thing('set_a', 'line_screw'), pieces: 1 }),
      counted('set_b', 'line_driver', 3),
      said({ kind: 'added', key: 'swabs', itemId: null, name: 'Swabs', pieces: 5 }),
      said({ kind: 'counted', thing: { kind: 'added', key: 'swabs' }, pieces: 14 }),
    ]);
    expect(differencesOf(reckon(subject({ moment: 'final', first }), state))).toMatchObject([
      { name: 'Swabs', expected: 15, counted: 14 },
    ]);
  });

  it('is closed only when every open set is counted whole, all problems at once', () => {
    const state = theatreStateOf([
      counted('set_a', 'line_bit', 2),
      said({ kind: 'notOpened', setId: 'set_b' as never, so: true }),
    ]);
    expect(closingProblems(subject(), state, codeOf).map(({ code }) => code)).toEqual(['not-counted']);
    const first = theatreStateOf([counted('set_b', 'line_driver', 1)]);
    const final = theatreStateOf([
      said({ kind: 'notOpened', setId: 'set_b' as never, so: true }),
      said({ kind: 'implanted', thing: thing('set_a', 'line_screw'), pieces: 9 }),
    ]);
    expect(
      closingProblems(subject({ moment: 'final', first }), final, codeOf).map(({ code, path }) => [
        code,
        path[1],
      ]),
    ).toEqual([
      ['not-counted', 'set_a'],
      ['counted-first', 'set_b'],
      ['more-than-there', thingKey(thing('set_a', 'line_screw'))],
    ]);
  });

  const entry = fc
    .record({
      id: fc.integer({ min: 1, max: 8 }),
      second: fc.integer({ min: 0, max: 59 }),
      lineId: fc.constantFrom('line_bit', 'line_screw'),
      pieces: fc.nat(9),
    })
    .map(
      ({ id, second, lineId, pieces }): TheatreEntry => ({
        id: `entry_${id}-${lineId}-${pieces}-${second}`,
        act: { kind: 'counted', thing: thing('set_a', lineId), pieces },
        doneAt: `2026-01-14T09:00:${String(second).padStart(2, '0')}.000Z`,
      }),
    );

  it('comes to the same in whatever order its entries arrive, and however often', () => {
    fc.assert(
      fc.property(fc.array(entry, { maxLength: 12 }), fc.nat(), (entries, seed) => {
        const shuffled = [...entries, ...entries.slice(0, 3)].sort(
          (a, b) => ((a.id.length * 7 + seed) % 5) - ((b.id.length * 7 + seed) % 5),
        );
        expect([...theatreStateOf(shuffled).counted].sort()).toEqual(
          [...theatreStateOf(entries).counted].sort(),
        );
      }),
    );
  });

  it('leaves as a question exactly what neither lies there nor is said to be gone', () => {
    fc.assert(
      fc.property(fc.nat(8), fc.nat(4), fc.nat(4), fc.nat(8), (before, implanted, discarded, here) => {
        const lines = [line('set_a', 'line_screw', before)];
        const state = theatreStateOf([
          counted('set_a', 'line_screw', here),
          said({ kind: 'implanted', thing: thing('set_a', 'line_screw'), pieces: implanted }),
          said({ kind: 'discarded', thing: thing('set_a', 'line_screw'), pieces: discarded }),
        ]);
        const given = subject({ moment: 'final', lines });
        if (closingProblems(given, state, codeOf).length > 0) {
          expect(implanted + discarded).toBeGreaterThan(before);
          return;
        }
        const differences = differencesOf(reckon(given, state));
        const told = differences.reduce((sum, one) => sum + one.expected - one.counted, 0);
        // pieces there before = here now + implanted + thrown away + what the question asks for
        expect(before).toBe(here + implanted + discarded + told);
      }),
    );
  });
});

describe('an open question', () => {
  it('is never settled by what is done about it: what is found is only taken off what is missing', () => {
    const question = { expected: 6, counted: 4 };
    expect(unaccounted(question, [])).toBe(2);
    expect(unaccounted(question, [{ kind: 'xRayAsked', pieces: null }])).toBe(2);
    expect(unaccounted(question, [{ kind: 'found', pieces: 1 }])).toBe(1);
    expect(
      unaccounted(question, [
        { kind: 'found', pieces: 1 },
        { kind: 'discarded', pieces: 1 },
      ]),
    ).toBe(0);
    expect(unaccounted({ expected: 4, counted: 6 }, [])).toBe(2);
  });
});
