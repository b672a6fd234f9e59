import { describe, expect, test } from 'vitest';
import { lineModules, matrixModules } from '@/app/scan/set-up/symbols';
import type { Keystroke } from '@/lib/scanning/decodeKey';
import { LAYOUTS } from '@/lib/scanning/layouts';
import { TRIAL_TEXTS, tryScanner } from '@/lib/scanning/setUp';
import { scan as decode } from '../../pdf/scan';
import { enter, strokes, tab } from './machines';
import { presses } from './presses';

const GS = '\u001d';
const AT = '2026-01-14T06:30:00.000Z';

/** What a scanner of that layout sends for a text, on a German computer with Caps Lock as given. */
function sent(text: string, layout: (typeof LAYOUTS)[number], everyMs = 8, capsLock = false): Keystroke[] {
  const keys = presses(text, layout);
  if (!keys) throw new Error(`${layout} cannot send it`);
  return strokes(keys, 'german', { from: 100, everyMs, capsLock });
}
const lastAt = (keys: Keystroke[]) => keys.at(-1)?.at ?? 0;

describe('trying a scanner out', () => {
  const table = LAYOUTS.flatMap((layout) =>
    (['matrix', 'line'] as const).map((symbol) => ({ layout, symbol })),
  );
  test.each(table)('finds the layout: $layout, $symbol', ({ layout, symbol }) => {
    const keys = sent(`]d2${TRIAL_TEXTS[symbol]}`, layout);
    expect(tryScanner([...keys, enter(lastAt(keys) + 8)], AT)).toMatchObject({
      outcome: 'understood',
      symbol,
      separators: 'character',
      mark: ']d2',
      everyMs: 8,
      setting: { layout, ends: 'enter', separators: 'sent', symbology: 'sent', gapMs: 50, triedAt: AT },
    });
  });

  test.each([
    ['the separator lost', TRIAL_TEXTS.matrix.replace(GS, ''), 'lost', 'mayBeLost'],
    ['the separator written out', TRIAL_TEXTS.matrix.replace(GS, '{GS}'), 'written', 'sent'],
    ['FNC1 in the first place sent too', GS + TRIAL_TEXTS.matrix, 'character', 'sent'],
  ])('%s', (_what, text, separators, kept) => {
    const keys = sent(text, 'us');
    expect(tryScanner([...keys, tab(lastAt(keys) + 8)], AT)).toMatchObject({
      outcome: 'understood',
      separators,
      mark: null,
      setting: { ends: 'tab', separators: kept, symbology: 'unknown' },
    });
  });

  test('a slow scanner is given longer, and one without an end is told so', () =>
    expect(tryScanner(sent(TRIAL_TEXTS.line, 'us', 80), AT)).toMatchObject({
      setting: { gapMs: 120, ends: 'silence' },
    }));

  test('a scanner that turns letters round while Caps Lock is on is found out with it on', () => {
    const turned = [...TRIAL_TEXTS.matrix].map((c) =>
      c === c.toUpperCase() ? c.toLowerCase() : c.toUpperCase(),
    );
    expect(tryScanner(sent(turned.join(''), 'us', 8, true), AT)).toMatchObject({
      capsLock: true,
      setting: { layout: 'us', minds: 'capsLock' },
    });
  });

  test('keys that give neither symbol are not understood, and the nearest is shown', () =>
    expect(tryScanner(sent('something else', 'us'), AT)).toMatchObject({
      outcome: 'notUnderstood',
      keys: 14,
    }));
});

test('the symbols on the page hold those texts, with the mark of GS1: read by ZXing', async () => {
  const { columns, rows, dark } = matrixModules(TRIAL_TEXTS.matrix);
  const [module, quiet] = [6, 4];
  const [width, height] = [(columns + 2 * quiet) * module, (rows + 2 * quiet) * module];
  const greys = new Uint8ClampedArray(width * height).fill(255);
  for (const { x, y } of dark)
    for (let row = 0; row < module; row += 1)
      greys.fill(
        0,
        ((y + quiet) * module + row) * width + (x + quiet) * module,
        ((y + quiet) * module + row) * width + (x + quiet + 1) * module,
      );
  const [read] = await decode({ width, height, greys } as unknown as Parameters<typeof decode>[0]);
  expect(read?.symbologyIdentifier).toBe(']d2');
  expect(new TextDecoder('latin1').decode(read?.bytes)).toBe(TRIAL_TEXTS.matrix);

  // the line is drawn by the same package in the same way; its bars begin and end with one
  expect(lineModules(TRIAL_TEXTS.line).widths.length % 2).toBe(1);
});
