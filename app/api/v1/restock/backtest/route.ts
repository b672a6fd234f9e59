import { now } from '@/app/_server/clock';
import { oneOf } from '@/app/api/v1/_reading/one';
import { backtestAll } from '@/db/queries/restock/backtest';

/** What the present settings of restock would have done over the record, beside a plain par level. */
export const GET = oneOf('GET /api/v1/restock/backtest', { what: 'report' }, ({ db }) =>
  backtestAll(db, now()),
);
