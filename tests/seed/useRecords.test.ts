import { eq, sql } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { sha256 } from '@/db/ledger';
import { loadDelays } from '@/db/queries/costs/reasons';
import { recordOfUse } from '@/db/queries/usage/recordOfUse';
import { subjectOf, tableFacts } from '@/db/queries/usage/tableFacts';
import { itemsAtTable, tableItems } from '@/db/queries/usage/tableItems';
import { THE_PROGRAM } from '@/db/reader';
import { caseUses, moveReasons, pieceMoves } from '@/db/schema';
import { plainDate } from '@/lib/quantities/plainDate';
import { digestOfUse } from '@/lib/usage/digest';
import { reckonUse } from '@/lib/usage/reckon';
import { historyDatabase } from '../setup/database';

describe('the closed records of use of the demo', () => {
  it('say of every piece what the journal says, and close with a digest of what they hold', async () => {
    const db = await historyDatabase();
    const uses = await db.read.select().from(caseUses);
    expect(uses).toHaveLength(16);
    const reasons = new Map(
      (await db.read.select().from(moveReasons)).map(({ moveSeq, reasonId }) => [moveSeq, reasonId]),
    );
    let named = 0;
    for (const use of uses) {
      const facts = await tableFacts(db.read, use.caseId);
      if (!facts) throw new Error('its case is there');
      expect(use.entryDigest).toBe(sha256(digestOfUse(use.caseId, facts.entries)));
      expect(use.entryCount).toBe(facts.entries.length);
      const items = await tableItems(db.read, itemsAtTable(facts));
      const { state, accounts } = reckonUse(subjectOf(facts), facts.entries, (id) => items.get(id) ?? null);
      // more is said to be gone of nothing than there was, and every single pack is accounted for
      expect(accounts.filter(({ beyond, open }) => beyond + open > 0)).toEqual([]);
      for (const piece of state.pieces) {
        const moves = await db.read.select().from(pieceMoves).where(eq(pieceMoves.source, piece.entryId));
        expect(moves).toMatchObject([
          {
            itemId: piece.itemId,
            quantity: piece.quantity,
            act: piece.outcome === 'implanted' ? 'implanted' : 'wasted',
            caseId: use.caseId,
          },
        ]);
        expect(reasons.get(moves[0]?.seq ?? 0) ?? null).toBe(piece.reasonId);
        if (piece.reasonId !== null) named += 1;
      }
      const record = await recordOfUse({ read: db.read, reader: THE_PROGRAM }, use.caseId);
      expect(record?.sets).toHaveLength(1);
    }
    expect(named).toBeGreaterThan(0);
  });

  it('tell of delays by reason, of one without minutes and of one without a reason', async () => {
    const db = await historyDatabase();
    const [span] = db.read.all<{ first: string; last: string }>(
      sql`SELECT min(case_date) AS first, max(case_date) AS last FROM cases`,
    );
    const delays = await loadDelays(
      { read: db.read, reader: THE_PROGRAM },
      { from: plainDate.parse(span?.first), until: plainDate.parse(span?.last) },
      '2026-01-14T06:30:00.000Z',
    );
    expect(delays).toHaveLength(8);
    expect(delays.filter(({ minutes }) => minutes === null)).toHaveLength(1);
    expect(delays.filter(({ reasonId }) => reasonId === null)).toHaveLength(1);
    expect(delays.every(({ configurationIds }) => configurationIds.length === 1)).toBe(true);
  });
});
