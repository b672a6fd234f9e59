import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wrongWords } from '@/lib/documents/loanReturn';
import { countStanding, type LoanCount, type Pieces } from '@/lib/loans/counting';
import { discrepancies, reconcile, shortOnArrival } from '@/lib/loans/reconcile';

const lines = [
  { id: 'a', quantity: 4, implant: true },
  { id: 'b', quantity: 1, implant: false },
];
const figures = (a: number, b: number, damagedB = 0) =>
  new Map<string, Pieces>([
    ['a', { sound: a, damaged: 0 }],
    ['b', { sound: b, damaged: damagedB }],
  ]);
const count = (
  purpose: LoanCount['purpose'],
  personId: string,
  found: ReadonlyMap<string, Pieces>,
): LoanCount => ({
  purpose,
  personId,
  at: '2026-01-14T08:00:00.000Z',
  figures: found,
});

describe('how a count stands', () => {
  it.each([
    // the bench’s own setting decides (domain.md §5: second checks are blind, and by another person)
    ['always', [count('count', 'p', figures(4, 1))], 'check'],
    ['implantsAndShort', [count('count', 'p', figures(4, 1))], 'check'],
    ['never', [count('count', 'p', figures(4, 1))], 'done'],
    ['always', [], 'count'],
    ['always', [count('count', 'p', figures(4, 1)), count('check', 'q', figures(4, 1))], 'done'],
    ['always', [count('count', 'p', figures(4, 1)), count('check', 'q', figures(3, 1))], 'settle'],
  ] as const)('with a second check %s', (setting, counts, next) => {
    expect(countStanding(lines, counts, setting).next).toBe(next);
  });

  it('without implants a second person checks only what came short', () => {
    const plain = lines.map((line) => ({ ...line, implant: false }));
    expect(countStanding(plain, [count('count', 'p', figures(4, 1))], 'implantsAndShort').next).toBe('done');
    expect(countStanding(plain, [count('count', 'p', figures(4, 0))], 'implantsAndShort').next).toBe('check');
    expect(countStanding(plain, [count('count', 'p', figures(4, 0, 1))], 'implantsAndShort').next).toBe(
      'check',
    );
  });

  it('a line of which nobody says whether it is an implant counts as one', () => {
    const unsaid = lines.map((line) => ({ ...line, implant: line.id === 'a' ? null : false }));
    expect(countStanding(unsaid, [count('count', 'p', figures(4, 1))], 'implantsAndShort').next).toBe(
      'check',
    );
  });

  it('a line on which two people differ has no figure until it is counted again, and then that one', () => {
    const two = [count('count', 'p', figures(4, 1)), count('check', 'q', figures(3, 1))];
    const open = countStanding(lines, two, 'always');
    expect(open.disputed).toEqual(['a']);
    expect(open.figures.has('a')).toBe(false);
    const settled = countStanding(
      lines,
      [...two, count('settle', 'q', new Map([['a', { sound: 3, damaged: 1 }]]))],
      'always',
    );
    expect(settled).toMatchObject({ next: 'done', disputed: [] });
    expect(settled.figures.get('a')).toEqual({ sound: 3, damaged: 1 });
  });
});

describe('what became of the pieces', () => {
  it('a worked example: 4 screws listed, 3 came, 1 implanted, 1 goes back, so 1 is lacking; the driver came back damaged', () => {
    const all = reconcile(lines, figures(3, 1), [{ lineId: 'a', quantity: 1 }], figures(1, 0, 1));
    expect(all[0]).toMatchObject({
      listed: 4,
      lackedOnArrival: 1,
      used: 1,
      lackingOnReturn: 1,
      damagedHere: 0,
    });
    expect(all[1]).toMatchObject({
      lackedOnArrival: 0,
      lackingOnReturn: 0,
      damagedOnArrival: 0,
      damagedHere: 1,
    });
    expect(discrepancies(all)).toEqual([
      { lineId: 'a', stage: 'in', kind: 'notFound', quantity: 1 },
      { lineId: 'a', stage: 'out', kind: 'notFound', quantity: 1 },
      { lineId: 'b', stage: 'out', kind: 'damaged', quantity: 1 },
    ]);
    expect(shortOnArrival(all).map(({ lineId }) => lineId)).toEqual(['a']);
  });

  it('what nobody counted is not known, and claims nothing', () => {
    const all = reconcile(lines, new Map(), [], new Map());
    expect(all.every((line) => line.lackedOnArrival === null && line.lackingOnReturn === null)).toBe(true);
    expect(discrepancies(all)).toEqual([]);
  });

  it('pieces are conserved: what came in is what was used, goes out, and lacks; more going out than can is shown', () => {
    const pieces = fc.record({ sound: fc.nat(9), damaged: fc.nat(3) });
    fc.assert(
      fc.property(fc.nat(12), pieces, fc.nat(6), pieces, (quantity, came, used, goes) => {
        const [line] = reconcile(
          [{ id: 'a', quantity }],
          new Map([['a', came]]),
          [{ lineId: 'a', quantity: used }],
          new Map([['a', goes]]),
        );
        if (!line) throw new Error('one line in, one line out');
        const lacking = line.lackingOnReturn ?? Number.NaN;
        expect(came.sound + came.damaged).toBe(used + goes.sound + goes.damaged + lacking);
        expect(wrongWords(line).some((said) => said.includes('more than came'))).toBe(lacking < 0);
        for (const found of discrepancies([line])) expect(found.quantity).toBeGreaterThan(0);
      }),
    );
  });
});
