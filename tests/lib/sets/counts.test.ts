import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CountEntry } from '@/lib/sets/count';
import { canBeCounted, checkCount, countEntry } from '@/lib/sets/count';
import {
  beginCount,
  type CountDraft,
  countFrom,
  differingLines,
  draftProblems,
  piecesFrom,
  progressOf,
  recountDiffering,
} from '@/lib/sets/countDraft';
import { turnStep } from '@/lib/sets/setState';
import { lineOf } from './fixtures';

const lines = [lineOf('a'), lineOf('b', { slot: 2 }), lineOf('c', { layer: 2 })];
const counted = (item: string, change: object = {}) => ({
  lineId: `line_${item}`,
  found: 1,
  unsound: 0,
  condition: 'sound',
  ...change,
});
const entryWith = (entered: object[]) =>
  ({ id: 'count_1', setId: 'set_x', baseRevision: 1, lines: entered, foreign: [] }) as unknown as CountEntry;

/** Expected answers follow the project's own rule: a layer is counted whole or not at all. */
const cases = [
  { why: 'one layer whole is a count', entered: [counted('a'), counted('b')], codes: [] },
  { why: 'other layers may be left', entered: [counted('c')], codes: [] },
  { why: 'a layer left half-way is no count of it', entered: [counted('a')], codes: ['not-counted'] },
  {
    why: 'a line counted twice has two answers',
    entered: [counted('c'), counted('c')],
    codes: ['duplicate'],
  },
  {
    why: 'a line of another set is none of these',
    entered: [counted('c'), counted('ghost')],
    codes: ['unknown-line'],
  },
  {
    why: 'pieces put aside have something wrong with them',
    entered: [counted('c', { unsound: 1 })],
    codes: ['condition-needed'],
  },
  {
    why: 'a condition without pieces is about nothing',
    entered: [counted('c', { condition: 'bent' })],
    codes: ['pieces-needed'],
  },
];

describe('checkCount', () => {
  it.each(cases)('$why', ({ entered, codes }) => {
    expect(checkCount(entryWith(entered), lines).map(({ code }) => code)).toEqual(codes);
  });

  it('refuses what is no number of pieces', () => {
    for (const found of [-1, 1.5, 1000, '2', null])
      expect(countEntry.safeParse(entryWith([counted('c', { found })])).success, String(found)).toBe(false);
  });

  it('counts a set only while its wrap is open', () => {
    const sealed = turnStep.options.filter((step) => !canBeCounted(step));
    expect(sealed).toEqual(['packed', 'inSteriliser', 'awaitingAcceptance', 'inSterileStore']);
  });
});

const draftWith = (found: Record<string, string>): CountDraft => ({
  ...beginCount('count_1', 3, []),
  lines: Object.fromEntries(
    Object.entries(found).map(([item, text]) => [
      `line_${item}`,
      { found: text, unsound: '', condition: 'sound' },
    ]),
  ),
});

describe('a count in the making', () => {
  it('begins with nothing counted: found is never filled in', () => {
    const draft = beginCount('count_1', 1, []);
    expect(countFrom(draft).lines).toEqual([]);
    expect(progressOf(draft, lines).map(({ counted: so }) => so)).toEqual([0, 0]);
  });

  it.each([
    { text: '', pieces: null, why: 'nothing typed is not counted' },
    { text: '0', pieces: 0, why: 'nothing found is a count' },
    { text: ' 12 ', pieces: 12, why: 'spaces do not matter' },
    { text: '-1', pieces: undefined, why: 'there is no negative piece' },
    { text: '1.5', pieces: undefined, why: 'there is no half piece' },
    { text: '1000', pieces: undefined, why: 'no set holds so many' },
  ])('$why', ({ text, pieces }) => {
    expect(piecesFrom(text)).toBe(pieces);
  });

  it('names every line that keeps it from being saved, and lets untouched layers be', () => {
    const problems = draftProblems(draftWith({ a: '1x' }), lines);
    expect(problems.map(({ lineId, field }) => [lineId, field])).toEqual([['line_a', 'found']]);
    expect(draftProblems(draftWith({ a: '1' }), lines).map(({ lineId }) => lineId)).toEqual(['line_b']);
    expect(draftProblems(draftWith({ a: '1', b: '0' }), lines)).toEqual([]);
  });

  it('what it accepts, the core accepts, whatever is entered', () => {
    const text = fc.constantFrom('', '0', '1', '7', '999', '1000', '-1', 'x');
    fc.assert(
      fc.property(text, text, text, (a, b, c) => {
        const draft = draftWith({ a, b, c });
        const entry = countFrom(draft);
        fc.pre(entry.lines.length > 0 && draftProblems(draft, lines).length === 0);
        const parsed = countEntry.safeParse({ ...entry, setId: 'set_x' });
        expect(parsed.success && checkCount(parsed.data, lines)).toEqual([]);
      }),
    );
  });

  it('after a conflict asks again only for what differs, over the revision that stands', () => {
    const draft = draftWith({ a: '1', b: '2', c: '0' });
    const current = {
      revision: 9,
      lines: [
        { lineId: 'line_a', found: 1, unsound: 0 },
        { lineId: 'line_b', found: 1, unsound: 0 },
      ],
    };
    expect(differingLines(draft, current.lines).map(({ lineId }) => lineId)).toEqual(['line_b', 'line_c']);
    const again = recountDiffering(draft, current, 'count_2');
    expect(Object.keys(again.lines)).toEqual(['line_a']);
    expect(again).toMatchObject({ id: 'count_2', baseRevision: 9 });
    expect(differingLines(again, current.lines)).toEqual([]);
  });
});
