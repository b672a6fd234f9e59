import { eq } from 'drizzle-orm';
import type { AcceptanceFacts, IndicatorFacts } from '@/lib/loads/acceptance';
import { type CycleSummary, cycleSummary } from '@/lib/loads/cycle/summary';
import { indicatorKind, indicatorResult, loadState } from '@/lib/loads/load';
import { wallClock } from '@/lib/theatre/localTime';
import type { Queries } from '../../client';
import { loadIndicators, type loads } from '../../schema';
import { readSetting } from '../settings';
import { type LoadedPack, packsOfLoad } from './packsOfLoad';

export interface IndicatorOnFile extends IndicatorFacts {
  id: string;
  position: string | null;
  readBy: string | null;
  readAt: string | null;
}

export interface LoadFacts extends AcceptanceFacts {
  packs: LoadedPack[];
  indicators: IndicatorOnFile[];
  cycle: CycleSummary | null;
}

/** Everything that is known before a load is decided; read inside the write that decides, and by the screen. */
export async function acceptanceFacts(
  read: Queries,
  load: Pick<typeof loads.$inferSelect, 'id' | 'state' | 'startedAt' | 'cycle'>,
): Promise<LoadFacts> {
  const settings = await readSetting(read, 'loads');
  return {
    state: loadState.parse(load.state),
    cycle: load.cycle === null ? null : cycleSummary.parse(load.cycle),
    indicators: await indicatorsOf(read, load.id),
    requiredIndicators: settings.requiredIndicators,
    implantsAwaitBiological: settings.implantsAwaitBiological,
    packs: await packsOfLoad(read, load.id),
    ranOn: load.startedAt === null ? null : wallClock(load.startedAt).date,
  };
}

export async function indicatorsOf(read: Queries, loadId: string): Promise<IndicatorOnFile[]> {
  const rows = await read
    .select()
    .from(loadIndicators)
    .where(eq(loadIndicators.loadId, loadId))
    .orderBy(loadIndicators.id);
  return rows.map((row) => ({
    ...row,
    kind: indicatorKind.parse(row.kind),
    result: indicatorResult.parse(row.result),
  }));
}
