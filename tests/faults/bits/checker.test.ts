import { expect, test } from 'vitest';
import { bitFaults, bitShares, type Damage } from './checker';

const found: Damage = {
  of: 'database',
  how: 'bit',
  place: 'row',
  verify: true,
  doctor: false,
  wordless: null,
  differs: [],
};

test('damage that is found, or changes nothing, or a value that no check rests on, is no fault of the program', () => {
  expect(
    bitFaults([found, { ...found, verify: false }, { ...found, verify: false, differs: ['items'] }]),
  ).toEqual([]);
});

test.each([
  ['a backup whose damage is not found', { of: 'backup' }, /of a backup was not found/],
  ['a sealed one', { of: 'sealed' }, /of a sealed backup was not found/],
  ['a description', { of: 'description' }, /of what describes a backup was not found/],
  ['a change in the ledger', { differs: ['items', 'ledger'] }, /a change in ledger was not found/],
  [
    'a database called whole that cannot be read',
    { differs: 'unreadable' },
    /cannot be read was called whole/,
  ],
  ['an end without words', { wordless: 'at Object.open' }, /without plain words: at Object/],
] as const)('%s is a fault', (_, change, fault) => {
  expect(bitFaults([found, { ...found, verify: false, ...change }]).join('\n')).toMatch(fault);
});

test('shares tell found, harmless and unnoticed apart', () => {
  const lines = bitShares([
    found,
    found,
    { ...found, verify: false, place: 'room' },
    { ...found, verify: false, differs: ['items'] },
  ]).join('\n');
  expect(lines).toMatch(/verify found 2 of 4 \(50 %\), doctor 0 of 4/);
  expect(lines).toMatch(/1 of 4 \(25 %\) changed nothing that is read/);
  expect(lines).toMatch(/1 of 4 \(25 %\) changed a value that no check rests on, most in items \(1\)/);
  expect(lines).toMatch(/room that holds nothing: found 0 of 1/);
});
