import { expect, test } from 'vitest';
import { type Killed, migrationFaults, type Standing } from './checker';

const old: Standing = { migrations: ['1'], schema: ['a'], rows: new Map([['t', 'x']]), damage: [] };
const present: Standing = {
  migrations: ['1', '2', '3'],
  schema: ['a', 'b'],
  rows: new Map([
    ['t', 'y'],
    ['settings', 'now'],
  ]),
  damage: [],
};
const sound: Killed = {
  before: old,
  left: old,
  after: present,
  unharmed: present,
  fresh: present.schema,
  ofTheMoment: new Set(['settings']),
  litter: [],
};

test('a kill leaves the old or the new, and the next start comes where an unharmed one comes', () => {
  expect(migrationFaults(sound)).toEqual([]);
  expect(migrationFaults({ ...sound, left: present })).toEqual([]);
  const later = new Map([...present.rows, ['settings', 'another moment']]);
  expect(migrationFaults({ ...sound, after: { ...present, rows: later } })).toEqual([]);
});

test.each([
  ['half of the migrations', { left: { ...old, migrations: ['1', '2'] } }, /left 2 of 3 migrations/],
  ['a schema in between', { left: { ...old, schema: ['b'] } }, /old database with another schema/],
  [
    'rows that changed',
    { left: { ...old, rows: new Map([['t', 'y']]) } },
    /changed rows of an old database: t/,
  ],
  ['damage', { left: { ...old, damage: ['page 3'] } }, /left it damaged: page 3/],
  ['damage later', { after: { ...present, damage: ['page 3'] } }, /damaged after the next start/],
  ['another schema in the end', { after: { ...present, schema: ['a'] } }, /not that of a new database/],
  [
    'other rows in the end',
    { after: { ...present, rows: new Map([['settings', 'now']]) } },
    /without the kill: t/,
  ],
  [
    'a table of the moment that is gone',
    { after: { ...present, rows: new Map([['t', 'y']]) } },
    /kill: settings/,
  ],
  ['a file left over', { litter: ['x.unfinished'] }, /left over: x.unfinished/],
])('%s is a fault', (_, change, fault) => {
  expect(migrationFaults({ ...sound, ...change }).join('\n')).toMatch(fault);
});
