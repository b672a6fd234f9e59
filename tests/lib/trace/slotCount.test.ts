import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { slotCount } from '@/lib/trace/slotCount';
import { slotFlow } from '@/lib/trace/slotFlow';
import type { SlotEvent, SlotHistory } from '@/lib/trace/slotHistory';
import { endsOf, slotNetwork } from '@/lib/trace/slotNetwork';
import { waysByTrying } from './byTrying';

const ASKED = { lot: 'A', firstHereAtMs: 10_000 };

/** A slot where no other lot is read as it leaves, and nothing without a lot may be of the one asked about. */
const countable = (most: number): fc.Arbitrary<SlotHistory> =>
  fc
    .record({
      before: fc.integer({ min: 0, max: 3 }),
      steps: fc.array(
        fc.record({
          isIn: fc.boolean(),
          quantity: fc.integer({ min: 1, max: 3 }),
          lot: fc.constantFrom('A', 'A', 'B', null),
          isRead: fc.integer({ min: 0, max: 3 }),
          case: fc.constantFrom('case_1', 'case_2', 'case_3', null),
        }),
        { minLength: 1, maxLength: most },
      ),
    })
    .map(({ before, steps }) => {
      let lying = before;
      let ofLot = 0;
      const events = steps.map((step, atMs): SlotEvent => {
        if (step.isIn || lying === 0) {
          lying += step.quantity;
          if (step.lot === 'A') ofLot += step.quantity;
          return { kind: 'in', atMs, quantity: step.quantity, lot: step.lot };
        }
        const lot = step.isRead === 0 && ofLot > 0 ? 'A' : null;
        const quantity = Math.min(step.quantity, lot === null ? lying : ofLot, lying);
        lying -= quantity;
        if (lot === 'A') ofLot -= quantity;
        return { kind: 'out', atMs, quantity, lot, case: step.case, outcome: 'implanted' };
      });
      return { before, events, now: null };
    });

const groupsOf = (count: number, picks: readonly (readonly number[])[]) =>
  picks.map((pick) => [...new Set(pick.map((one) => one % count))].sort((a, b) => a - b));

describe('bounds by counting alone', () => {
  it('are those of the least and the dearest flow, for any group of ends, in slots of every length', () => {
    let compared = 0;
    fc.assert(
      fc.property(
        countable(40),
        fc.array(fc.array(fc.nat(1_000), { minLength: 1, maxLength: 9 }), { minLength: 1, maxLength: 6 }),
        (history, picks) => {
          const ends = endsOf(history);
          fc.pre(ends.length > 0);
          const all = ends.map((_, at) => at);
          const groups = [...all.map((at) => [at]), all, [], ...groupsOf(ends.length, picks)];
          const network = slotNetwork(history, ends, ASKED);
          const counted = slotCount(history, ends, ASKED, groups);
          expect(counted !== null).toBe(network.served === network.wanted);
          if (counted === null) return;
          compared += 1;
          expect(counted).toEqual(slotFlow(network, groups));
        },
      ),
      { numRuns: 4_000 },
    );
    expect(compared).toBeGreaterThan(2_000);
  });

  it('are those that trying every way finds', () => {
    fc.assert(
      fc.property(countable(6), fc.array(fc.nat(20), { minLength: 1, maxLength: 4 }), (history, pick) => {
        const { ends, ways } = waysByTrying(history, ASKED);
        fc.pre(ends.length > 0);
        const [group = []] = groupsOf(ends.length, [pick]);
        const counted = slotCount(history, ends, ASKED, [group]);
        expect(counted !== null).toBe(ways.length > 0);
        if (counted === null) return;
        const sums = ways.map((way) => group.reduce((sum, end) => sum + (way[end] ?? 0), 0));
        expect(counted).toEqual([{ lo: Math.min(...sums), hi: Math.max(...sums) }]);
      }),
      { numRuns: 1_500 },
    );
  });

  it('leave to the flow what counting does not settle: another lot read, or pieces without a lot that may be of it', () => {
    const came: SlotEvent[] = [
      { kind: 'in', atMs: 1, quantity: 1, lot: 'A' },
      { kind: 'in', atMs: 2, quantity: 1, lot: 'B' },
    ];
    const read: SlotHistory = {
      events: [
        ...came,
        { kind: 'out', atMs: 3, quantity: 1, lot: 'B', case: 'case_1', outcome: 'implanted' },
      ],
      now: null,
    };
    expect(slotCount(read, endsOf(read), ASKED, [[0]])).toBeNull();
    const unknown: SlotHistory = {
      events: [...came, { kind: 'in', atMs: 3, quantity: 1, lot: null }],
      now: null,
    };
    expect(slotCount(unknown, endsOf(unknown), ASKED, [[0]])).not.toBeNull();
    expect(slotCount(unknown, endsOf(unknown), { lot: 'A', firstHereAtMs: 3 }, [[0]])).toBeNull();
  });
});
