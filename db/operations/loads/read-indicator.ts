import { and, eq } from 'drizzle-orm';
import type { IndicatorId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { type IndicatorResult, indicatorKind, indicatorResult } from '@/lib/loads/load';
import { loadWords as words } from '@/lib/wording/loads';
import { loadIndicators } from '../../schema';
import { atLoad, changeLoad, type LoadNow, type LoadRequest } from './at-load';
import { failLoad } from './fail-load';

interface ReadIndicator extends LoadRequest {
  indicatorId: IndicatorId;
  result: Exclude<IndicatorResult, 'pending'>;
}

/**
 * Records the result of an indicator, once, by the person who read it. One that fails after its load was accepted rejects
 * the load and holds everything in doubt at once: the acceptance rested on it.
 */
export async function readIndicator(
  request: ReadIndicator,
): Promise<Outcome<{ revision: number; held: number }, LoadNow>> {
  const { person, now, newId, indicatorId, result } = request;
  const acting = {
    act: 'makeUpLoad',
    verb: 'read its indicators',
    while: ['running', 'awaitingAcceptance', 'accepted', 'rejected'],
  } as const;
  return atLoad(request, acting, async (write, load) => {
    const [row] = await write
      .select()
      .from(loadIndicators)
      .where(and(eq(loadIndicators.id, indicatorId), eq(loadIndicators.loadId, load.id)));
    if (!row) return refused('notFound', words.noSuchIndicator);
    const kind = indicatorKind.parse(row.kind);
    if (row.result === result && row.readBy === person.id)
      return { ok: true, value: { revision: load.revision, held: 0 } };
    if (row.result !== 'pending')
      return refused('frozen', words.resultStays(kind, indicatorResult.parse(row.result)));
    await write
      .update(loadIndicators)
      .set({ result, readBy: person.id, readAt: now })
      .where(eq(loadIndicators.id, row.id));
    const detail = { indicatorId, kind, lot: row.lot, result, afterAcceptance: load.state === 'accepted' };
    const changed = await changeLoad(write, load, {}, { action: 'read-indicator', person, now, detail });
    if (result !== 'failed' || load.state !== 'accepted') return { ok: true, value: { ...changed, held: 0 } };
    const reason = words.failedResult(kind);
    const failed = await failLoad(write, { load, setsGo: 'held', reason, person, now, newId });
    return { ok: true, value: failed };
  });
}
