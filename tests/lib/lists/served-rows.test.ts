import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { onlyTexts, servedPage, servedQuery } from '@/app/_ui/served-rows';

interface Row {
  code: string;
  mass: number | null;
}
const VALUES = { code: (row: Row) => row.code, mass: (row: Row) => row.mass };
const rows: Row[] = [
  { code: 'P10', mass: 4 },
  { code: 'P2', mass: null },
  { code: 'P1', mass: 9 },
  { code: 'p3', mass: 1 },
];
const codes = (sort: string, page: string | null = null, pageSize = 10) =>
  servedPage(rows, VALUES, { sort, page, pageSize }).map(({ code }) => code);

describe('a page of a served list', () => {
  it('is sorted as a table sorts: codes by their numbers, unknown ones last both ways', () => {
    expect(codes('code')).toEqual(['P1', 'P2', 'p3', 'P10']);
    expect(codes('-code')).toEqual(['P10', 'p3', 'P2', 'P1']);
    expect(codes('mass')).toEqual(['p3', 'P10', 'P1', 'P2']);
    expect(codes('-mass')).toEqual(['P1', 'P10', 'p3', 'P2']);
  });

  it('keeps the order it is given where the address names no column there is', () => {
    expect(codes('')).toEqual(['P10', 'P2', 'P1', 'p3']);
    expect(codes('-colour')).toEqual(['P10', 'P2', 'P1', 'p3']);
  });

  it('is the last one where the address names a page that is not there, and the first where it makes no sense', () => {
    expect(codes('code', '2', 3)).toEqual(['P10']);
    expect(codes('code', '9', 3)).toEqual(['P10']);
    expect(codes('code', 'nine', 3)).toEqual(['P1', 'P2', 'p3']);
    expect(codes('code', '-1', 3)).toEqual(['P1', 'P2', 'p3']);
    expect(servedPage([], VALUES, { sort: 'code', page: '3', pageSize: 3 })).toEqual([]);
  });

  it('shows every row on one page or another, once', () => {
    const row = fc.record({ code: fc.string({ maxLength: 3 }), mass: fc.option(fc.nat(5)) });
    fc.assert(
      fc.property(
        fc.array(row, { maxLength: 40 }),
        fc.constantFrom('', 'code', '-code', 'mass', '-mass'),
        fc.integer({ min: 1, max: 7 }),
        (some, sort, pageSize) => {
          const pages = Math.ceil(some.length / pageSize);
          const shown = Array.from({ length: pages }, (_, at) =>
            servedPage(some, VALUES, { sort, page: String(at + 1), pageSize }),
          ).flat();
          expect(new Set(shown).size).toBe(some.length);
          expect(shown).toHaveLength(some.length);
        },
      ),
    );
  });
});

describe('what a list is served by', () => {
  it('is in one order, without what is not there and what comes twice', () => {
    const params = onlyTexts({ step: 'held', q: 'plate', page: ['1', '2'], other: 'x' });
    expect(servedQuery(['q', 'step', 'page'], (name) => params.get(name))).toBe('q=plate&step=held');
  });
});
