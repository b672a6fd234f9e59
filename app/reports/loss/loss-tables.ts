import 'server-only';
import { loadNotFound, loadRepairs, loadShelfWaste } from '@/db/queries/loss/goneMissing';
import { loadServiceLives } from '@/db/queries/loss/serviceLives';
import { loadShelfLosses } from '@/db/queries/loss/shelfLosses';
import type { Reading } from '@/db/reader';
import type { FigureTable } from '@/lib/documents/figureTable';
import {
  type LossTable,
  lifeTable,
  lotsAtRisk,
  notFoundTable,
  repairTable,
  shelfTable,
  shelfWasteTable,
} from '@/lib/loss/lossTables';
import { type PeriodMonths, periodUntil } from '@/lib/review/period';
import { wallClock } from '@/lib/theatre/localTime';

/** Everything the report on loss and life is made of, and its tables for files: page and file read the same. */
export async function loadLossTables(access: Reading, months: PeriodMonths, now: string) {
  const today = wallClock(now).date;
  const period = periodUntil(today, months);
  const [losses, waste, notFound, repairs, lives] = await Promise.all([
    loadShelfLosses(access, today, months),
    loadShelfWaste(access, period),
    loadNotFound(access, period),
    loadRepairs(access, period),
    loadServiceLives(access, now),
  ]);
  const lots = lotsAtRisk(losses);
  const missing = notFound.map(({ configuration, ...row }) => ({
    ...row,
    set: configuration && `${configuration.code} ${configuration.name}`,
    configurationId: configuration?.id ?? null,
  }));
  const tables: Record<LossTable, FigureTable> = {
    shelf: shelfTable(lots),
    shelfWaste: shelfWasteTable(waste),
    notFound: notFoundTable(missing),
    repairs: repairTable(repairs),
    life: lifeTable(lives.map(({ thing, ...row }) => ({ ...row, limit: thing.limitCycles }))),
  };
  return { losses, lots, waste, missing, repairs, lives, tables };
}
