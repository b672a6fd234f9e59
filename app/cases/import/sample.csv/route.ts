import { endpoint } from '@/app/_server/enter';
import { sampleCsv } from '@/lib/theatre/import/sample';
import { hospitalSample } from '../sample-rows';

/** A theatre list to begin from, as CSV. */
export const GET = endpoint(
  'GET /cases/import/sample.csv',
  async ({ db }) =>
    new Response(sampleCsv(await hospitalSample(db)), {
      headers: {
        'Content-Type': 'text/csv; charset=utf-8; header=present',
        'Content-Disposition': 'attachment; filename="theatre-list.csv"',
        'Cache-Control': 'no-store',
      },
    }),
);
