import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sinceLotCame } from '@/lib/trace/sinceLotCame';
import { type SlotBounds, slotBounds } from '@/lib/trace/slotBounds';
import type { Departure, LotAsked, SlotEvent, SlotHistory } from '@/lib/trace/slotHistory';
import { waysByTrying } from './byTrying';
import { lived } from './livedSlot';

const NEVER_UNKNOWN = 10_000;
const asked: LotAsked = { lot: 'A', firstHereAtMs: NEVER_UNKNOWN };

/** Other lots come and go for a while, then the lot asked about is among them. */
const longSlot = (most: number) =>
  fc
    .record({
      earlier: lived(most),
      later: lived(most),
      lots: fc.constantFrom('read', 'unread', 'any'),
      mayBe: fc.boolean(),
    })
    .map(({ earlier, later, lots, mayBe }): { history: SlotHistory; asked: LotAsked } => {
      const shift = earlier.history.events.length;
      const first = earlier.history.events.map(
        (event): SlotEvent => ({ ...event, lot: event.lot === 'A' ? 'B' : event.lot }),
      );
      const then = later.history.events.map((event): SlotEvent => {
        const atMs = event.atMs + shift + 1;
        if (event.kind === 'in') return { ...event, atMs };
        const hidden = lots === 'unread' || (lots === 'read' && event.lot !== 'A');
        return { ...event, atMs, lot: hidden ? null : event.lot };
      });
      return {
        history: { events: [...first, ...then], now: null },
        // what came without a lot since then may be of it, or may not
        asked: { lot: 'A', firstHereAtMs: mayBe ? shift : NEVER_UNKNOWN },
      };
    });

/** What can be asked of both: each case with what it had after the lot came. */
function told(bounds: SlotBounds) {
  const { arrived, cases, outcomes, now, unrecorded } = bounds;
  const destinations = bounds.destinations.map(({ case: reference, outcome, lo, hi, standing }) => ({
    reference,
    outcome,
    lo,
    hi,
    standing,
  }));
  return { arrived, cases, outcomes, now, unrecorded, destinations };
}

const key = ({ reference, outcome }: { reference: string | null; outcome: string }) =>
  `${reference} ${outcome}`;

describe('a slot from the moment its lot came', () => {
  it('tells the very bounds of its whole history; what is left out is excluded in that', () => {
    let cut = 0;
    fc.assert(
      fc.property(longSlot(12), ({ history, asked }) => {
        const since = sinceLotCame(history, asked);
        if (since === history) return;
        cut += 1;
        expect(since.events.length).toBeLessThan(history.events.length);
        const whole = told(slotBounds(history, asked));
        const short = told(slotBounds(since, asked));
        expect({ ...short, destinations: [] }).toEqual({ ...whole, destinations: [] });
        const shown = new Map(short.destinations.map((one) => [key(one), one]));
        for (const one of whole.destinations)
          expect(shown.get(key(one)) ?? { ...one, lo: 0, hi: 0 }).toEqual(one);
      }),
      { numRuns: 6_000 },
    );
    expect(cut).toBeGreaterThan(1_500);
  });

  it('is what trying every way of the whole finds', () => {
    let cut = 0;
    fc.assert(
      fc.property(longSlot(3), ({ history, asked }) => {
        const since = sinceLotCame(history, asked);
        if (since === history) return;
        cut += 1;
        const { ends, ways } = waysByTrying(history, asked);
        const found = slotBounds(since, asked);
        expect(ways.length > 0).toBe(found.contradiction === null);
        if (ways.length === 0) return;
        const departure = (end: number) => history.events[ends[end]?.is as number] as Departure | undefined;
        for (const one of found.destinations) {
          const sums = ways.map((way) =>
            way.reduce(
              (sum, n, end) =>
                departure(end)?.case === one.case && departure(end)?.outcome === one.outcome ? sum + n : sum,
              0,
            ),
          );
          expect(one).toMatchObject({ lo: Math.min(...sums), hi: Math.max(...sums) });
        }
      }),
      { numRuns: 4_000 },
    );
    expect(cut).toBeGreaterThan(1_000);
  });

  it('is left whole where another lot is read later: pieces that lay there are then no longer alike', () => {
    const out = (atMs: number, lot: string | null, reference: string): SlotEvent => ({
      kind: 'out',
      atMs,
      quantity: 1,
      lot,
      case: reference,
      outcome: 'implanted',
    });
    const history: SlotHistory = {
      events: [
        { kind: 'in', atMs: 1, quantity: 1, lot: 'C' },
        { kind: 'in', atMs: 2, quantity: 1, lot: 'A' },
        { kind: 'in', atMs: 3, quantity: 1, lot: 'M' },
        out(4, 'M', 'case_1'),
        out(5, 'M', 'case_2'),
      ],
      now: null,
    };
    expect(sinceLotCame(history, asked)).toBe(history);
    // no second piece of M ever came; a count of what lay there would take the other for it
    expect(slotBounds(history, asked).contradiction).toMatchObject({ wentOut: 2, cameIn: 1, lots: ['M'] });
    const counted = { before: 1, events: history.events.slice(1), now: null };
    expect(slotBounds(counted, asked).contradiction).toBeNull();
  });

  it('is left whole where the earlier records contradict themselves', () => {
    const history: SlotHistory = {
      events: [
        { kind: 'in', atMs: 1, quantity: 1, lot: 'B' },
        { kind: 'out', atMs: 2, quantity: 1, lot: 'C', case: 'case_1', outcome: 'implanted' },
        { kind: 'in', atMs: 3, quantity: 1, lot: 'A' },
      ],
      now: null,
    };
    expect(sinceLotCame(history, asked)).toBe(history);
    expect(slotBounds(history, asked).contradiction).not.toBeNull();
  });
});

describe('cases beside the lot', () => {
  it('had nothing of it, by any way in which the records can have come about', () => {
    let beside = 0;
    fc.assert(
      fc.property(longSlot(3), ({ history, asked }) => {
        const { ends, ways } = waysByTrying(history, asked);
        const found = slotBounds(history, asked);
        for (const one of found.destinations.filter(({ isBeside }) => isBeside)) {
          beside += 1;
          expect(one.hi).toBe(0);
          const its = ends.flatMap(({ is }, end) => {
            const event = typeof is === 'number' ? history.events[is] : undefined;
            return event?.kind === 'out' && event.case === one.case && event.outcome === one.outcome
              ? [end]
              : [];
          });
          for (const way of ways) for (const end of its) expect(way[end]).toBe(0);
        }
      }),
      { numRuns: 800 },
    );
    expect(beside).toBeGreaterThan(150);
  });
});
