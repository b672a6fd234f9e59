import { describe, expect, test } from 'vitest';
import {
  gs1CheckDigit,
  HIBC_ALPHABET,
  hasValidCheckDigit,
  hibcCheckCharacter,
} from '@/lib/calculations/identifier/checkDigits';
import { slidingYear } from '@/lib/calculations/identifier/dates';
import { IDENTIFIERS } from '@/lib/calculations/identifier/gs1/identifiers';
import { identify } from '@/lib/calculations/identifier/identify';
import published from '../fixtures/published-identifiers.json';

const read = (text: string) => identify({ text, currentYear: 2026, separators: 'mayBeLost' });
const plain = (text: string) =>
  Object.fromEntries(read(text).elements.map(({ identifier, plain }) => [identifier, plain]));

// GS1 General Specifications, modulo 10; seen: gs1india.org, gs1.se, GS1's syntax dictionary (lint_csum.c)
describe('GS1 check digits', () => {
  const { valid, invalid, demo } = published['gs1-check-digits'];

  test.each(valid)('%s is right', (key) => {
    expect(hasValidCheckDigit(key)).toBe(true);
    expect(String(gs1CheckDigit(key.slice(0, -1)))).toBe(key.slice(-1));
  });

  test.each(invalid)('%s is wrong', (key) => expect(hasValidCheckDigit(key)).toBe(false));

  // the demonstration prefix of GS1
  test.each(['9521234543213', '09521234543213'])('%s, kept for examples, is read as a GTIN', (key) => {
    expect(demo).toContain(key);
    expect(read(key)).toMatchObject({
      scheme: 'gs1Key',
      state: 'read',
      elements: [{ meaning: 'gtin', plain: '09521234543213' }],
    });
  });

  test.each(valid.filter(({ length }) => [8, 12, 13, 14, 18].includes(length)))(
    '%s typed alone is read as the key it is, and no other last digit is',
    (key) => {
      for (const last of '0123456789') {
        const { state, faults } = read(key.slice(0, -1) + last);
        expect(state).toBe(last === key.slice(-1) ? 'read' : 'unknown');
        if (last !== key.slice(-1)) {
          expect(faults).toEqual([
            expect.objectContaining({ kind: 'check-digit', due: key.slice(-1), position: key.length }),
          ]);
        }
      }
    },
  );
});

// GS1 General Specifications, sliding century and day 00; seen: GS1's syntax dictionary (lint_yymmd0.c)
describe('GS1 dates', () => {
  const { valid, invalid, in2026 } = published['gs1-dates'];
  const meant: Record<string, string> = {
    '240229': '2024-02-29',
    '000229': '2000-02-29',
    '960229': '1996-02-29',
    '200600': '2020-06-30',
  };

  test.each(valid)('%s exists', (date) => {
    expect(meant[date]).toBeDefined();
    expect(plain(`]C117${date}`)).toEqual({ '17': meant[date] });
  });

  test.each(invalid)('%s does not exist', (date) => {
    const { state, faults, elements } = read(`]C117${date}`);
    expect(state).toBe('faulty');
    expect(faults).toEqual([expect.objectContaining({ kind: 'no-such-date' })]);
    expect(elements).toEqual([expect.objectContaining({ value: date, plain: null })]);
  });

  test.each(Object.entries(in2026))('%s in 2026 is %s', (figures, year) =>
    expect(slidingYear(Number(figures), 2026)).toBe(year),
  );
});

// FDA, UDI formats by FDA-accredited issuing agency v1.3 (2017); gs1-syntax-engine scandata.c
describe('GS1 element strings', () => {
  const { udi, scan, symbologyIdentifiers, needsSeparator } = published['gs1-strings'];

  test('the example of the FDA', () =>
    expect(plain(udi)).toEqual({
      '01': '51022222233336',
      '11': '2014-12-31',
      '17': '2015-07-07',
      '10': 'A213B1',
      '21': '1234',
    }));

  test('the scan of the syntax engine', () => {
    expect(plain(scan.bracketless)).toEqual(scan.means);
    expect(read(scan.bracketless)).toMatchObject({ state: 'read', carrier: 'GS1 DataMatrix' });
  });

  test.each(Object.entries(symbologyIdentifiers))('%s is %s', (identifier, name) => {
    const { carrier } = read(`${identifier}9521234543213`);
    const ours: Record<string, string> = { 'GS1 QR': 'GS1 QR Code', QR: 'QR Code' };
    expect(carrier).toBe(ours[name] ?? name);
  });

  test.each(Object.entries(needsSeparator))('after (%s) a separator is needed: %s', (code, needed) =>
    expect(IDENTIFIERS.get(code)?.predefined).toBe(!needed),
  );
});

// ANSI/HIBC 2; strings as listed among accredited-agency examples, check characters recomputed
describe('HIBC', () => {
  const { alphabet, valid } = published.hibc;

  test('the alphabet', () => expect(HIBC_ALPHABET).toBe(alphabet));

  test.each(valid)('%s is sound', (text) => {
    expect(hibcCheckCharacter(text.slice(0, -1))).toBe(text.slice(-1));
    expect(read(text)).toMatchObject({ scheme: 'hibc', state: 'read', faults: [] });
  });
});

// ICCBBA's UDI page, as quoted by idautomation.com
describe('ICCBBA', () => {
  test.each(Object.entries(published.iccbba.expiry))('%s is %s', (text, date) =>
    expect(plain(text)).toEqual({ '=>': date }),
  );
});
