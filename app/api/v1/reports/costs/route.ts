import { now } from '@/app/_server/clock';
import { monthsAsked } from '@/app/api/v1/_reading/months';
import { oneOf } from '@/app/api/v1/_reading/one';
import { listConfigurations } from '@/db/queries/configurations';
import { caseCostsSeen } from '@/db/queries/costs/caseCosts';
import { loadDelays, loadWrittenOff } from '@/db/queries/costs/reasons';
import { listReasons } from '@/db/queries/reasons/reasons';
import { COST_TABLES, costTable } from '@/lib/costs/costTables';
import { REASON_TABLES, reasonTable } from '@/lib/costs/reasonTables';
import type { FigureTable } from '@/lib/documents/figureTable';
import { askedMonths, periodUntil } from '@/lib/review/period';
import { wallClock } from '@/lib/theatre/localTime';

/**
 * What the things of past cases cost and how much was opened for nothing, as tables; no figure names a person. `hidden` cases are
 * left out, since you count a set that went to them.
 */
export const GET = oneOf(
  'GET /api/v1/reports/costs',
  { what: 'report', query: monthsAsked },
  async ({ db, query }) => {
    const at = now();
    const months = askedMonths(query.months);
    const period = periodUntil(wallClock(at).date, months);
    const [{ cases, notRecorded, hidden }, configurations, delays, writtenOff, reasons] = await Promise.all([
      caseCostsSeen(db, period, at),
      listConfigurations(db),
      loadDelays(db, period, at),
      loadWrittenOff(db, period),
      listReasons(db),
    ]);
    const names = new Map<string, string>(
      configurations.map(({ id, code, name }) => [id, `${code} ${name}`]),
    );
    const nameOf = (id: string) => names.get(id) ?? id;
    const tables: FigureTable[] = [
      ...COST_TABLES.map((one) => costTable(one, cases, nameOf)),
      ...REASON_TABLES.map((one) => reasonTable(one, { cases, delays, writtenOff, reasons, nameOf })),
    ];
    return { period, cases: cases.length, notRecorded, hidden, tables };
  },
);
