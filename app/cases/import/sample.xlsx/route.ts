import { endpoint } from '@/app/_server/enter';
import { sampleXlsx } from '@/lib/theatre/import/sampleXlsx';
import { hospitalSample } from '../sample-rows';

/** A theatre list to begin from, as a workbook. */
export const GET = endpoint('GET /cases/import/sample.xlsx', async ({ db }) => {
  const file = await sampleXlsx(await hospitalSample(db));
  return new Response(file.slice().buffer, {
    headers: {
      'Content-Type': 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
      'Content-Disposition': 'attachment; filename="theatre-list.xlsx"',
      'Cache-Control': 'no-store',
    },
  });
});
