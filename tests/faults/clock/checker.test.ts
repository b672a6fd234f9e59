import { expect, test } from 'vitest';
import { type ClockStep, clockFaults, orderFaults } from './checker';

const right: ClockStep = {
  name: 'as it is',
  isBehind: false,
  isPastUseBy: false,
  signIn: 200,
  scan: 200,
  receipt: { status: 201, text: '' },
  pages: [{ path: '/', status: 200 }],
  ready: 'well',
  doctor: { exit: 0, text: '' },
};
const behind: ClockStep = {
  ...right,
  isBehind: true,
  ready: 'wrong',
  doctor: { exit: 1, text: 'Clock (wrong): … it went back, or was ahead then.' },
};

test('a clock that is right is called right, one that is behind is said, and work goes on with both', () => {
  expect(clockFaults([right, behind])).toEqual([]);
  const past = { ...right, isPastUseBy: true, receipt: { status: 422, text: '"code":"past-use-by"' } };
  expect(clockFaults([past])).toEqual([]);
});

test.each([
  [right, { signIn: 401 }, /nobody could sign in/],
  [right, { scan: 500 }, /a scan was not taken/],
  [right, { isPastUseBy: true }, /past its use-by was received: 201/],
  [right, { receipt: { status: 422, text: 'x' } }, /not past its use-by was refused/],
  [right, { pages: [{ path: '/sets', status: 500 }] }, /\/sets was answered 500/],
  [right, { ready: 'wrong' }, /light is wrong/],
  [behind, { ready: 'well' }, /light is well/],
  [behind, { doctor: { exit: 0, text: '' } }, /doctor does not say it/],
])('a fault is found, %#', (step, change, fault) => {
  expect(clockFaults([{ ...step, ...change }]).join('\n')).toMatch(fault);
});

test('entries stand in the order of writing, each dated by the clock of its moment', () => {
  const entries = [
    { id: 'a', enteredAt: '2026-01-02' },
    { id: 'b', enteredAt: '2026-01-01' },
  ];
  const sent = [
    { id: 'a', from: '2026-01-02', until: '2026-01-03' },
    { id: 'b', from: '2026-01-01', until: '2026-01-01' },
  ];
  expect(orderFaults(entries, sent)).toEqual([]);
  expect(orderFaults([...entries].reverse(), sent).join()).toMatch(/not in the order/);
  expect(orderFaults(entries.slice(0, 1), sent).join()).toMatch(/not in the order.*b is dated/);
});
