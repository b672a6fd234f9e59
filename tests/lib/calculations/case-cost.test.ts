import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { caseCost } from '@/lib/calculations/caseCost/caseCost';
import { caseCostInput } from '@/lib/calculations/caseCost/schema';
import { writePence } from '@/lib/quantities/money';

/** Invented cases, worked by hand and recomputed independently; see the file. */
const [P1] = JSON.parse(readFileSync('tests/fixtures/calculation-examples.json', 'utf8'))['case-cost'];

const said = (input: Record<string, unknown>) => caseCost(caseCostInput.parse(input));
function answerOf(input: Record<string, unknown>) {
  const found = said(input);
  if (found.outcome !== 'answered') throw new Error(JSON.stringify(found.missing));
  return found.answer;
}

const CASE = {
  implanted: [
    { item: 'plate', unitPence: P1.implantedPence.plate },
    // "4 x 1200 + 2 x 3800"
    ...(P1.implantedPence.screws as string).split(' + ').map((part, at) => {
      const [quantity, unitPence] = part.split(' x ').map(Number);
      return { item: `screw ${at}`, quantity, unitPence };
    }),
  ],
  wasted: (P1.openedNotImplantedPence as number[]).map((unitPence, at) => ({
    item: `opened ${at}`,
    unitPence,
  })),
  trays: [{ item: 'set', quantity: P1.trays.count, unitPence: P1.trays.pence }],
  pouches: [{ item: 'pouch', unitPence: P1.pouchPence }],
  singleUse: [{ item: 'drapes', unitPence: P1.singleUsePence }],
};

describe('worked example P1', () => {
  it('implanted, waste apart with its share, and the whole', () => {
    const { implanted, waste, wasteShareOfOpened, total } = P1.expect;
    const found = answerOf(CASE);
    expect(found.implanted.pence).toBe(implanted);
    expect(found.wasted.pence).toBe(waste);
    expect(found.wasteShare).toBeCloseTo(wasteShareOfOpened, 3);
    expect(found.totalPence).toBe(total);
  });

  it('the share is of what it says it is of', () => {
    const { waste, total } = P1.expect;
    expect(answerOf({ ...CASE, wasteShareOf: 'total' }).wasteShare).toBeCloseTo(waste / total, 12);
    expect(answerOf({}).wasteShare).toBeNull();
  });
});

describe('a price nobody knows', () => {
  it('is never nothing: what is known is the least it can be', () => {
    const found = said({ ...CASE, loans: [{ item: 'loan', unitPence: null }] });
    expect(found).toMatchObject({
      outcome: 'notEstablished',
      missing: [{ path: ['loans', 0, 'unitPence'] }],
      known: { totalPence: P1.expect.total, loans: { pence: 0, unknown: 1 } },
    });
    // waste over what was opened does not rest on the loan; over the whole it does
    if (found.outcome !== 'notEstablished') throw new Error('one is missing');
    expect(found.known?.wasteShare).toBeCloseTo(P1.expect.wasteShareOfOpened, 3);
    const whole = said({ ...CASE, wasteShareOf: 'total', loans: [{ item: 'loan', unitPence: null }] });
    expect(whole).toMatchObject({ known: { wasteShare: null } });
  });
});

it('the parts make up the whole, the reasons make up the waste, and no order matters', () => {
  const lines = fc.array(
    fc.record({
      item: fc.constantFrom('a', 'b'),
      quantity: fc.integer({ min: 1, max: 9 }),
      unitPence: fc.option(fc.integer({ min: 0, max: 100_000 })),
    }),
    { maxLength: 6 },
  );
  const why = fc.constantFrom('openedNotImplanted', 'droppedOrDamaged', 'pastUseBy', 'other');
  const wasted = lines.chain((all) =>
    fc.tuple(...all.map((one) => why.map((reason) => ({ ...one, why: reason })))),
  );
  const input = fc.record({
    implanted: lines,
    wasted,
    trays: lines,
    pouches: lines,
    singleUse: lines,
    loans: lines,
  });
  fc.assert(
    fc.property(input, (raw) => {
      const known = (of: Record<string, unknown>) => {
        const found = said(of);
        const answer = found.outcome === 'answered' ? found.answer : found.known;
        if (!answer) throw new Error('something is always known');
        return answer;
      };
      const found = known(raw);
      const parts = [found.implanted, found.wasted, found.trays, found.pouches, found.singleUse, found.loans];
      expect(parts.reduce((all, one) => all + one.pence, 0)).toBe(found.totalPence);
      expect(found.wasteBy.reduce((all, one) => all + one.pence, 0)).toBe(found.wasted.pence);
      const unpriced = Object.values(raw)
        .flat()
        .filter((one) => one.unitPence === null);
      expect(said(raw).outcome).toBe(unpriced.length === 0 ? 'answered' : 'notEstablished');
      const reversed = Object.fromEntries(
        Object.entries(raw).map(([part, all]) => [part, [...all].reverse()]),
      );
      expect(known(reversed).totalPence).toBe(found.totalPence);
      expect(known(reversed).wasteShare).toBe(found.wasteShare);
    }),
  );
});

it('money is written in whole pence, with its thousands apart', () => {
  expect([0, 5, 84, 123_450, 100_000_000, -84].map(writePence)).toEqual([
    '£0.00',
    '£0.05',
    '£0.84',
    '£1,234.50',
    '£1,000,000.00',
    '−£0.84',
  ]);
});
