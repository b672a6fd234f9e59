import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  backupSettings,
  configurationProblems,
  configurationTable,
  VARIABLES,
} from '@/lib/running/configuration';
import {
  backupLight,
  clockLight,
  foundLight,
  headsLight,
  logLight,
  schemaLight,
  spaceLight,
  worst,
  writeLight,
} from '@/lib/running/lights';

test('the README has the table of variables as it is checked', () => {
  expect(readFileSync('README.md', 'utf8')).toContain(configurationTable());
});

test('every variable the program reads is in the table', () => {
  const known = VARIABLES.map(({ name }) => name as string);
  const folders = ['app', 'db', 'lib', 'scripts'];
  const read = new Set(
    folders.flatMap((folder) =>
      filesOf(folder).flatMap((file) =>
        [...readFileSync(file, 'utf8').matchAll(/\benv\.(KITWRIGHT_[A-Z_]+|PORT|HOST)\b/g)].map(
          ([, name]) => name ?? '',
        ),
      ),
    ),
  );
  const ofDevelopers = ['KITWRIGHT_DIST', 'KITWRIGHT_CHROMIUM', 'KITWRIGHT_REPORT'];
  expect([...read].filter((name) => !known.includes(name) && !ofDevelopers.includes(name))).toEqual([]);
  expect(read.size).toBeGreaterThan(8);
});

test('all that cannot be used is said at once, by name and with the way out, never with its value', () => {
  const problems = configurationProblems({
    PORT: '99999',
    KITWRIGHT_DEMO: 'perhaps',
    KITWRIGHT_BACKUP_AT: '25:00',
    KITWRIGHT_BACKUP_KEY: 'AGE-SECRET-KEY-1SECRET',
    KITWRIGHT_BACKUP_NIGHTS: '0',
    KITWRIGHT_BACKUPP: '/somewhere',
    PATH: '/usr/bin',
  });
  expect(problems.map(({ path: [name] }) => name)).toEqual([
    'PORT',
    'KITWRIGHT_DEMO',
    'KITWRIGHT_BACKUP_AT',
    'KITWRIGHT_BACKUP_NIGHTS',
    'KITWRIGHT_BACKUP_KEY',
    'KITWRIGHT_BACKUPP',
  ]);
  const said = problems.map(({ message }) => message).join(' ');
  expect(said).toMatch(/perhaps KITWRIGHT_BACKUPS? is meant|perhaps KITWRIGHT_BACKUP_/);
  expect(said).not.toContain('SECRET-KEY');
});

test('what is empty or left out is as if it were not there', () => {
  expect(configurationProblems({})).toEqual([]);
  expect(configurationProblems(Object.fromEntries(VARIABLES.map(({ name }) => [name, ' '])))).toEqual([]);
  expect(backupSettings({})).toEqual({ at: '02:30', nights: 14, months: 12, recipient: null });
});

test('no text in any variable throws', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...VARIABLES.map(({ name }) => name)),
      fc.string({ unit: 'binary' }),
      (name, text) => {
        for (const { message } of configurationProblems({ [name]: text })) expect(message).toContain(name);
      },
    ),
  );
});

const NOW = '2026-01-14T06:30:00.000Z';
const ago = (hours: number) => ({ madeAt: new Date(Date.parse(NOW) - hours * 3_600_000).toISOString() });
const at = { now: NOW, isDemo: false, isOn: true };

test('a backup is well for a night, to be looked at after it, and wrong after a week or without one', () => {
  expect([1, 26, 27, 168, 169].map((hours) => backupLight(ago(hours), at).state)).toEqual([
    'well',
    'well',
    'look',
    'look',
    'wrong',
  ]);
  expect(backupLight(null, at)).toMatchObject({ state: 'wrong', says: 'There is no proven backup.' });
  expect(backupLight(null, { ...at, isOn: false }).remedy).toMatch(/KITWRIGHT_BACKUP_AT=no/);
  expect(backupLight(null, { ...at, isDemo: true }).state).toBe('well');
});

test('space, log, clock, schema and writing have their lights', () => {
  expect([null, 50e6, 500e6, 5e9].map((free) => spaceLight('space', free).state)).toEqual([
    'unknown',
    'wrong',
    'look',
    'well',
  ]);
  expect(spaceLight('backupSpace', 5e9, 6e9).state).toBe('look');
  expect([0, 300e6].map((bytes) => logLight(bytes).state)).toEqual(['well', 'look']);
  expect(clockLight('2026-01-14T06:34:00.000Z', NOW).state).toBe('well');
  expect(clockLight('2026-01-14T06:36:00.000Z', NOW)).toMatchObject({ state: 'wrong' });
  expect(clockLight(null, NOW).state).toBe('well');
  const none = { missing: [], unknown: [], changed: [] };
  expect(schemaLight(none).state).toBe('well');
  expect(schemaLight({ ...none, missing: ['a'] }).state).toBe('look');
  expect(schemaLight({ ...none, unknown: ['a'] }).state).toBe('wrong');
  expect(schemaLight({ ...none, changed: ['a'] }).state).toBe('wrong');
  expect(writeLight(null, 2).says).toBe('A small write reached the disk in 2 ms.');
  expect(writeLight('the disk is full.', 0)).toMatchObject({ state: 'wrong' });
  expect(headsLight(null, true).state).toBe('look');
  expect(headsLight(null, false).state).toBe('well');
  expect(headsLight('gone', false).state).toBe('wrong');
  expect(foundLight('pages', ['a page is lost'], 'right')).toMatchObject({
    state: 'wrong',
    says: 'a page is lost',
  });
});

test('every light that is not well says what to do', () => {
  const lights = [
    backupLight(null, at),
    spaceLight('space', null),
    logLight(1e9),
    clockLight('2027-01-01T00:00:00.000Z', NOW),
    schemaLight({ missing: ['a'], unknown: [], changed: [] }),
    writeLight('full', 0),
    headsLight(null, true),
  ];
  for (const { state, remedy } of lights) {
    expect(state).not.toBe('well');
    expect(remedy).not.toBeNull();
  }
  expect(worst(lights)).toBe('wrong');
  expect(worst([])).toBe('well');
  expect(worst([spaceLight('space', null), logLight(1e9)])).toBe('unknown');
});

function filesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|tsx|mjs)$/.test(name))
    .map((name) => join(folder, name));
}
