import { asc, eq, gt } from 'drizzle-orm';
import { expect, it, onTestFinished } from 'vitest';
import { openDatabase } from '@/db/client';
import { holdStock } from '@/db/operations/stock/hold-stock';
import { cancelCase } from '@/db/operations/theatre/cancel-case';
import { listPeople } from '@/db/queries/people';
import { urgentGaps } from '@/db/queries/restock/gaps';
import { cases, stock } from '@/db/schema';
import { caseId, type NewId, stockId } from '@/lib/identity/ids';
import { demoDatabaseFile } from '../../setup/database';

const NOW = '2026-01-14T08:00:00.000Z';
const DAYS = 14;

it('gaps kept from before are those of a store that is read for the first time, after every act and hour', async () => {
  const path = await demoDatabaseFile();
  const db = openDatabase(path);
  onTestFinished(() => db.close());
  const people = await listPeople(db);
  const keeper = people.find(({ role }) => role === 'stockKeeper');
  const manager = people.find(({ role }) => role === 'theatreManager');
  if (!keeper || !manager) throw new Error('the demo has both');
  let made = 0;
  const newId: NewId = (kind) => {
    made += 1;
    return `${kind}_gaps-${made}`;
  };
  const compared = async (now: string) => {
    const kept = await urgentGaps(db, now, DAYS);
    const other = openDatabase(path);
    try {
      expect(kept).toEqual(await urgentGaps(other, now, DAYS));
    } finally {
      other.close();
    }
    return kept;
  };

  const first = await compared(NOW);
  // nothing was written: the very same needs come back
  expect((await urgentGaps(db, NOW, DAYS)).needs).toBe(first.needs);
  // another length of time is another answer, and takes nothing from the first
  expect((await urgentGaps(db, NOW, 2)).cases).toBeLessThan(first.cases);
  expect((await urgentGaps(db, NOW, DAYS)).needs).toBe(first.needs);

  const heaps = await db.read.select().from(stock).where(gt(stock.quantity, 0)).orderBy(asc(stock.id));
  let held = 0;
  for (const heap of heaps.filter(({ heldBecause, form }) => heldBecause === null && form !== 'unsterile')) {
    const done = await holdStock({
      ...{
        db,
        now: NOW,
        newId,
        person: keeper,
        stockId: stockId.parse(heap.id),
        baseRevision: heap.revision,
      },
      ...{ because: 'wrongLabel', pieces: heap.quantity, note: '' },
    });
    if (!done.ok) continue;
    held += 1;
    if (held % 80 === 0) await compared(NOW);
  }
  const without = await compared(NOW);
  expect(without.gaps.length).toBeGreaterThan(first.gaps.length);

  const gone = without.gaps[0]?.caseId ?? '';
  const [row] = await db.read.select().from(cases).where(eq(cases.id, gone));
  if (!row) throw new Error('a case has a gap');
  const cancelled = await cancelCase({
    ...{ db, now: NOW, newId, person: manager, caseId: caseId.parse(row.id), baseRevision: row.revision },
    because: 'the theatre is flooded',
  });
  expect(cancelled.ok).toBe(true);
  expect((await compared(NOW)).gaps.map(({ caseId: id }) => id)).not.toContain(row.id);

  // cases begin, and others come near
  const counts = new Set<number>();
  for (let hours = 0; hours <= 72; hours += 24)
    counts.add((await compared(new Date(Date.parse(NOW) + hours * 3_600_000).toISOString())).cases);
  expect(counts.size).toBeGreaterThan(1);
});
