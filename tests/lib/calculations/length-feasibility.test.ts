import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  lengthFeasibility,
  lengthFeasibilityInput,
} from '@/lib/calculations/lengthFeasibility/lengthFeasibility';
import examples from '../../fixtures/calculation-examples.json';
import { canServe, family } from './lengthCases';

const input = (holes: Record<string, readonly number[] | null>, stock: Record<number, number>) =>
  lengthFeasibilityInput.parse({
    holes: Object.entries(holes).map(([hole, acceptedMm]) => ({ hole, family: 'f', acceptedMm })),
    families: [family('f', stock)],
  });

function answered(from: ReturnType<typeof input>) {
  const answer = lengthFeasibility(from);
  if (answer.outcome !== 'answered') throw new Error('not established');
  return answer.answer;
}

test('F1, the worked example: three of four filled, A, B and C are too many for 16 and 18', () => {
  const [f1] = examples['length-feasibility'];
  if (!f1) throw new Error('the fixture has no F1');
  const answer = answered(input(f1.holes, f1.stock as Record<number, number>));
  expect(answer).toMatchObject({ feasible: false, filled: f1.expect.filled, of: f1.expect.of });
  expect(answer.shortfalls).toHaveLength(1);
  expect(answer.shortfalls[0]).toMatchObject({
    holes: f1.expect.hall,
    lengthsMm: [16, 18],
    pieces: 2,
    sentence: 'A, B and C take only 16 or 18; there are two.',
  });
  expect(answer.shortfalls[0]?.fix.toLowerCase()).toBe(`${f1.expect.fix}.`);
});

const problem = fc.record({
  stock: fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 4, maxLength: 4 }),
  accepted: fc.array(fc.subarray([0, 1, 2, 3], { minLength: 1 }), { minLength: 1, maxLength: 6 }),
});
const made = [14, 16, 18, 20];
const asInput = ({ stock, accepted }: { stock: number[]; accepted: number[][] }) =>
  input(
    Object.fromEntries(accepted.map((lengths, at) => [`H${at}`, lengths.map((length) => made[length] ?? 0)])),
    Object.fromEntries(made.map((mm, at) => [mm, stock[at] ?? 0])),
  );

test('feasible exactly when trying every way finds one, and filled is the most that can be', () => {
  fc.assert(
    fc.property(problem, (one) => {
      const answer = answered(asInput(one));
      expect(answer.feasible).toBe(canServe(one.accepted, one.stock));
      const most = Math.max(
        ...Array.from({ length: 2 ** one.accepted.length }, (_, mask) => {
          const some = one.accepted.filter((_lengths, at) => (mask >> at) & 1);
          return canServe(some, one.stock) ? some.length : 0;
        }),
      );
      expect(answer.filled).toBe(most);
    }),
  );
});

test('no hole gets a length it does not take, and no piece is given twice', () => {
  fc.assert(
    fc.property(problem, (one) => {
      const { assignment } = answered(asInput(one));
      for (const [at, mm] of made.entries()) {
        expect(assignment.filter(({ lengthMm }) => lengthMm === mm).length).toBeLessThanOrEqual(
          one.stock[at] ?? 0,
        );
      }
      for (const [at, { lengthMm }] of assignment.entries()) {
        if (lengthMm !== null) expect(one.accepted[at]).toContain(made.indexOf(lengthMm));
      }
    }),
  );
});

test('each reason is true and has no hole too many, and one more of the first fix of each makes it feasible', () => {
  fc.assert(
    fc.property(problem, (one) => {
      const { shortfalls } = answered(asInput(one));
      const stock = [...one.stock];
      for (const { holes, pieces, lengthsMm, oneMoreOfMm } of shortfalls) {
        const group = holes.map((hole) => one.accepted[Number(hole.slice(1))] ?? []);
        const lengths = new Set(group.flat());
        expect([...lengths].map((length) => made[length]).sort()).toEqual([...lengthsMm].sort());
        expect([...lengths].reduce((sum, length) => sum + (stock[length] ?? 0), 0)).toBe(pieces);
        expect(holes.length).toBeGreaterThan(pieces);
        // without any one of them the rest can be served from what is there
        for (const left of group)
          expect(
            canServe(
              group.filter((other) => other !== left),
              stock,
            ),
          ).toBe(true);
        const length = made.indexOf(oneMoreOfMm[0] ?? 0);
        stock[length] = (stock[length] ?? 0) + 1;
      }
      expect(canServe(one.accepted, stock)).toBe(true);
    }),
  );
});

test('a length that is not made has no fix, and the other holes are judged all the same', () => {
  const answer = answered(input({ A: [19], B: [16], C: [16] }, { 16: 1 }));
  expect(answer.shortfalls.map(({ sentence }) => sentence)).toEqual([
    'A takes only 19, which is not among the lengths made.',
    'B and C take only 16; there is one.',
  ]);
});

test('what is not stated keeps it open, unless the rest already cannot be done', () => {
  expect(lengthFeasibility(input({ A: [16], B: null }, { 16: 1 }))).toMatchObject({
    outcome: 'notEstablished',
    missing: [{ path: ['holes', 1, 'acceptedMm'] }],
  });
  expect(answered(input({ A: [16], B: null }, { 16: 0 }))).toMatchObject({ feasible: false });
  const uncounted = lengthFeasibilityInput.parse({
    holes: [{ hole: 'A', family: 'f', acceptedMm: [16] }],
    families: [{ family: 'f', lengths: [{ lengthMm: 16, stock: null }] }],
  });
  expect(lengthFeasibility(uncounted)).toMatchObject({
    outcome: 'notEstablished',
    missing: [{ path: ['families', 0, 'lengths', 0, 'stock'] }],
  });
});
