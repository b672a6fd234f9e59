import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type IncomingScan, incomingScan, MOST_AT_ONCE } from '@/lib/scanning/incoming';
import { EMPTY_OUTBOX, nextBatch, type Outbox, outboxAfter } from '@/lib/scanning/outbox';

const scan = (number: number): IncomingScan =>
  incomingScan.parse({
    id: `scan_${String(number).padStart(4, '0')}`,
    text: `text ${number}`,
    how: 'scanner',
    doneAt: new Date(Date.UTC(2026, 0, 14, 6, 0, number)).toISOString(),
    context: { kind: 'none' },
    separators: 'mayBeLost',
    session: { id: 'session_1', ticket: `ticket of person ${number % 2}` },
  });
const heard = (...numbers: number[]): Outbox =>
  numbers.reduce((box, number) => outboxAfter(box, { kind: 'heard', scan: scan(number) }), EMPTY_OUTBOX);
const ids = (box: Outbox) => box.waiting.map(({ id }) => id);

test('scans go in the order they were made, so many at once, and one request at a time', () => {
  const box = heard(...Array.from({ length: 25 }, (_, at) => at));
  const batch = nextBatch(box, 0);
  expect(batch.map(({ id }) => id)).toEqual(ids(box).slice(0, MOST_AT_ONCE));
  expect(nextBatch(outboxAfter(box, { kind: 'sending', ids: batch.map(({ id }) => id) }), 0)).toEqual([]);
});

test('the same scan twice is one', () => expect(heard(1, 1).waiting).toHaveLength(1));

test('what was kept from before the reload goes first', () => {
  const box = outboxAfter(heard(5), { kind: 'found', scans: [scan(3), scan(4), scan(5)] });
  expect(ids(box)).toEqual(['scan_0003', 'scan_0004', 'scan_0005']);
});

test('a failure waits longer each time, up to a limit, and never gives up', () => {
  let box = heard(1);
  const waits: number[] = [];
  for (let at = 0; at < 12; at += 1) {
    box = outboxAfter(box, { kind: 'failed', at: 0, chance: 1 });
    waits.push(box.retryAt ?? -1);
  }
  expect(waits.slice(0, 6)).toEqual([500, 1000, 2000, 4000, 8000, 15_000]);
  expect(waits.at(-1)).toBe(15_000);
  expect(nextBatch(box, 14_999)).toEqual([]);
  expect(nextBatch(box, 15_000)).toHaveLength(1);
  expect(nextBatch(outboxAfter(box, { kind: 'tryNow' }), 0)).toHaveLength(1);
});

test('without anybody signed in nothing is sent, and nothing is lost', () => {
  const box = outboxAfter(heard(1, 2), { kind: 'signedOut' });
  expect(nextBatch(box, 1e12)).toEqual([]);
  expect(ids(outboxAfter(box, { kind: 'tryNow' }))).toHaveLength(2);
});

test('whatever happens on the way: only what the service settled leaves, each scan keeps its person, order stays', () => {
  const event = fc.oneof(
    { weight: 4, arbitrary: fc.constant('heard' as const) },
    { weight: 3, arbitrary: fc.constant('answered' as const) },
    { weight: 2, arbitrary: fc.constant('lostAnswer' as const) },
    { weight: 1, arbitrary: fc.constant('signedOut' as const) },
    { weight: 1, arbitrary: fc.constant('reload' as const) },
    { weight: 2, arbitrary: fc.constant('time' as const) },
  );
  fc.assert(
    fc.property(
      fc.array(event, { maxLength: 60 }),
      fc.infiniteStream(fc.nat({ max: 1000 })),
      (events, chances) => {
        let box = EMPTY_OUTBOX;
        let made = 0;
        let now = 0;
        // the browser's storage, and the service's store, which knows a repeat by its id
        const kept = new Map<string, IncomingScan>();
        const stored = new Map<string, string>();
        for (const one of events) {
          if (one === 'heard') {
            const fresh = scan(made);
            made += 1;
            kept.set(fresh.id, fresh);
            box = outboxAfter(box, { kind: 'heard', scan: fresh });
          }
          if (one === 'time') {
            now += 20_000;
            box = outboxAfter(box, { kind: 'tryNow' });
          }
          if (one === 'reload') box = outboxAfter(EMPTY_OUTBOX, { kind: 'found', scans: [...kept.values()] });
          if (one === 'signedOut') box = outboxAfter(box, { kind: 'signedOut' });
          if (one === 'answered' || one === 'lostAnswer') {
            const batch = nextBatch(box, now);
            if (batch.length === 0) continue;
            box = outboxAfter(box, { kind: 'sending', ids: batch.map(({ id }) => id) });
            for (const { id, session } of batch) {
              const by = session?.ticket ?? '';
              expect(stored.get(id) ?? by).toBe(by);
              stored.set(id, by);
            }
            const chance = (chances.next().value ?? 0) / 1000;
            if (one === 'lostAnswer') box = outboxAfter(box, { kind: 'failed', at: now, chance });
            else {
              for (const { id } of batch) kept.delete(id);
              box = outboxAfter(box, { kind: 'settled', ids: batch.map(({ id }) => id) });
            }
          }
          expect(ids(box)).toEqual([...kept.keys()]);
        }
        for (let at = 0; at < made; at += 1) {
          const { id, session } = scan(at);
          expect(kept.has(id) || stored.has(id)).toBe(true);
          if (stored.has(id)) expect(stored.get(id)).toBe(session?.ticket);
        }
      },
    ),
    { numRuns: 200 },
  );
});
