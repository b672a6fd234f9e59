import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CASE_ORDERS, CASES_A_PAGE, caseCounts, casePage, FIRST_CASES } from '@/lib/trace/casePage';
import { standingOf } from '@/lib/trace/slotBounds';

const cases = fc
  .uniqueArray(fc.nat(400), { maxLength: 170 })
  .chain((ids) =>
    fc.tuple(
      ...ids.map((id) =>
        fc.record({
          caseId: fc.constant(`case_${id}`),
          bounds: fc.constantFrom({ lo: 0, hi: 0 }, { lo: 0, hi: 1 }, { lo: 0, hi: 3 }, { lo: 1, hi: 1 }),
          lastAtMs: fc.nat(50),
          reference: fc.constantFrom('LM-2', 'LM-10', 'LM-100', 'lm-3'),
          date: fc.constantFrom('2025-11-02', '2026-01-09'),
          surgeon: fc.constantFrom('Ines', 'Tobias', null),
        }),
      ),
    ),
  )
  .map((all) => all.map(({ bounds, ...one }) => ({ ...one, ...bounds, standing: standingOf(bounds) })));

type One = { caseId: string; reference: string; date: string; surgeon: string | null };
const namesOf = (all: readonly One[]) => new Map(all.map((one) => [one.caseId, one]));

describe('the cases of a trace, a page at a time', () => {
  it('are all there once over the pages, in whichever order, and a page that is not there is the last', () => {
    fc.assert(
      fc.property(cases, fc.constantFrom(...CASE_ORDERS), fc.boolean(), (all, order, isDescending) => {
        const page = (at: number) =>
          casePage(all, { order, isDescending, page: at }, () => namesOf(all)).map(({ caseId }) => caseId);
        const pages = Math.max(1, Math.ceil(all.length / CASES_A_PAGE));
        const joined = Array.from({ length: pages }, (_, at) => page(at + 1)).flat();
        expect([...joined].sort()).toEqual(all.map(({ caseId }) => caseId).sort());
        expect(page(pages + 3)).toEqual(page(pages));
        expect(page(0)).toEqual(page(1));
      }),
    );
  });

  it('come confirmed, possible, excluded, those that left last first, without asking what any is called', () => {
    fc.assert(
      fc.property(cases, (all) => {
        const first = casePage(all, FIRST_CASES, () => {
          throw new Error('no names are needed');
        });
        const rank = { confirmed: 0, possible: 1, excluded: 2 };
        for (const [at, one] of first.entries()) {
          const next = first[at + 1];
          if (!next) continue;
          expect(rank[one.standing]).toBeLessThanOrEqual(rank[next.standing]);
          if (one.standing === next.standing) expect(one.lastAtMs).toBeGreaterThanOrEqual(next.lastAtMs);
        }
        const [counts, firstWords] = [caseCounts(all), first.map(({ standing }) => standing)];
        expect(counts.total).toBe(counts.confirmed + counts.possible + counts.excluded);
        expect(firstWords.filter((word) => word === 'confirmed')).toHaveLength(
          Math.min(CASES_A_PAGE, counts.confirmed),
        );
      }),
    );
  });

  it('by name: numbers in codes count, and what is not stated is last both ways', () => {
    const of = (caseId: string, reference: string, surgeon: string | null) =>
      ({
        caseId,
        reference,
        surgeon,
        date: '2026-01-01',
        lo: 0,
        hi: 1,
        standing: 'possible',
        lastAtMs: 0,
      }) as const;
    const all = [of('a', 'LM-10', 'Tobias'), of('b', 'LM-2', null), of('c', 'LM-3', 'Ines')];
    const by = (order: 'reference' | 'surgeon', isDescending: boolean) =>
      casePage(all, { order, isDescending, page: 1 }, () => namesOf(all))
        .map(({ caseId }) => caseId)
        .join('');
    expect(by('reference', false)).toBe('bca');
    expect(by('reference', true)).toBe('acb');
    expect(by('surgeon', false)).toBe('cab');
    expect(by('surgeon', true)).toBe('acb');
  });
});
