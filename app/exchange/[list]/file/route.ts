import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch } from '@/app/_server/outcome-answer';
import { listRows } from '@/db/queries/exchange/list-rows';
import { LISTS, listKindOf } from '@/lib/exchange/lists/lists';
import { listCsv, listJson, listWorkbook, templateCsv, templateWorkbook } from '@/lib/exchange/out';
import { wallClock } from '@/lib/theatre/localTime';

const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
const CSV = 'text/csv; charset=utf-8; header=present';

/** A list as it stands, or its template: `?as=` one of list.xlsx, list.csv, list.json, template.xlsx, template.csv. */
export const GET = endpoint('GET /exchange/[list]/file', async ({ db, params, request }) => {
  const kind = listKindOf(params.list);
  const as = new URL(request.url).searchParams.get('as') ?? '';
  if (kind === null) return noSuch('list');
  const info = LISTS[kind];
  switch (as) {
    case 'template.xlsx':
      return file(await templateWorkbook(info), XLSX, `${kind}-template.xlsx`);
    case 'template.csv':
      return file(templateCsv(info), CSV, `${kind}-template.csv`);
    case 'list.xlsx':
    case 'list.csv':
    case 'list.json': {
      const at = now();
      const rows = await listRows(db, kind, at);
      const name = `${kind}-${wallClock(at).date}`;
      if (as === 'list.xlsx') return file(await listWorkbook(info, rows), XLSX, `${name}.xlsx`);
      if (as === 'list.csv') return file(listCsv(info, rows), CSV, `${name}.csv`);
      return file(listJson(info, rows), 'application/json', `${name}.json`);
    }
    default:
      return noSuch('file of this list');
  }
});

const file = (body: string | Uint8Array, type: string, name: string): Response =>
  new Response(typeof body === 'string' ? body : body.slice().buffer, {
    headers: {
      'Content-Type': type,
      'Content-Disposition': `attachment; filename="${name}"`,
      'Cache-Control': 'no-store',
    },
  });
