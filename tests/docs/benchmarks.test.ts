import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

test('every bench is explained, and nothing else', () => {
  const benches = readdirSync('tests/bench')
    .filter((file) => readFileIfBench(file))
    .map((file) => file.replace(/\.ts$/, ''));
  const explained = [...readFileSync('docs/benchmarks.md', 'utf8').matchAll(/^\| `([a-z-]+)` \|/gm)].map(
    ([, name]) => name,
  );
  expect(explained.toSorted()).toEqual(benches.toSorted());
  expect(benches.length).toBeGreaterThan(10);
});

const readFileIfBench = (file: string) =>
  file.endsWith('.ts') &&
  /export (?:async )?function bench\(/.test(readFileSync(`tests/bench/${file}`, 'utf8'));
