import { describe, expect, it } from 'vitest';
import { gs1CheckDigit } from '@/lib/calculations/identifier/checkDigits';
import { suspect, usualLengthOf } from '@/lib/exchange/damage';
import type { ListColumn } from '@/lib/exchange/list';
import { LISTS } from '@/lib/exchange/lists/lists';
import type { CellForm } from '@/lib/exchange/readFile';
import { serialOfDate } from '@/lib/lists/serial';
import { plainDate } from '@/lib/quantities/plainDate';
import { suspicionWords } from '@/lib/wording/exchange';
import published from '../../fixtures/published-identifiers.json';

const columnOf = (list: keyof typeof LISTS, key: string) =>
  LISTS[list].columns.find((column) => column.key === key) as ListColumn;
const [code, gtin, lot, name, mass] = [
  columnOf('catalogue', 'code'),
  columnOf('catalogue', 'gtin'),
  columnOf('stock', 'lot'),
  columnOf('catalogue', 'name'),
  columnOf('catalogue', 'massGrams'),
];

const ask = (
  text: string,
  column: ListColumn,
  { form = 'text' as CellForm, known = [] as string[], usualLength = null as number | null } = {},
) => suspect({ text, form }, column, { known: new Set(known), usualLength });

describe('a GTIN', () => {
  // GS1 General Specifications: GTINs of 8, 12 and 13 digits are written in fourteen with zeros before; valid keys as published
  it.each(['8904000210037', '7300011000017', '1234567890128', '9521234543213', '02345673'])(
    'of fewer digits (%s) is offered in fourteen, where its check digit is right',
    (text) => {
      expect(published['gs1-check-digits'].valid.concat('9521234543213')).toContain(text);
      expect(ask(text, gtin)).toEqual({
        damage: 'zerosLost',
        weight: 'asks',
        repaired: text.padStart(14, '0'),
      });
    },
  );

  it.each(published['gs1-check-digits'].invalid.filter((text) => text.length < 14))(
    'of wrong check digit (%s) is not repaired',
    (text) => {
      expect(ask(text, gtin)).toBeNull();
    },
  );

  // worked: a spreadsheet shows 12345678901231 (a valid published key) as 1.23457E+13 and saves that to CSV; common practice, no source
  it.each(['1.23457E+13', '1,23457E+13', '1.2E+13', '9E+12'])(
    'as %s has lost digits that nothing brings back',
    (text) => {
      expect(ask(text, gtin)).toEqual({ damage: 'exponent', weight: 'stops', repaired: null });
    },
  );

  it('with all its digits before the exponent is offered whole', () => {
    expect(ask('1.2345678901231E+13', gtin)).toEqual({
      damage: 'exponent',
      weight: 'asks',
      repaired: '12345678901231',
    });
  });

  it('of fourteen digits is left alone', () => {
    expect(ask('09521234543213', gtin)).toBeNull();
    expect(gs1CheckDigit('0952123454321')).toBe(3);
  });
});

describe('a code', () => {
  // common practice, no source: what office programs in English make of 3-12 and MAR-2
  it.each([
    ['03-Dec', ['3-12', '4-12'], '3-12'],
    ['12-Mar', ['3-12'], '3-12'],
    ['Dec-03', ['03/12'], '03/12'],
    ['03-Dec', ['3-12', '12-3'], null],
    ['03-Dec', [], null],
  ])('%s was made into a day; of %j it was %s', (text, known, repaired) => {
    expect(ask(text, code, { known })).toEqual({ damage: 'madeADate', weight: 'asks', repaired });
  });

  it('in a date cell stops, unless the one code it can have been is on record', () => {
    const text = String(serialOfDate(plainDate.parse('2026-12-03')));
    expect(ask(text, code, { form: 'date' })).toMatchObject({
      damage: 'madeADate',
      weight: 'stops',
      date: '2026-12-03',
    });
    expect(ask(text, code, { form: 'date', known: ['3-12'] })).toMatchObject({
      weight: 'asks',
      repaired: '3-12',
    });
    expect(ask(text, mass, { form: 'date' })).toMatchObject({ damage: 'madeADate', weight: 'stops' });
    expect(ask(text, columnOf('stock', 'useBy'), { form: 'date' })).toBeNull();
  });

  it('that lacks zeros one on record has, is offered with them', () => {
    expect(ask('4711', code, { known: ['004711'] })).toEqual({
      damage: 'zerosLost',
      weight: 'asks',
      repaired: '004711',
    });
    expect(ask('4711', code, { known: ['004711', '04711'] })).toBeNull();
    expect(ask('4711', code, { known: ['4711', '004711'] })).toBeNull();
  });

  it('shorter than nearly all others is offered with zeros, where no other begins with one', () => {
    const others = ['471100', '471101', '471102', '471103', '471104', '471105', '4711'];
    expect(usualLengthOf(others)).toBe(6);
    expect(ask('4711', code, { usualLength: 6 })).toMatchObject({
      damage: 'zerosLost',
      repaired: '004711',
      usual: 6,
    });
    expect(usualLengthOf([...others, '004712'])).toBeNull();
    expect(usualLengthOf(['1', '22', '333', '4444', '55555'])).toBeNull();
    expect(usualLengthOf(others.slice(0, 6))).toBeNull();
  });

  it.each([
    ['12345.0', 'pointZero', '12345'],
    ['CR‑35–020', 'marks', 'CR-35-020'],
    ['CR\u00a035', 'spaces', 'CR 35'],
    ['CR35\u200b', 'spaces', 'CR35'],
    ['2E5', 'exponent', null],
    ['2.5E+1', 'exponent', '25'],
  ])('%j is suspected (%s), never repaired by itself', (text, damage, repaired) => {
    expect(ask(text, code)).toEqual({ damage, weight: 'asks', repaired });
  });

  it.each(['CR-35-020', 'A.3/4', '3-12', 'E20', '45', 'May-X'])('%s is left alone', (text) => {
    expect(ask(text, code)).toBeNull();
  });

  // IEEE 754 binary64; ECMA-376 stores numbers so, and office programs keep fifteen digits of what is typed
  it('of more than fifteen digits in a number cell has lost the last ones', () => {
    expect(ask('1234567890123450', lot, { form: 'number' })).toMatchObject({
      damage: 'digitsLost',
      weight: 'stops',
    });
    expect(ask('1234567890123450', lot)).toBeNull();
  });
});

it('O beside digits in a lot is a note only', () => {
  expect(ask('L24O1', lot)).toEqual({ damage: 'letterO', weight: 'note', repaired: null });
  expect(ask('LOT-24', lot)).toBeNull();
  expect(ask('L24O1', code)).toBeNull();
});

// UTF-8 read as Windows-1252 (WHATWG Encoding): ö is C3 B6, read as Ã and ¶
it('letters read in the wrong encoding are offered as they were', () => {
  expect(ask('GrÃ¶ÃŸe â‚¬', name)).toEqual({ damage: 'letters', weight: 'asks', repaired: 'Größe €' });
  expect(ask('Gr\uFFFDße', name)).toMatchObject({ damage: 'letters', weight: 'stops' });
  expect(ask('São Âncora', name)).toBeNull();
});

it('every suspicion says why in words, and no repair where there is none', () => {
  for (const damage of [
    'zerosLost',
    'exponent',
    'digitsLost',
    'madeADate',
    'pointZero',
    'spaces',
    'marks',
    'letters',
    'letterO',
  ] as const) {
    expect(suspicionWords(damage, { repaired: 'X1' })).toMatch(/\.$/);
    expect(suspicionWords(damage, { repaired: null })).not.toContain('Most likely');
  }
});
