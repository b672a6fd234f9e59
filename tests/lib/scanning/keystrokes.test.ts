import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Keystroke } from '@/lib/scanning/decodeKey';
import { hear, SILENT, silence } from '@/lib/scanning/keystrokes';
import { UNTRIED_SCANNER } from '@/lib/scanning/scanner';
import { type Came, enter, NO_MODIFIER, play, strokes, tab } from './machines';
import { presses } from './presses';

const scanOf = (
  text: string,
  from: number,
  everyMs: number,
  end: 'enter' | 'tab' | 'none' = 'enter',
): Keystroke[] => {
  const sent = strokes(presses(text, 'us') ?? [], 'us', { from, everyMs });
  const last = (sent.at(-1)?.at ?? 0) + everyMs;
  return end === 'none' ? sent : [...sent, (end === 'enter' ? enter : tab)(last)];
};
/** A person: keys at a pace of fingers. */
const typed = (text: string, from: number, everyMs = 90): Keystroke[] =>
  strokes(presses(text, 'us') ?? [], 'us', { from, everyMs });
const GTIN = '0109525702746335';

describe('a scan is told from typing', () => {
  test.each([
    // what, keys, in a field, what comes of them
    ['20 ms a character', scanOf(GTIN, 0, 20), false, { scans: [GTIN], typed: [], cut: [] }],
    ['1 ms a character', scanOf(GTIN, 0, 1), false, { scans: [GTIN], typed: [], cut: [] }],
    ['all at one moment', scanOf(GTIN, 0, 0), false, { scans: [GTIN], typed: [], cut: [] }],
    ['ended by Tab', scanOf(GTIN, 0, 10, 'tab'), true, { scans: [GTIN], typed: [], cut: [] }],
    ['ended by silence', scanOf(GTIN, 0, 10, 'none'), false, { scans: [GTIN], typed: [], cut: [] }],
    [
      'in a field, without an end: it may be typing',
      scanOf(GTIN, 0, 10, 'none'),
      true,
      { scans: [], typed: [...GTIN], cut: [] },
    ],
    [
      'typing in a field',
      [...typed('abcdef', 0), enter(600)],
      true,
      { scans: [], typed: [...'abcdef', 'Enter'], cut: [] },
    ],
    [
      'fast fingers, 60 ms',
      [...typed('abcdefgh', 0, 60), enter(480)],
      true,
      { scans: [], typed: [...'abcdefgh', 'Enter'], cut: [] },
    ],
    [
      'three quick keys and Enter',
      [...typed('123', 0, 10), enter(40)],
      true,
      { scans: [], typed: ['1', '2', '3', 'Enter'], cut: [] },
    ],
    ['Enter alone', [enter(0)], false, { scans: [], typed: ['Enter'], cut: [] }],
    ['a space alone', typed(' ', 0), false, { scans: [], typed: [' '], cut: [] }],
  ] as [string, Keystroke[], boolean, Came][])('%s', (_what, keys, inTextField, due) => {
    expect(play(keys, { inTextField })).toEqual(due);
  });

  test('two scans back to back are two, and a line feed after Enter is swallowed', () => {
    const first = scanOf('P0003103-9*1', 0, 1);
    const second = scanOf('SFS-03', (first.at(-1)?.at ?? 0) + 1, 1);
    const lineFeed = { ...NO_MODIFIER, code: 'KeyJ', key: 'j', ctrl: true, at: (second.at(-1)?.at ?? 0) + 1 };
    expect(play([...first, ...second, lineFeed])).toEqual({
      scans: ['P0003103-9*1', 'SFS-03'],
      typed: [],
      cut: [],
    });
  });

  test('an Enter that comes late after a scan ended by silence presses no button', () => {
    const keys = scanOf(GTIN, 0, 10, 'none');
    expect(play([...keys, enter((keys.at(-1)?.at ?? 0) + 120)])).toEqual({
      scans: [GTIN],
      typed: [],
      cut: [],
    });
  });

  test('once a scanner is known to end by Enter, a piece of a scan is no scan', () => {
    const setting = { ...UNTRIED_SCANNER, ends: 'enter' as const };
    expect(play(scanOf(GTIN, 0, 10, 'none'), { setting })).toEqual({ scans: [], typed: [], cut: [GTIN] });
  });

  test('a key held down is a person’s', () => {
    const keys = Array.from({ length: 8 }, (_, at) => ({
      ...NO_MODIFIER,
      code: 'KeyX',
      key: 'x',
      repeat: at > 0,
      at: at * 33,
    }));
    expect(play(keys, { inTextField: true }).typed).toEqual([...'xxxxxxxx']);
  });

  test('commands pass, and what was held before goes first', () => {
    const copy = { ...NO_MODIFIER, code: 'KeyC', key: 'c', ctrl: true, at: 20 };
    expect(play([...typed('a', 0), copy], { inTextField: true }).typed).toEqual(['a', 'c']);
    const back = { ...NO_MODIFIER, code: 'Backspace', key: 'Backspace', at: 10 };
    expect(play([...typed('a', 0), back], { inTextField: true }).typed).toEqual(['a', 'Backspace']);
  });

  test('keys told late still belong to their scan: the screen was busy in the middle of it', () => {
    const keys = scanOf(GTIN, 0, 10);
    let listening = SILENT;
    for (const key of keys.slice(0, 6)) listening = hear(listening, key, true, UNTRIED_SCANNER).listening;
    const early = silence(listening, 400, UNTRIED_SCANNER);
    expect(early?.doings).toEqual([{ kind: 'giveBack' }]);
    listening = early?.listening ?? SILENT;
    const doings = keys.slice(6).flatMap((key) => {
      const heard = hear(listening, key, true, UNTRIED_SCANNER);
      listening = heard.listening;
      return heard.doings;
    });
    expect(doings.filter(({ kind }) => kind === 'scan')).toEqual([{ kind: 'scan', text: GTIN }]);
  });
});

test('a scan without an end counts as whole only after a longer silence: its last keys may be told late', () => {
  let listening = SILENT;
  for (const key of scanOf(GTIN, 0, 10, 'none'))
    listening = hear(listening, key, false, UNTRIED_SCANNER).listening;
  const last = listening.burst?.lastAt ?? 0;
  expect(silence(listening, last + 290, UNTRIED_SCANNER)).toBeNull();
  expect(silence(listening, last + 301, UNTRIED_SCANNER)?.doings).toEqual([{ kind: 'scan', text: GTIN }]);
});

describe('the separator of GS1', () => {
  const before = presses('010952570274633510A1', 'us') ?? [];
  const after = presses('2142', 'us') ?? [];
  const around = (middle: Keystroke[]) => {
    const head = strokes(before, 'us', { from: 0, everyMs: 10 });
    const tail = strokes(after, 'us', { from: 400, everyMs: 10 }).map((key) => ({
      ...key,
      at: key.at - 190,
    }));
    return play([...head, ...middle, ...tail, enter(260)]).scans;
  };
  test.each([
    ['Ctrl and the place of ] on the US keyboard', { code: 'BracketRight', key: ']', ctrl: true }, '\u001d'],
    ['as the German computer tells it', { code: 'BracketRight', key: '+', ctrl: true }, '\u001d'],
    ['as the character itself, without a place', { code: '', key: '\u001d' }, '\u001d'],
  ])('%s', (_what, key, due) => {
    expect(around([{ ...NO_MODIFIER, ...key, at: 200 }])).toEqual([`010952570274633510A1${due}2142`]);
  });
  test('with the Ctrl key itself going down before', () => {
    const control = { ...NO_MODIFIER, code: 'ControlLeft', key: 'Control', ctrl: true, at: 198 };
    const bracket = { ...NO_MODIFIER, code: 'BracketRight', key: ']', ctrl: true, at: 200 };
    expect(around([control, bracket])).toEqual(['010952570274633510A1\u001d2142']);
  });
  test('written out', () => {
    expect(play(scanOf('010952570274633510A1{GS}2142', 0, 10)).scans).toEqual([
      '010952570274633510A1{GS}2142',
    ]);
  });
  test('first of all: FNC1 as some scanners send it', () => {
    expect(play(scanOf('\u001d0109525702746335', 0, 10)).scans).toEqual(['\u001d0109525702746335']);
  });
});

test('typing and scans in any order: every scan comes whole, every typed key stays typed', () => {
  const word = fc.string({ unit: fc.constantFrom(...'abcxyz019.-'), minLength: 1, maxLength: 6 });
  const code = fc.string({
    unit: fc.constantFrom(...'ABCabc0123456789-*+]{}/'),
    minLength: 4,
    maxLength: 40,
  });
  const part = fc.oneof(
    fc.record({
      kind: fc.constant('typed' as const),
      text: word,
      everyMs: fc.integer({ min: 55, max: 300 }),
    }),
    fc.record({ kind: fc.constant('scan' as const), text: code, everyMs: fc.integer({ min: 0, max: 45 }) }),
  );
  fc.assert(
    fc.property(
      fc.array(part, { minLength: 1, maxLength: 12 }),
      fc.integer({ min: 55, max: 400 }),
      fc.boolean(),
      (parts, pause, inTextField) => {
        let at = 0;
        const keys: Keystroke[] = [];
        for (const one of parts) {
          const made =
            one.kind === 'typed' ? typed(one.text, at, one.everyMs) : scanOf(one.text, at, one.everyMs);
          keys.push(...made);
          at = (made.at(-1)?.at ?? at) + pause;
        }
        const came = play(keys, { inTextField });
        expect(came.scans).toEqual(parts.filter(({ kind }) => kind === 'scan').map(({ text }) => text));
        expect(came.typed.join('')).toBe(
          parts
            .filter(({ kind }) => kind === 'typed')
            .map(({ text }) => text)
            .join(''),
        );
        expect(came.cut).toEqual([]);
      },
    ),
    { numRuns: 150 },
  );
});

test('a finger on the keyboard during a scan loses nothing: every key is in the scan, in order', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: GTIN.length }), fc.constantFrom('x', 'q', '7'), (place, stray) => {
      const keys = scanOf(GTIN, 0, 20);
      const at = (keys[place]?.at ?? 0) - 7;
      const all = [...keys, ...typed(stray, at)].sort((a, b) => a.at - b.at);
      const came = play(all);
      expect(came.scans.join('') + came.typed.join('')).toHaveLength(GTIN.length + 1);
    }),
  );
});
