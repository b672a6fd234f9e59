import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gs1CheckDigit, hasValidCheckDigit } from '@/lib/calculations/identifier/checkDigits';
import { writeBracketed } from '@/lib/calculations/identifier/gs1/elementString';
import { IDENTIFIERS, identifierAt } from '@/lib/calculations/identifier/gs1/identifiers';
import { readingsWithout } from '@/lib/calculations/identifier/gs1/lostSeparators';
import { plainSeparators } from '@/lib/calculations/identifier/gs1/separators';
import { identify } from '@/lib/calculations/identifier/identify';
import { show } from './show';

const GS = '\u001d';
const read = (text: string, separators: 'mayBeLost' | 'sent' = 'mayBeLost') =>
  identify({ text, currentYear: 2026, separators });
const valuesOf = (text: string) =>
  read(text).elements.map(({ identifier, value }) => ({ identifier, value }));

// GS1 General Specifications: the 82 characters
const SET_82 = [...'!"%&\'()*+,-./0123456789:;<=>?ABCDEFGHIJKLMNOPQRSTUVWXYZ_abcdefghijklmnopqrstuvwxyz'];
const digits = (least: number, most = least) =>
  fc
    .array(fc.constantFrom(...'0123456789'), { minLength: least, maxLength: most })
    .map((list) => list.join(''));
const text82 = (most: number) =>
  fc.array(fc.constantFrom(...SET_82), { minLength: 1, maxLength: most }).map((list) => list.join(''));
const key = (length: number) => digits(length - 1).map((body) => `${body}${gs1CheckDigit(body)}`);
const yymmdd = fc
  .tuple(fc.integer({ min: 0, max: 99 }), fc.integer({ min: 1, max: 12 }), fc.integer({ min: 0, max: 28 }))
  .map((parts) => parts.map((part) => String(part).padStart(2, '0')).join(''));

type Written = { identifier: string; value: string };
const element = (identifier: string, value: fc.Arbitrary<string>): fc.Arbitrary<Written> =>
  value.map((one) => ({ identifier, value: one }));
const gtin = element('01', key(14));
const others = fc.uniqueArray(
  fc.oneof(
    element('11', yymmdd),
    element('17', yymmdd),
    element('10', text82(20)),
    element('21', text82(20)),
    element('22', text82(20)),
    element('240', text82(30)),
    element('30', digits(1, 8)),
    element('20', digits(2)),
    element('3103', digits(6)),
    element('410', key(13)),
    element('91', text82(90)),
    element(
      '7003',
      yymmdd.filter((date) => !date.endsWith('00')).map((date) => `${date}1430`),
    ),
  ),
  { selector: ({ identifier }) => identifier, maxLength: 7 },
);

/** As the standard writes it: a separator after what has no predefined length, but for the last. */
const asScanned = (elements: readonly Written[], separator = GS) =>
  elements
    .map(({ identifier, value }, at) => {
      const needs = !IDENTIFIERS.get(identifier)?.predefined && at < elements.length - 1;
      return `${identifier}${value}${needs ? separator : ''}`;
    })
    .join('');

describe('round trip through every notation', () => {
  const elements = fc.tuple(gtin, others).map(([first, rest]) => [first, ...rest]);

  test('bracketed', () => {
    fc.assert(
      fc.property(elements, (list) => {
        expect(valuesOf(writeBracketed(list))).toEqual(list);
        expect(read(writeBracketed(list)).state).toBe('read');
      }),
      { numRuns: 1000 },
    );
  });

  test('GS as sent, {GS}, {FNC1} and ^], with and without symbology identifier', () => {
    fc.assert(
      fc.property(elements, fc.constantFrom('', ']C1', ']d2', ']Q3', ']e0'), (list, mark) => {
        for (const separator of [GS, '{GS}', '{FNC1}', '^]']) {
          const text = `${mark}${asScanned(list, separator)}`;
          const { state, elements: found } = read(text, 'sent');
          expect(state).toBe('read');
          expect(found.map(({ identifier, value }) => ({ identifier, value }))).toEqual(list);
        }
      }),
      { numRuns: 1000 },
    );
  });

  test('separators all lost: never another reading than the true one is taken, and refused readings have it', () => {
    fc.assert(
      fc.property(elements, (list) => {
        const { state, elements: found, readings, complete } = read(`]d2${asScanned(list, '')}`);
        const truth = writeBracketed(list);
        if (state === 'read') expect(writeBracketed(found)).toBe(truth);
        else {
          expect(state).toBe('ambiguous');
          if (complete) expect(readings).toContain(truth);
          // what is said to be in no doubt is so, whether all readings are listed or not
          expect(truth.startsWith(writeBracketed(found))).toBe(true);
        }
      }),
      { numRuns: 2000 },
    );
  });

  test('Digital Link', () => {
    const qualifiers = fc.tuple(
      fc.option(element('22', text82(20)), { nil: null }),
      fc.option(element('10', text82(20)), { nil: null }),
      fc.option(element('21', text82(20)), { nil: null }),
    );
    fc.assert(
      fc.property(gtin, qualifiers, fc.option(yymmdd, { nil: null }), (first, rest, useBy) => {
        const list = [first, ...rest.filter((one) => one !== null)];
        const path = list
          .map(({ identifier, value }) => `/${identifier}/${encodeURIComponent(value)}`)
          .join('');
        const text = `https://id.example.org${path}${useBy ? `?17=${useBy}` : ''}`;
        expect(valuesOf(text)).toEqual(useBy ? [...list, { identifier: '17', value: useBy }] : list);
        expect(read(text).state).toBe('read');
      }),
      { numRuns: 1000 },
    );
  });
});

describe('check digits', () => {
  // weights 3 and 1 are both prime to 10, so a change of one digit always changes the sum
  test('one changed digit is always caught', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(8, 12, 13, 14, 17, 18).chain(key),
        fc.nat(),
        fc.integer({ min: 1, max: 9 }),
        (sound, place, by) => {
          const at = place % sound.length;
          const changed = `${sound.slice(0, at)}${(Number(sound[at]) + by) % 10}${sound.slice(at + 1)}`;
          expect(hasValidCheckDigit(sound)).toBe(true);
          expect(hasValidCheckDigit(changed)).toBe(false);
        },
      ),
      { numRuns: 2000 },
    );
  });
});

describe('the table of identifiers', () => {
  test('no identifier begins another, so a place has one at most', () => {
    const codes = [...IDENTIFIERS.keys()];
    expect(codes.length).toBeGreaterThan(400);
    for (const code of codes) {
      expect(codes.filter((other) => other !== code && other.startsWith(code))).toEqual([]);
      expect(identifierAt(`x${code}`, 1)?.code).toBe(code);
    }
  });

  // GS1 General Specifications: element strings of predefined length
  test('what needs no separator has one length', () => {
    for (const { predefined, format } of IDENTIFIERS.values()) {
      if (predefined) expect(format.least).toBe(format.most);
    }
  });
});

describe('whatever is typed', () => {
  const pieces = fc.constantFrom(
    '01',
    '09521234543213',
    '17',
    '270600',
    '10',
    '21',
    '91',
    GS,
    '{GS}',
    '(',
    ')',
    '(01)',
    '(10)',
    ']d2',
    ']C1',
    ']',
    '+',
    '$$',
    '$',
    '/',
    '=',
    '&',
    '=>',
    '014032',
    '%',
    'https://e.org/',
    '?',
    '\\',
    'A',
    'é',
    '😀',
    '\u0000',
    ' ',
    '0',
    '9',
    '2',
    '3',
  );
  const anything = fc.oneof(
    fc.string({ unit: 'binary', minLength: 1, maxLength: 100 }),
    fc.string({ minLength: 1, maxLength: 200 }),
    fc.array(pieces, { minLength: 1, maxLength: 40 }).map((list) => list.join('').slice(0, 200)),
    digits(1, 200),
    digits(1, 180).map((tail) => `]d2${tail}`),
  );

  test('it never throws, and places are in the text', () => {
    let slowest = 0;
    const began = performance.now();
    fc.assert(
      fc.property(anything, (text) => {
        const start = performance.now();
        const { output, state, problems } = show(text);
        slowest = Math.max(slowest, performance.now() - start);
        for (const { position } of [...output.elements, ...output.problems]) {
          expect(position).toBeGreaterThanOrEqual(1);
          expect(position).toBeLessThanOrEqual(text.length + 1);
        }
        if (state === 'read') expect(problems).toBe('');
        if (state === 'faulty') expect(problems).not.toBe('');
        if (state === 'unknown') expect(output.scheme).toBe('unknown');
      }),
      { numRuns: 10_000 },
    );
    // a wide bound, for a loaded machine: what is meant is that nothing hangs
    expect(slowest).toBeLessThan(500);
    expect((performance.now() - began) / 10_000).toBeLessThan(5);
  }, 120_000);

  test('the worst texts for the search of readings end soon', () => {
    for (const unit of ['91', '10', '21', '1021', '2110', '9110', '30', '9', '2', '1', '910', '102191']) {
      const plain = plainSeparators(unit.repeat(400).slice(0, 1000), 1);
      const start = performance.now();
      const { readings } = readingsWithout(plain, 2026);
      expect(performance.now() - start).toBeLessThan(500);
      expect(readings.length).toBeLessThanOrEqual(6);
    }
  });
});
