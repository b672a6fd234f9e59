import { expect, test } from 'vitest';
import type { Measure } from '@/lib/documents/label';
import { fitLines, keptTogether, TIE, wrap } from '@/lib/documents/labelLines';

/** Every character half as wide as the type is high. */
const measure: Measure = (text) => text.length / 2;
const shown = (lines: readonly string[]) => lines.map((line) => line.replaceAll(TIE, ' '));

// a figure and its unit, and a quantity and what it counts, stay on one line: common practice, no source
test.each([
  ['Short: 3 × Locking screw 2.0 × 16 mm', 120, ['Short:', '3 × Locking', 'screw', '2.0 × 16 mm']],
  ['Hammer, 300 g', 60, ['Hammer,', '300 g']],
  ['3 generations', 60, ['3', 'generations']],
])('“%s” in %i dots', (text, room, lines) => {
  expect(shown(wrap(measure, text, 'regular', 20, room))).toEqual(lines);
});

test('a line of facts ends after a whole one, without the dot that sets it apart', () => {
  const facts = keptTogether(['Packed 26 Nov 2026, 01:39', 'by Wren Adeyemi', 'lot SE35-0712', '30 g']);
  const asked = { text: facts, weight: 'regular' as const, sizes: [16], room: 400, most: 3 };
  const { lines, cut } = fitLines(measure, asked);
  expect(shown(lines)).toEqual(['Packed 26 Nov 2026, 01:39 · by Wren Adeyemi', 'lot SE35-0712 · 30 g']);
  expect(cut).toBe(false);
});

test('words kept together part before anything is left out; what does not fit even so is cut and said to be', () => {
  const text = keptTogether(['by somebody of a long name']);
  const asked = { text, weight: 'regular' as const, sizes: [20, 16], room: 100, most: 3 };
  expect(shown(fitLines(measure, asked).lines)).toEqual(['by somebody', 'of a long', 'name']);
  expect(fitLines(measure, asked).cut).toBe(false);
  const tight = fitLines(measure, { ...asked, most: 2 });
  expect(tight).toMatchObject({ lines: ['by somebody', 'of a lon…'], cut: true });
});
