import { expect, test } from 'vitest';
import { editionOf, momentWords, recordCode } from '@/lib/documents/edition';
import { denominatorFor } from '@/lib/documents/itemDrawing';

test('the hour of printing is that of the hospital’s clock, in summer time too', () => {
  expect(momentWords('2026-01-14T06:30:00Z')).toBe('14 January 2026, 06:30');
  // British Summer Time is an hour ahead of UTC from the last Sunday of March (The Summer Time Order 2002)
  expect(momentWords('2026-07-14T23:30:00Z')).toBe('15 July 2026, 00:30');
  expect(editionOf('3', { at: '2026-07-14T05:30:00Z', hospital: 'H', by: 'A' })).toEqual({
    version: '3',
    hospital: 'H',
    printedAt: '14 July 2026, 06:30',
    printedBy: 'A',
  });
});

test('a record code is internal information under AI 91, in UTC', () => {
  expect(recordCode('countSheet', 'SFS-01', 'V1-R4', '2026-01-14T06:30:12.345Z')).toEqual({
    elementString: '(91)CS/SFS-01/V1-R4/20260114T0630Z',
    text: 'CS/SFS-01/V1-R4/20260114T0630Z',
    number: null,
  });
  // the sheet's own number stands beside the code, not in it
  expect(recordCode('countSheet', 'SFS-01', 'V1-R4', '2026-01-14T06:30:12.345Z', 'NUMBER')).toEqual({
    elementString: '(91)CS/SFS-01/V1-R4/20260114T0630Z',
    text: 'CS/SFS-01/V1-R4/20260114T0630Z',
    number: 'NUMBER',
  });
});

test.each([
  ['an overlong code', 'X'.repeat(300)],
  ['letters outside the set', 'Łódź ☐ set'],
  ['brackets, which would begin another identifier', 'A(21)B'],
  ['a separator', 'A\u001dB'],
])('whatever the thing is called, the value keeps to what AI 91 may hold: %s', (_why, thing) => {
  const { text, elementString } = recordCode('pickList', thing, 'V2', '2026-01-14T06:30:00Z');
  // GS1 General Specifications: AI 91 to 99 hold X..90, of character set 82 (figure 7.11-1); from memory
  expect(text).toMatch(/^[!"%&'*+,\-./0-9:;<=>?A-Z_a-z]{1,90}$/);
  expect(elementString).toBe(`(91)${text}`);
  expect(text.endsWith('/V2/20260114T0630Z')).toBe(true);
});

test.each([
  { widthUm: 36_000, heightUm: 5_000, expected: 1, why: 'just fits at natural size' },
  { widthUm: 36_001, heightUm: 5_000, expected: 1.5, why: 'a micrometre too wide' },
  { widthUm: 10_000, heightUm: 40_000, expected: 4, why: 'too high' },
  { widthUm: 36_000_000, heightUm: 5_000, expected: 1000, why: 'longer than any usual scale takes' },
])('a drawing takes the largest scale at which it fits: $why', ({ widthUm, heightUm, expected }) => {
  expect(denominatorFor({ widthUm, heightUm }, 36, 11)).toBe(expected);
});
