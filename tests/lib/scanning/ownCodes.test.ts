import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { packNumber, packNumberOf } from '@/lib/packs/packNumber';
import { newBadgeCode } from '@/lib/people/badge';
import { ownCode, packLabelText, placeText, stockText } from '@/lib/scanning/ownCodes';
import { namesPerson } from '@/lib/scanning/personCode';
import { show } from '../calculations/identifier/show';

const pack = packNumber.parse(packNumberOf(1234));

describe('codes of our own', () => {
  test('say what they name, whatever mark the scanner put before them', () => {
    for (const mark of ['', ']d1', ']C0', ']Q1']) {
      expect(ownCode(mark + packLabelText(pack, 2))).toEqual({ kind: 'pack', number: pack, copy: 2 });
      expect(ownCode(mark + placeText('place_store-a'))).toEqual({ kind: 'place', placeId: 'place_store-a' });
      expect(ownCode(mark + stockText('stock_demo-001'))).toEqual({
        kind: 'stock',
        stockId: 'stock_demo-001',
      });
      expect(ownCode(`${mark}SFS-03`)).toEqual({ kind: 'name', name: 'SFS-03' });
    }
  });

  test('a pack number with a wrong check digit is none', () => {
    const wrong = `${pack.slice(0, -1)}${(Number(pack.at(-1)) + 1) % 10}`;
    expect(ownCode(`${wrong}*1`)).toEqual({ kind: 'name', name: `${wrong}*1` });
  });

  test('no code of ours is one of GS1, HIBC or ICCBBA', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e9 }),
        fc.integer({ min: 1, max: 99 }),
        fc.uuid(),
        (number, copy, id) => {
          for (const text of [
            packLabelText(packNumber.parse(packNumberOf(number)), copy),
            placeText(`place_${id}`),
            stockText(`stock_${id}`),
          ])
            expect(show(text).state).toBe('unknown');
        },
      ),
    );
  });
});

describe('what names a person is told before anything is kept', () => {
  const named = (text: string) => namesPerson(text, show(text).output as Parameters<typeof namesPerson>[1]);
  // GS1 General Specifications: (8018) GSRN of the recipient, (8017) of the provider; the number is invented, check digit by rule
  const gsrn = '952123456789012348';
  test.each([
    ['a badge', newBadgeCode(new Uint8Array(26).fill(7)), 'badge'],
    ['a badge after a mark', `]C0${newBadgeCode(new Uint8Array(26).fill(9))}`, 'badge'],
    ['a piece of a badge', 'KWBADGE0123', 'badge'],
    ['a wristband', `]d28018${gsrn}`, 'patient'],
    ['a wristband, bracketed', `(8018)${gsrn}`, 'patient'],
    ['a wristband with a wrong digit', '8018952123456789012341', 'patient'],
    ['a wristband as a link', `https://id.example.org/8018/${gsrn}`, 'patient'],
    ['a carer’s number', `]d28017${gsrn}`, 'patient'],
    // NHS Data Dictionary, NHS NUMBER: modulus 11; 943 476 5919 is its worked example
    ['a national number', '9434765919', 'patient'],
    ['an item', ']d20109525702746335', null],
    ['a pack', packLabelText(pack, 1), null],
    ['any text', 'hello', null],
  ] as const)('%s', (_what, text, due) => expect(named(text)).toBe(due));
});
