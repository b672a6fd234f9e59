import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { listConfigurations } from '@/db/queries/configurations';
import { keptCaseCosts } from '@/db/queries/costs/caseCosts';
import { COST_TABLES, costTable } from '@/lib/costs/costTables';
import { askedMonths, periodUntil } from '@/lib/review/period';
import { wallClock } from '@/lib/theatre/localTime';
import { figureFile, noSuchFile } from '../../_parts/figure-file';

/** A table of the cost report as a file. */
export const GET = endpoint('GET /reports/costs/export', async ({ db, request }) => {
  const asked = new URL(request.url).searchParams;
  const which = COST_TABLES.find((one) => one === asked.get('table'));
  if (!which) return noSuchFile('table', `The tables are: ${COST_TABLES.join(', ')}.`);
  const at = now();
  const period = periodUntil(wallClock(at).date, askedMonths(asked.get('months') ?? undefined));
  const [{ cases }, configurations] = await Promise.all([
    keptCaseCosts(db, period, at),
    listConfigurations(db),
  ]);
  const names = new Map<string, string>(configurations.map(({ id, code, name }) => [id, `${code} ${name}`]));
  return figureFile(
    costTable(which, cases, (id) => names.get(id) ?? id),
    asked.get('as'),
  );
});
