import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BacktestQuestion, backtest, type Replayed } from '@/lib/restock/backtest';

const RULE = {
  leadDays: 7,
  leadSdDays: 0,
  reviewDays: 7,
  service: 0.95,
  packOf: 1,
  shelfLifeDays: null,
  sureOfUse: 0.9,
  alpha: 0.1,
};

const use = (day: number, pieces = 1, bookedDaysBefore: number | null = null) => ({
  day,
  pieces,
  bookedDaysBefore,
});

const questions: fc.Arbitrary<BacktestQuestion> = fc
  .record({
    uses: fc.array(
      fc.record({
        day: fc.integer({ min: 0, max: 399 }),
        pieces: fc.integer({ min: 1, max: 4 }),
        bookedDaysBefore: fc.option(fc.integer({ min: 0, max: 30 })),
      }),
      { maxLength: 150 },
    ),
    warmUpDays: fc.integer({ min: 0, max: 200 }),
    leadDays: fc.integer({ min: 0, max: 40 }),
    reviewDays: fc.integer({ min: 1, max: 28 }),
    service: fc.constantFrom(0.8, 0.95, 0.99),
    packOf: fc.integer({ min: 1, max: 6 }),
    shelfLifeDays: fc.option(fc.integer({ min: 5, max: 200 })),
    par: fc.integer({ min: 0, max: 30 }),
  })
  .map(({ uses, warmUpDays, par, ...rule }) => ({
    record: { days: 400, uses },
    warmUpDays,
    par,
    rule: { ...RULE, ...rule },
  }));

const ways = (question: BacktestQuestion): Replayed[] => {
  const { reorder, par } = backtest(question);
  return [reorder, par];
};

describe('whatever is replayed', () => {
  it('no piece is lost or made', () => {
    fc.assert(
      fc.property(questions, (question) => {
        for (const way of ways(question)) {
          expect(way.begunWith + way.received).toBe(way.served + way.pastUseBy + way.left);
          expect(way.received).toBeLessThanOrEqual(way.ordered);
          expect(way.ordered % question.rule.packOf).toBe(0);
        }
      }),
    );
  });

  it('both ways are asked the same, and serve no more than that', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const [reorder, par] = ways(question);
        const asked = question.record.uses.filter(({ day }) => day >= question.warmUpDays);
        for (const way of [reorder, par]) {
          expect(way?.asked).toBe(asked.reduce((sum, { pieces }) => sum + pieces, 0));
          expect(way?.cases).toBe(asked.length);
          expect(way?.served).toBeLessThanOrEqual(way?.asked ?? 0);
        }
      }),
    );
  });

  it('nothing is past its use-by where nothing runs out', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const rule = { ...question.rule, shelfLifeDays: null };
        for (const way of ways({ ...question, rule })) expect(way.pastUseBy).toBe(0);
      }),
    );
  });
});

// worked by hand: par 2, a week to come, looked at weekly, nothing to learn from in a record of 42 days
it('a plain par level, day by day', () => {
  const record = { days: 42, uses: [use(1), use(2), use(3), use(15, 3)] };
  const { par, reorder, notEstablished } = backtest({ record, warmUpDays: 0, par: 2, rule: RULE });
  // day 6: none left, 2 ordered, here on day 13; day 15 takes those 2 of 3; day 20: 2 ordered, here on day 27
  expect(par).toMatchObject({
    asked: 6,
    served: 4,
    cases: 4,
    casesServed: 2,
    times: 6,
    timesServed: 4,
    orders: 2,
    ordered: 4,
    received: 4,
    left: 2,
    weeks: [0, 2, 0, 2, 2, 2],
  });
  // on hand: 2 on day 0, 1 on day 1, 2 each on days 13 and 14, 2 from day 27 to day 41
  expect(par.meanStock).toBeCloseTo((2 + 1 + 2 + 2 + 15 * 2) / 42, 10);
  // the record is too short to learn from: it goes by the par level
  expect(reorder).toEqual(par);
  expect(notEstablished).toBe(6);
});

it('what runs out is thrown away the day after, and replaced', () => {
  const { par } = backtest({
    record: { days: 42, uses: [use(10)] },
    warmUpDays: 0,
    par: 3,
    rule: { ...RULE, shelfLifeDays: 10 },
  });
  // good through day 10, when one is taken; 2 go on day 11; 1 ordered on day 13, here day 20, out on day 31 …
  expect(par).toMatchObject({ served: 1, pastUseBy: 2 + 3, begunWith: 3 });
});

it('what was booked in time is there, however much it is', () => {
  // one a week, so that there is a demand to know; then a case that takes twelve, booked a month before
  const weekly = Array.from({ length: 50 }, (_, at) => use(at * 7 + 3));
  const question = (bookedDaysBefore: number | null): BacktestQuestion => ({
    record: { days: 360, uses: [...weekly, use(301, 12, bookedDaysBefore)] },
    warmUpDays: 150,
    par: 3,
    rule: RULE,
  });
  const booked = backtest(question(30));
  expect(booked.reorder.served).toBe(booked.reorder.asked);
  expect(booked.par.served).toBeLessThan(booked.par.asked);
  // the same case that nobody booked is not to be known
  const unbooked = backtest(question(null));
  expect(unbooked.reorder.served).toBeLessThan(unbooked.reorder.asked);
});

it('a higher service level serves no less of a steady demand, and holds no less', () => {
  const uses = Array.from({ length: 300 }, (_, at) => use((at * 37) % 720));
  const at = (service: number) =>
    backtest({ record: { days: 730, uses }, warmUpDays: 182, par: 5, rule: { ...RULE, service } }).reorder;
  const [low, high] = [at(0.8), at(0.99)];
  expect(high.served).toBeGreaterThanOrEqual(low.served);
  expect(high.meanStock).toBeGreaterThan(low.meanStock);
});
