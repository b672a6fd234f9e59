import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { LOSS_TABLES } from '@/lib/loss/lossTables';
import { askedMonths } from '@/lib/review/period';
import { figureFile, noSuchFile } from '../../_parts/figure-file';
import { loadLossTables } from '../loss-tables';

/** A table of the report on loss and life as a file. */
export const GET = endpoint('GET /reports/loss/export', async ({ db, request }) => {
  const asked = new URL(request.url).searchParams;
  const which = LOSS_TABLES.find((one) => one === asked.get('table'));
  if (!which) return noSuchFile('table', `The tables are: ${LOSS_TABLES.join(', ')}.`);
  const { tables } = await loadLossTables(db, askedMonths(asked.get('months') ?? undefined), now());
  return figureFile(tables[which], asked.get('as'));
});
