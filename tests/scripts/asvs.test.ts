import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { asvsPage, type Requirement } from '../../scripts/security/asvsPage.mjs';

const read = (path: string) => JSON.parse(readFileSync(path, 'utf8'));
// its `source` says which file of the standard the ids and levels are from
const { levels } = read('tests/published/asvs-5.0.0.json') as { levels: Record<string, string> };
const data = read('docs/asvs.json') as { standard: string; requirements: Requirement[] };
const official = Object.entries(levels).flatMap(([section, digits]) =>
  [...digits].map((level, at) => ({ id: `V${section}.${at + 1}`, level: Number(level) })),
);

test('the ids were copied whole: as many of each level as the standard has', () => {
  // OWASP ASVS 5.0.0: 345 requirements, 70 of level 1, 183 of level 2, 92 of level 3; from memory of its release notes
  expect(official).toHaveLength(345);
  expect([1, 2, 3].map((level) => official.filter((one) => one.level === level).length)).toEqual([
    70, 183, 92,
  ]);
});

test('every requirement of level 1 and 2 stands there once, with its level, and none that is not one', () => {
  const expected = official.filter(({ level }) => level < 3);
  expect(data.requirements.map(({ id, level }) => ({ id, level }))).toEqual(expected);
});

test('each says how it stands, and each test and place it names is there', () => {
  const missing: string[] = [];
  for (const { id, how, says, asks, where } of data.requirements) {
    if (says.length < 4 || asks.length < 3) missing.push(`${id} says nothing`);
    if ((how === 'test' || how === 'proof') && where.length === 0) missing.push(`${id} names nothing`);
    if (how === 'test' && !where.some((one) => one.startsWith('tests/'))) missing.push(`${id} names no test`);
    for (const one of where) {
      const [path = '', title] = one.split(' | ');
      if (!existsSync(path)) missing.push(`${id}: there is no ${path}`);
      else if (title !== undefined && !readFileSync(path, 'utf8').includes(title))
        missing.push(`${id}: ${path} has no “${title}”`);
    }
  }
  expect(missing).toEqual([]);
});

test('the page is what its data makes', () => {
  expect(readFileSync('docs/asvs.md', 'utf8')).toBe(asvsPage(data));
});
