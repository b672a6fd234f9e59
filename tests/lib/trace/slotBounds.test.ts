import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { slotBounds } from '@/lib/trace/slotBounds';
import { OUTCOMES } from '@/lib/trace/slotHistory';
import { waysByTrying } from './byTrying';
import { lived } from './livedSlot';

const ASKED = { lot: 'A', firstHereAtMs: null };

describe('bounds of a slot', () => {
  it('are those that trying every way finds: for every destination, the cases together, and what lies there', () => {
    fc.assert(
      fc.property(lived(6), fc.option(fc.nat(6), { nil: null }), ({ history }, firstHereAtMs) => {
        const asked = { lot: 'A', firstHereAtMs };
        // what came before the lot was here cannot have been written down as the lot
        fc.pre(history.events.every(({ lot, atMs }) => lot !== 'A' || atMs >= (firstHereAtMs ?? 0)));
        const { ends, ways } = waysByTrying(history, asked);
        const found = slotBounds(history, asked);
        expect(found.contradiction === null).toBe(ways.length > 0);
        if (ways.length === 0) return;
        const tried = (wanted: (end: number) => boolean) => {
          const sums = ways.map((way) => way.reduce((sum, n, end) => sum + (wanted(end) ? n : 0), 0));
          return { lo: Math.min(...sums), hi: Math.max(...sums) };
        };
        const event = (end: number) => {
          const is = ends[end]?.is;
          const one = typeof is === 'number' ? history.events[is] : undefined;
          return one?.kind === 'out' ? one : null;
        };
        for (const one of found.destinations) {
          expect(one).toMatchObject(
            tried((end) => event(end)?.case === one.case && event(end)?.outcome === one.outcome),
          );
        }
        expect(found.cases).toEqual(tried((end) => (event(end)?.case ?? null) !== null));
        expect(found.now).toMatchObject(tried((end) => ends[end]?.is === 'now'));
        for (const outcome of OUTCOMES)
          expect(found.outcomes[outcome]).toEqual(tried((end) => event(end)?.outcome === outcome));
      }),
      { numRuns: 4_000 },
    );
  });

  it('hold what really happened, and never call what is true a contradiction', () => {
    fc.assert(
      fc.property(lived(9), ({ history, truth, lying }) => {
        const found = slotBounds(history, ASKED);
        expect(found.contradiction).toBeNull();
        for (const one of found.destinations) {
          const really = history.events.reduce(
            (sum, event, at) =>
              event.kind === 'out' && event.case === one.case && event.outcome === one.outcome
                ? sum + (truth[at] ?? []).filter((lot) => lot === 'A').length
                : sum,
            0,
          );
          expect(one.lo).toBeLessThanOrEqual(really);
          expect(one.hi).toBeGreaterThanOrEqual(really);
        }
        const there = lying.filter((lot) => lot === 'A').length;
        expect(found.now.lo).toBeLessThanOrEqual(there);
        expect(found.now.hi).toBeGreaterThanOrEqual(there);
        if (there > 0) expect(found.now.toHold).toBeGreaterThanOrEqual(there);
      }),
      { numRuns: 3_000 },
    );
  });

  it('conserve pieces: what came in of the lot is, together, in cases, elsewhere or there', () => {
    fc.assert(
      fc.property(lived(9), ({ history }) => {
        const { arrived, destinations, now, unrecorded, outcomes } = slotBounds(history, ASKED);
        const all = [...destinations, now, unrecorded];
        const lo = all.reduce((sum, one) => sum + one.lo, 0);
        const hi = all.reduce((sum, one) => sum + one.hi, 0);
        expect(lo).toBeLessThanOrEqual(arrived.ofLot + arrived.mayBe);
        expect(hi).toBeGreaterThanOrEqual(arrived.ofLot);
        const cameIn = history.events.reduce((sum, one) => sum + (one.kind === 'in' ? one.quantity : 0), 0);
        expect(all.reduce((sum, one) => sum + one.pieces, 0)).toBe(cameIn);
        for (const outcome of OUTCOMES) {
          const those = destinations.filter((one) => one.outcome === outcome);
          expect(outcomes[outcome].hi).toBeLessThanOrEqual(those.reduce((sum, one) => sum + one.hi, 0));
          expect(outcomes[outcome].lo).toBeGreaterThanOrEqual(those.reduce((sum, one) => sum + one.lo, 0));
        }
      }),
      { numRuns: 2_000 },
    );
  });

  it('narrow, and never widen, as another lot is read', () => {
    fc.assert(
      fc.property(lived(9), fc.nat(20), ({ history, truth }, which) => {
        const unread = history.events.flatMap((one, at) =>
          one.kind === 'out' && one.lot === null ? [at] : [],
        );
        fc.pre(unread.length > 0);
        const at = unread[which % unread.length] as number;
        const events = history.events.map((one, place) =>
          place === at ? { ...one, lot: truth[at]?.[0] ?? null } : one,
        );
        const before = slotBounds(history, ASKED);
        const after = slotBounds({ ...history, events }, ASKED);
        for (const [place, one] of after.destinations.entries()) {
          expect(one.lo).toBeGreaterThanOrEqual(before.destinations[place]?.lo ?? 0);
          expect(one.hi).toBeLessThanOrEqual(before.destinations[place]?.hi ?? 0);
        }
      }),
      { numRuns: 1_000 },
    );
  });
});

describe('records that contradict themselves', () => {
  const implanted = (atMs: number, quantity: number, lot: string | null, ref: string) =>
    ({ kind: 'out', atMs, quantity, lot, case: ref, outcome: 'implanted' }) as const;

  it('more goes out than came in: said, with what is proven', () => {
    const found = slotBounds(
      {
        events: [
          { kind: 'in', atMs: 10, quantity: 2, lot: 'A' },
          implanted(20, 3, null, 'case_1'),
          { kind: 'in', atMs: 30, quantity: 4, lot: 'B' },
          implanted(40, 1, 'B', 'case_2'),
        ],
        now: null,
      },
      { lot: 'A', firstHereAtMs: 5 },
    );
    expect(found.contradiction).toEqual({ wentOut: 3, cameIn: 2, lots: [null], untilMs: 20 });
    expect(found.destinations).toMatchObject([
      { case: 'case_1', lo: 0, hi: 3, standing: 'possible', why: [{ kind: 'contradicted', unread: 3 }] },
      { case: 'case_2', lo: 0, hi: 0, standing: 'excluded', why: [{ kind: 'otherRead', pieces: 1 }] },
    ]);
  });

  it('more of a lot is read than came in', () => {
    const found = slotBounds(
      {
        events: [
          { kind: 'in', atMs: 1, quantity: 2, lot: 'A' },
          { kind: 'in', atMs: 2, quantity: 1, lot: 'B' },
          implanted(3, 2, 'B', 'case_1'),
        ],
        now: null,
      },
      ASKED,
    );
    expect(found.contradiction).toEqual({ wentOut: 2, cameIn: 1, lots: ['B'], untilMs: 3 });
    expect(found.now).toMatchObject({ lo: 0, hi: 1, pieces: 1, toHold: 1 });
  });

  it('more lies there than came in', () => {
    const found = slotBounds(
      { events: [{ kind: 'in', atMs: 1, quantity: 2, lot: 'B' }], now: [{ lot: 'A', quantity: 3 }] },
      ASKED,
    );
    expect(found.contradiction).toEqual({ wentOut: 3, cameIn: 0, lots: ['A'], untilMs: null });
    expect(found.now).toMatchObject({ lo: 3, hi: 3, toHold: 3 });
  });

  it('what is proven is true: those that went out had nothing else to come from', () => {
    const wild = fc.array(
      fc.oneof(
        fc.record({
          kind: fc.constant('in' as const),
          quantity: fc.integer({ min: 1, max: 3 }),
          lot: fc.constantFrom('A', 'B', null),
        }),
        fc.record({
          kind: fc.constant('out' as const),
          quantity: fc.integer({ min: 1, max: 3 }),
          lot: fc.constantFrom('A', 'B', null),
          case: fc.constant('case_1'),
          outcome: fc.constant('implanted' as const),
        }),
      ),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(wild, (steps) => {
        const events = steps.map((step, atMs) => ({ ...step, atMs }));
        const found = slotBounds({ events, now: null }, ASKED);
        const { ways } = waysByTrying({ events, now: null }, ASKED);
        expect(found.contradiction === null).toBe(ways.length > 0);
        if (!found.contradiction) return;
        const { wentOut, cameIn, lots, untilMs } = found.contradiction;
        expect(wentOut).toBeGreaterThan(cameIn);
        // at the most: all those of these lots that left by then
        const left = events.filter(
          (one) =>
            one.kind === 'out' && one.atMs <= (untilMs ?? Number.POSITIVE_INFINITY) && lots.includes(one.lot),
        );
        expect(wentOut).toBeLessThanOrEqual(left.reduce((sum, one) => sum + one.quantity, 0));
        for (const one of found.destinations) {
          const reads = events.filter((event) => event.kind === 'out' && event.lot === 'A');
          expect(one.lo).toBe(reads.reduce((sum, { quantity }) => sum + quantity, 0));
        }
      }),
      { numRuns: 2_000 },
    );
  });
});
