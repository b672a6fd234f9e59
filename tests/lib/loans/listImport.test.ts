import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type KnownItem, readLoanList } from '@/lib/loans/listImport';
import { isJust, kindCodeOf, knownLines, tagOf } from '@/lib/loans/trayKind';

const CATALOGUE: KnownItem[] = [
  // GS1 General Specifications, prefix 952 for examples; check digits worked by weights 3 and 1
  { id: 'item_plate', code: 'SF-P35-08', gtin: '09521234500018', name: 'plate, 8 holes', implant: true },
  { id: 'item_driver', code: 'SF-D-T15', gtin: null, name: 'driver T15', implant: false },
];

const read = (text: string) => readLoanList(text, CATALOGUE);
const problemsOf = (text: string) => {
  const answer = read(text);
  return answer.ok ? [] : answer.problems.map(({ path, code }) => `${path.join(' ')} ${code}`.trim());
};

describe('a lender’s content list', () => {
  it('is matched by GTIN, else by code; what the catalogue does not have stays as it is written', () => {
    const answer = read(
      [
        'Tray;Code;GTIN;Description;Qty;Implant;Class',
        '1;;9521234500018;;2;;1',
        '1;sf-d-t15;;;1;no;2',
        '2;ZZ-9;;bone hook;1;;',
        ';;;;;;',
      ].join('\r\n'),
    );
    expect(answer).toEqual({
      ok: true,
      value: {
        trays: 2,
        pieces: 4,
        unknown: 1,
        lines: [
          {
            tray: 1,
            itemId: 'item_plate',
            code: null,
            gtin: '09521234500018',
            name: 'plate, 8 holes',
            quantity: 2,
            implant: true,
            mustHaveClass: 1,
          },
          {
            tray: 1,
            itemId: 'item_driver',
            code: 'sf-d-t15',
            gtin: null,
            name: 'driver T15',
            quantity: 1,
            implant: false,
            mustHaveClass: 2,
          },
          {
            tray: 2,
            itemId: null,
            code: 'ZZ-9',
            gtin: null,
            name: 'bone hook',
            quantity: 1,
            implant: null,
            mustHaveClass: null,
          },
        ],
      },
    });
  });

  it('says every fault of every cell at once, at its line and column, and takes nothing', () => {
    expect(
      problemsOf(
        [
          'tray,code,gtin,name,quantity,implant,class',
          '1,SF-D-T15,09521234500018,,1,,',
          '0,X,,thing,none,perhaps,9',
          '1,,0952123450001,,1,,',
          '1,SF-D-T15,,,1,yes,',
          '1,,123,stray,1,,',
        ].join('\n'),
      ),
    ).toEqual([
      '2 gtin two-items',
      '3 implant not-yes-or-no',
      '3 tray not-a-number',
      '3 quantity not-a-number',
      '3 mustHaveClass not-a-number',
      '4 gtin check-digit',
      '4 name no-name',
      '5 implant not-as-known',
      '6 gtin not-a-gtin',
    ]);
  });

  it.each([
    ['', 'empty'],
    ['name;size\nplate;8', 'no-heading'],
    ['name;quantity\n', 'no-lines'],
    ['name;quantity\n"plate;1', '2 quote-open'],
    ['name;quantity;name\nplate;1;plate', '1 name heading-twice'],
    ['tray;name;quantity\n1;plate;1\n3;plate;1', 'tray-without-lines'],
  ])('%j is refused: %s', (text, problem) => {
    expect(problemsOf(text)).toEqual([problem]);
  });

  it('whatever is typed into its cells, it answers and never throws; what it takes is within bounds', () => {
    const cell = fc.oneof(
      fc.string({ maxLength: 30 }),
      fc.constantFrom('1', '2', 'SF-D-T15', '09521234500018', 'yes', ''),
    );
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 5, maxLength: 5 }), { minLength: 1, maxLength: 6 }),
        (rows) => {
          const quoted = rows.map((row) => row.map((text) => `"${text.replaceAll('"', '""')}"`).join(','));
          const answer = read(['tray,code,gtin,name,quantity', ...quoted].join('\n'));
          if (!answer.ok) {
            expect(answer.problems.length).toBeGreaterThan(0);
            return;
          }
          for (const line of answer.value.lines) {
            expect(line.quantity).toBeGreaterThanOrEqual(1);
            expect(line.tray).toBeLessThanOrEqual(answer.value.trays);
            expect(line.name).not.toBe('');
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('the kind of a tray', () => {
  it('a must-have class nobody states is the strictest, and lines of one item are one line', () => {
    expect(
      knownLines([
        { itemId: 'item_a', quantity: 2, mustHaveClass: 3 },
        { itemId: 'item_a', quantity: 1, mustHaveClass: null },
        { itemId: null, quantity: 5, mustHaveClass: 4 },
        { itemId: 'item_b', quantity: 1, mustHaveClass: 4 },
      ]),
    ).toEqual([
      { itemId: 'item_a', quantity: 3, mustHaveClass: 1 },
      { itemId: 'item_b', quantity: 1, mustHaveClass: 4 },
    ]);
  });

  it('is one of ours only where it holds just that: every item, as many, and nothing unknown', () => {
    const version = [
      { itemId: 'item_a', expected: 2 },
      { itemId: 'item_a', expected: 1 },
      { itemId: 'item_b', expected: 1 },
    ];
    const a = { itemId: 'item_a', quantity: 3, mustHaveClass: null };
    const b = { itemId: 'item_b', quantity: 1, mustHaveClass: null };
    expect(isJust([a, b], version)).toBe(true);
    expect(isJust([a], version)).toBe(false);
    expect(isJust([{ ...a, quantity: 2 }, b], version)).toBe(false);
    expect(isJust([a, b, { itemId: null, quantity: 1, mustHaveClass: null }], version)).toBe(false);
  });

  it('has a tag and a code from the loan’s number', () => {
    expect(tagOf('LN-0012', 2)).toBe('LN-0012-B');
    expect(kindCodeOf('LN-0012', 1)).toBe('LN0012A');
  });
});
