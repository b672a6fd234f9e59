import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ListColumn } from '@/lib/exchange/list';
import { LISTS } from '@/lib/exchange/lists/lists';
import { decimalSignOf, numberText, readNumber, unmistakable } from '@/lib/exchange/numbers';
import { settleCell } from '@/lib/exchange/settleCell';
import { shownCell } from '@/lib/exchange/shownCell';

describe('a number', () => {
  // ISO 80000-1, 7.3: point or comma before the decimals, spaces between thousands; other ways are common practice, no source
  it.each([
    ['2.7', null, '2.7'],
    ['2,7', null, '2.7'],
    ['02,70', null, '2.7'],
    ['-0.5', null, '-0.5'],
    ['−1,25', null, '-1.25'],
    ['1 234', null, '1234'],
    ['1\u00a0234,5', null, '1234.5'],
    ["1'234.50", null, '1234.5'],
    ['1,234.5', null, '1234.5'],
    ['1.234,5', null, '1234.5'],
    ['1.234.567', null, '1234567'],
    ['0,125', null, '0.125'],
    ['1234,567', null, '1234.567'],
    ['1,234', 'comma', '1.234'],
    ['1,234', 'point', '1234'],
    ['1.234', 'comma', '1234'],
    ['-0', null, '0'],
  ] as const)('%s with sign %s is %s', (text, sign, value) => {
    expect(readNumber(text, sign)).toEqual({ ok: true, text: value });
  });

  it.each([
    ['1,234', null, 'eitherNumber'],
    ['1.234', null, 'eitherNumber'],
    ['1.234', 'mixed', 'eitherNumber'],
    ['1,23,4', null, 'notANumber'],
    ['1.2.3', null, 'notANumber'],
    ['12 34', null, 'notANumber'],
    ['1e3', null, 'notANumber'],
    ['', null, 'notANumber'],
    ['about 3', null, 'notANumber'],
  ] as const)('%j with sign %s is not read: %s', (text, sign, why) => {
    expect(readNumber(text, sign)).toEqual({ ok: false, why });
  });

  it('the sign is the file’s own evidence, and two that contradict each other are none', () => {
    expect(decimalSignOf(['1,234', '2,5'])).toBe('comma');
    expect(decimalSignOf(['1,234', '1,234.5'])).toBe('point');
    expect(decimalSignOf(['1,234', '12'])).toBeNull();
    expect(decimalSignOf(['2,5', '2.5'])).toBe('mixed');
  });

  it('goes out so that it can be read in one way only, whatever the file says elsewhere', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -5_000_000, max: 5_000_000 }),
        fc.constantFrom('point', 'comma', 'mixed', null),
        (um, sign) => {
          const text = readNumber(String(um / 1000), 'point');
          if (!text.ok) throw new Error(`${um}`);
          expect(readNumber(unmistakable(text.text), sign)).toEqual(text);
        },
      ),
    );
  });

  it.each([
    [2.7, '2.7'],
    [0.1 + 0.2, '0.3'],
    [9521234543213, '9521234543213'],
    [1.5e-7, '0.00000015'],
    [1e20, '100000000000000000000'],
  ])('of a spreadsheet (%d) is %s', (value, text) => {
    expect(numberText(value)).toBe(text);
  });
});

describe('every column', () => {
  const columns = Object.values(LISTS).flatMap((list) =>
    list.columns.map((column) => ({ list: list.name, column })),
  );
  const how = { dateOrder: null, decimal: null } as const;

  it.each(columns)('$list, $column.heading: its example is read', ({ column }) => {
    if (column.example === '') return;
    expect(settleCell(column, { text: column.example, form: 'text' }, how)).toMatchObject({ ok: true });
  });

  it.each(columns)(
    '$list, $column.heading: what it may hold goes out and comes back as it is',
    ({ column }) => {
      fc.assert(
        fc.property(anyValue(column), (text) => {
          expect(settleCell(column, { text: shownCell(column, text), form: 'text' }, how)).toEqual({
            ok: true,
            text,
          });
        }),
        { numRuns: 30 },
      );
    },
  );

  it.each(Object.values(LISTS))(
    '$name has a heading and a key for each, and no two alike',
    ({ columns: own }) => {
      for (const of of ['key', 'heading'] as const)
        expect(new Set(own.map((column) => column[of])).size).toBe(own.length);
      for (const { words = {} } of own)
        expect(new Set(Object.values(words).map((word) => word.toLowerCase())).size).toBe(
          Object.keys(words).length,
        );
    },
  );
});

function anyValue({ entry, words = {} }: ListColumn): fc.Arbitrary<string> {
  const decimal = fc.integer({ min: 1, max: 2_000_000 }).map((um) => String(um / 1000));
  switch (entry) {
    case 'whole':
      return fc.integer({ min: -999, max: 99_999 }).map(String);
    case 'decimal':
      return decimal;
    case 'decimals':
      return fc.array(decimal, { minLength: 1, maxLength: 4 }).map((all) => all.join(', '));
    case 'pounds':
      return fc.integer({ min: 0, max: 1_000_000 }).map((pence) => (pence / 100).toFixed(2));
    case 'date':
      return fc
        .date({ min: new Date('2000-01-01'), max: new Date('2099-12-31'), noInvalidDate: true })
        .map((day) => day.toISOString().slice(0, 10));
    case 'yesNo':
      return fc.constantFrom('yes', 'no');
    case 'choice':
      return fc.constantFrom(...Object.keys(words));
    case 'choices':
      return fc.subarray(Object.keys(words), { minLength: 1 }).map((all) => all.join(','));
    case 'gtin':
      return fc.stringMatching(/^\d{14}$/);
    default:
      return fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9 .,/-]{0,30}[A-Za-z0-9]$/);
  }
}
