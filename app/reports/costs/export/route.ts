import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { listConfigurations } from '@/db/queries/configurations';
import { caseCostsSeen } from '@/db/queries/costs/caseCosts';
import { loadDelays, loadWrittenOff } from '@/db/queries/costs/reasons';
import { listReasons } from '@/db/queries/reasons/reasons';
import { COST_TABLES, type CostTable, costTable } from '@/lib/costs/costTables';
import { REASON_TABLES, reasonTable } from '@/lib/costs/reasonTables';
import { askedMonths, periodUntil } from '@/lib/review/period';
import { wallClock } from '@/lib/theatre/localTime';
import { figureFile, noSuchFile } from '../../_parts/figure-file';

/** A table of the cost report as a file. */
export const GET = endpoint('GET /reports/costs/export', async ({ db, request }) => {
  const asked = new URL(request.url).searchParams;
  const which = [...COST_TABLES, ...REASON_TABLES].find((one) => one === asked.get('table'));
  if (!which) return noSuchFile('table', `The tables are: ${[...COST_TABLES, ...REASON_TABLES].join(', ')}.`);
  const at = now();
  const period = periodUntil(wallClock(at).date, askedMonths(asked.get('months') ?? undefined));
  const [{ cases }, configurations] = await Promise.all([
    caseCostsSeen(db, period, at),
    listConfigurations(db),
  ]);
  const names = new Map<string, string>(configurations.map(({ id, code, name }) => [id, `${code} ${name}`]));
  const nameOf = (id: string) => names.get(id) ?? id;
  const isCost = (one: string): one is CostTable => COST_TABLES.some((table) => table === one);
  if (isCost(which)) return figureFile(costTable(which, cases, nameOf), asked.get('as'));
  const [delays, writtenOff, reasons] = await Promise.all([
    loadDelays(db, period, at),
    loadWrittenOff(db, period),
    listReasons(db),
  ]);
  return figureFile(reasonTable(which, { cases, delays, writtenOff, reasons, nameOf }), asked.get('as'));
});
