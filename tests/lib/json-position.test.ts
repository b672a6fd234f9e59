import fc from 'fast-check';
import { expect, test } from 'vitest';
import { locateJsonProblem } from '@/lib/json/locateJsonProblem';

test.each([
  ['', 1, 1, 'the text ends where a value is needed'],
  ['{"a": 1,}', 1, 9, 'a name in double quotes'],
  ['{\n  "a": 1\n  "b": 2\n}', 3, 3, 'where "," or "}" is needed'],
  ["{'a': 1}", 1, 2, 'a name in double quotes'],
  ['[1, 2', 1, 6, 'the text ends where "," or "]" is needed'],
  ['{"a" 1}', 1, 6, 'where ":" is needed'],
  ['[1] x', 1, 5, 'after the end of the value'],
  ['"line\nbreak"', 1, 6, 'inside a string'],
  ['[NaN]', 1, 2, 'where a value is needed'],
  ['[01]', 1, 3, 'where "," or "]" is needed'],
  ['"\\x"', 1, 2, 'inside a string'],
])('%j stops being JSON at line %d, column %d', (text, line, column, reason) => {
  expect(locateJsonProblem(text)).toMatchObject({ line, column, reason: expect.stringContaining(reason) });
  expect(() => JSON.parse(text)).toThrow();
});

test('whatever JSON.stringify writes is JSON', () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.constantFrom(undefined, 2), (value, indent) => {
      expect(locateJsonProblem(JSON.stringify(value, null, indent))).toBeNull();
    }),
  );
});

// The judge is the engine's own JSON.parse (ECMA-404): both must agree on every damaged text.
test('agrees with JSON.parse on texts with one character changed, removed or added', () => {
  const damage = fc.record({
    value: fc.jsonValue(),
    where: fc.double({ min: 0, max: 1, noNaN: true }),
    remove: fc.nat({ max: 1 }),
    add: fc.constantFrom('', ',', '"', '{', ']', '0', '-', '.', 'e', '\\', ' ', '\n', 'u', ':', '\u0001'),
  });
  fc.assert(
    fc.property(damage, ({ value, where, remove, add }) => {
      const text = JSON.stringify(value);
      const at = Math.floor(where * text.length);
      const damaged = text.slice(0, at) + add + text.slice(at + remove);
      let parses = true;
      try {
        JSON.parse(damaged);
      } catch {
        parses = false;
      }
      expect(locateJsonProblem(damaged) === null, damaged).toBe(parses);
    }),
    { numRuns: 2000 },
  );
});
