import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const README = readFileSync('README.md', 'utf8');
const between = (from: string, to: string) => README.slice(README.indexOf(from), README.indexOf(to));

/** Each item of a list with all of its lines. */
const itemsOf = (part: string) =>
  part
    .split(/\n(?=- )/)
    .slice(1)
    .map((item) => item.trim());

const PROMISES = [
  ...itemsOf(between('## What it does\n', '\nThe demo, **Larkmoor')),
  ...itemsOf(between('## What it does not do\n', '## Cautions')),
];

describe('the README', () => {
  it('has its promises', () => {
    expect(PROMISES.length).toBeGreaterThan(25);
  });

  it.each(PROMISES.map((promise) => [promise.slice(0, 60), promise]))(
    '%s … names tests that are there',
    (_, promise) => {
      const [, named = ''] = /\*Tests:\* (.+)$/m.exec(promise) ?? [];
      const files = [...named.matchAll(/`([^`]+)`/g)].map(([, file = '']) => file);
      expect(files.length, promise).toBeGreaterThan(0);
      for (const file of files) {
        const path = join('tests', file);
        expect(existsSync(path), path).toBe(true);
        expect(readFileSync(path, 'utf8'), path).toMatch(/\b(?:test|it)(?:\.each)?\(/);
      }
    },
  );
});
