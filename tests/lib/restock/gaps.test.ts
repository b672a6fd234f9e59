import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { caseId, type ItemId, itemId } from '@/lib/identity/ids';
import type { ChainNeed, Needs, PieceNeed } from '@/lib/kits/need';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { type CaseInNeed, gapsOf, type PiecesThere } from '@/lib/restock/gaps';

const id = (name: string) => itemId.parse(`item_${name}`) as ItemId;

const piece = (step: string, accepts: string[]): PieceNeed => ({
  id: `piece:${step}`,
  step,
  what: 'screw',
  accepts: accepts.map((name) => ({ itemId: id(name), lengthUm: null, longerUm: 0, answers: [] })),
  notEstablished: [],
  refused: [],
  length: { kind: 'exact', askedUm: 16_000, acceptLongerUm: 0 },
});

const candidate = (name: string) => ({ itemId: id(name), endIndex: null, answers: [], established: true });
/** A bit and a sleeve; only those of a pair fit each other. */
const drilling = (bits: string[], sleeves: string[], pairs: [number, number][]): ChainNeed => ({
  id: 'chain:drilling:1',
  kind: 'drilling',
  importance: 'mustHave',
  steps: ['P1/S1'],
  forItemId: id('screw'),
  slots: [
    { name: 'pilotBit', candidates: bits.map(candidate), pieces: 1 },
    { name: 'sleeve', candidates: sleeves.map(candidate), pieces: 1 },
  ],
  links: [
    {
      first: 0,
      second: 1,
      pairs: pairs.map(([first, second]) => ({ first, second, answer: null, established: true })),
    },
  ],
});

const booked = (name: string, day: string, needs: Partial<Needs>): CaseInNeed => ({
  caseId: caseId.parse(`case_${name}`),
  reference: name.toUpperCase(),
  startsAt: `${day}T08:30:00.000Z`,
  caseDate: day as PlainDate,
  needs: { steps: [], pieces: [], chains: [], faults: [], ...needs },
});

const there = (name: string, pieces: number, useBy: string | null = null): PiecesThere => ({
  itemId: id(name),
  pieces,
  useBy: useBy as PlainDate | null,
});

describe('what booked cases need that the house does not have', () => {
  it('is what the later of two cases lacks, and says that the earlier one takes it', () => {
    const cases = [
      booked('a', '2026-01-15', { pieces: [piece('P1/S1', ['s16'])] }),
      booked('b', '2026-01-16', { pieces: [piece('P1/S1', ['s16']), piece('P1/S2', ['s16'])] }),
    ];
    expect(gapsOf(cases, [there('s16', 2)])).toMatchObject([
      {
        reference: 'B',
        kind: 'piece',
        accepts: [id('s16')],
        pieces: 1,
        takenEarlier: true,
        steps: ['P1/S2'],
      },
    ]);
    expect(gapsOf(cases, [there('s16', 3)])).toEqual([]);
    expect(gapsOf(cases, [])).toMatchObject([
      { reference: 'A', pieces: 1, takenEarlier: false },
      { reference: 'B', pieces: 2, takenEarlier: false },
    ]);
  });

  it('is none where an earlier case can take another piece that serves it as well', () => {
    const cases = [
      booked('a', '2026-01-15', { pieces: [piece('P1/S1', ['s16', 's18'])] }),
      booked('b', '2026-01-16', { pieces: [piece('P1/S1', ['s16'])] }),
    ];
    expect(gapsOf(cases, [there('s16', 1), there('s18', 1)])).toEqual([]);
  });

  it('tests use-by against the day of each case', () => {
    const cases = [booked('a', '2026-01-16', { pieces: [piece('P1/S1', ['s16'])] })];
    expect(gapsOf(cases, [there('s16', 1, '2026-01-15')])).toHaveLength(1);
    expect(gapsOf(cases, [there('s16', 1, '2026-01-16')])).toEqual([]);
  });

  it('is a chain none of whose links fit each other, or a part of which is not there at all', () => {
    const cases = [
      booked('a', '2026-01-15', {
        chains: [
          drilling(
            ['b1', 'b2'],
            ['l1', 'l2'],
            [
              [0, 0],
              [1, 1],
            ],
          ),
        ],
      }),
    ];
    expect(gapsOf(cases, [there('b1', 1), there('l1', 1)])).toEqual([]);
    // a bit and a sleeve that each suit the screw but not each other are not a chain
    expect(gapsOf(cases, [there('b1', 1), there('l2', 1)])).toMatchObject([{ kind: 'chain', lacking: [] }]);
    expect(gapsOf(cases, [there('b1', 1)])).toMatchObject([{ kind: 'chain', lacking: ['sleeve'] }]);
  });

  it('instruments come back: two cases need one', () => {
    const needs = { chains: [drilling(['b1'], ['l1'], [[0, 0]])] };
    expect(
      gapsOf(
        [booked('a', '2026-01-15', needs), booked('b', '2026-01-16', needs)],
        [there('b1', 1), there('l1', 1)],
      ),
    ).toEqual([]);
  });

  it('asks no particular piece of a length nobody stated', () => {
    const open: PieceNeed = { ...piece('P1/S1', []), length: { kind: 'notStated' } };
    expect(gapsOf([booked('a', '2026-01-15', { pieces: [open] })], [])).toEqual([]);
  });
});

const NAMES = ['s14', 's16', 's18'];
const someCases = fc
  .array(fc.array(fc.subarray(NAMES, { minLength: 1 }), { maxLength: 4 }), { maxLength: 4 })
  .map((all) =>
    all.map((needs, at) =>
      booked(`c${at}`, `2026-01-${15 + at}`, {
        pieces: needs.map((accepts, hole) => piece(`P1/S${hole + 1}`, accepts)),
      }),
    ),
  );
const someThere = fc
  .tuple(fc.nat(3), fc.nat(3), fc.nat(3))
  .map((all) => all.map((n, at) => there(NAMES[at] ?? '', n)));

const lacking = (cases: CaseInNeed[], shelf: PiecesThere[]) =>
  gapsOf(cases, shelf).reduce((sum, gap) => sum + (gap.kind === 'piece' ? gap.pieces : 0), 0);

/** The most needs that any way to give pieces meets, by trying all. */
function mostMet(needs: string[][], left: Record<string, number>): number {
  const [first, ...rest] = needs;
  if (!first) return 0;
  const without = mostMet(rest, left);
  const ways = first.map((name) =>
    (left[name] ?? 0) > 0 ? 1 + mostMet(rest, { ...left, [name]: (left[name] ?? 0) - 1 }) : 0,
  );
  return Math.max(without, ...ways);
}

describe('whatever is booked', () => {
  it('no fewer pieces could lack, by trying every way to give them', () => {
    fc.assert(
      fc.property(someCases, someThere, (cases, shelf) => {
        const needs = cases.flatMap(({ needs: { pieces } }) =>
          pieces.map(({ accepts }) => accepts.map((one) => one.itemId.slice(5))),
        );
        const left = Object.fromEntries(shelf.map((one) => [one.itemId.slice(5), one.pieces]));
        expect(lacking(cases, shelf)).toBe(needs.length - mostMet(needs, left));
      }),
    );
  });

  it('a case that comes later takes nothing from those before it', () => {
    fc.assert(
      fc.property(someCases, someThere, (cases, shelf) => {
        const all = gapsOf(cases, shelf);
        const before = gapsOf(cases.slice(0, -1), shelf);
        const last = cases.at(-1)?.reference;
        expect(all.filter(({ reference }) => reference !== last)).toEqual(before);
      }),
    );
  });
});
