import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LAYOUTS, layoutOf } from '@/lib/scanning/layouts';
import { UNTRIED_SCANNER } from '@/lib/scanning/scanner';
import published from '../../fixtures/keyboard-layouts.json';
import { COMPUTERS, enter, play, strokes, tab } from './machines';
import { presses } from './presses';

// Source: xkeyboard-config, symbols of the layouts named (tests/fixtures/keyboard-layouts.json). Windows, whose keyboards
// scanners pretend to be, makes two keys of the French keyboard wait for the next one where XKB does not (from memory).
const WAITS_ON_WINDOWS = new Set(['french altGr Digit2', 'french altGr Digit7']);

describe('the layouts a scanner can be set to are those of the keyboards of that name', () => {
  test.each(LAYOUTS)('%s', (name) => {
    const table = published.layouts[name] as Record<string, string[]>;
    let compared = 0;
    for (const [at, level] of (['plain', 'shift', 'altGr'] as const).entries()) {
      for (const [code, written] of layoutOf(name)[level]) {
        const due = table[code]?.[at];
        // the key beside the left Shift is missing on some keyboards, and XKB leaves rarer signs to its own names
        if (!due || code === 'IntlBackslash') continue;
        const where = `${name} ${level} ${code}`;
        if (WAITS_ON_WINDOWS.has(where)) expect(written, where).toEqual({ character: due, dead: true });
        else {
          const dead = due.startsWith('Dead ');
          expect(written, where).toEqual({ character: dead ? due.slice(5) : due, dead });
        }
        compared += 1;
      }
    }
    expect(compared).toBeGreaterThan(90);
  });

  test.each(LAYOUTS)('%s can send every printable character of ASCII', (name) => {
    const all = Array.from({ length: 95 }, (_, at) => String.fromCharCode(32 + at)).join('');
    expect(presses(all, name)).not.toBeNull();
  });
});

// GS1 General Specifications: what a symbology identifier, FNC1 as GS, both cases and the marks of HIBC look like in a scan
const CODES = [
  ']d20109525702746335' + '172806301' + '0Ab-9z/Y_"q{\u001d21SN;w:M(7)',
  ']C1010952570274633510aQwZyMm\u001d2142',
  '+A99912345/$$52001510X3',
  'P0003103-9*2',
  'https://id.example.org/01/09525702746335/10/aB?17=280630&x=~',
];

describe('five computers, with Caps Lock and without, do not damage what a scanner sends', () => {
  const five = ['us', 'uk', 'german', 'french', 'swedish', 'dvorak'] as const;
  expect(five.every((name) => COMPUTERS.includes(name))).toBe(true);
  const table = LAYOUTS.flatMap((scanner) =>
    five.flatMap((computer) => [false, true].map((capsLock) => ({ scanner, computer, capsLock }))),
  );
  test.each(table)(
    'scanner $scanner, computer $computer, Caps Lock $capsLock',
    ({ scanner, computer, capsLock }) => {
      const setting = { ...UNTRIED_SCANNER, layout: scanner };
      for (const code of CODES) {
        const keys = presses(code, scanner);
        if (!keys) throw new Error(`${scanner} cannot send ${code}`);
        const sent = strokes(keys, computer, { from: 1000, everyMs: 20, capsLock });
        const end = enter((sent.at(-1)?.at ?? 0) + 20);
        for (const inTextField of [false, true]) {
          expect(play([...sent, end], { inTextField, setting })).toEqual({
            scans: [code],
            typed: [],
            cut: [],
          });
        }
      }
    },
  );

  test('any printable text comes out as it was sent', () => {
    fc.assert(
      fc.property(
        fc.string({
          unit: fc.integer({ min: 33, max: 126 }).map((n) => String.fromCharCode(n)),
          minLength: 4,
          maxLength: 60,
        }),
        fc.constantFrom(...LAYOUTS),
        fc.constantFrom(...COMPUTERS),
        fc.boolean(),
        fc.integer({ min: 1, max: 30 }),
        fc.constantFrom(enter, tab),
        (text, scanner, computer, capsLock, everyMs, ends) => {
          const keys = presses(text, scanner) ?? [];
          const sent = strokes(keys, computer, { from: 50, everyMs, capsLock });
          const came = play([...sent, ends((sent.at(-1)?.at ?? 0) + everyMs)], {
            setting: { ...UNTRIED_SCANNER, layout: scanner },
          });
          expect(came).toEqual({ scans: [text], typed: [], cut: [] });
        },
      ),
      { numRuns: 200 },
    );
  });

  test('a scanner that turns letters round while Caps Lock is on is understood once that is known', () => {
    const text = 'P0003103-9*2 aBc';
    const keys = (presses(text, 'us') ?? []).map((key) =>
      key.code.startsWith('Key')
        ? { ...key, level: key.level === 'shift' ? ('plain' as const) : ('shift' as const) }
        : key,
    );
    const sent = strokes(keys, 'us', { from: 0, everyMs: 5, capsLock: true });
    const setting = { ...UNTRIED_SCANNER, minds: 'capsLock' as const };
    expect(play([...sent, enter(sent.length * 5)], { setting }).scans).toEqual([text]);
    expect(play([...sent, enter(sent.length * 5)]).scans).toEqual(['p0003103-9*2 AbC']);
  });
});
