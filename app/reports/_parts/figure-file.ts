import 'server-only';
import { problemResponse } from '@/app/_server/problem-response';
import { type FigureTable, figureCsv, figureWorkbook } from '@/lib/documents/figureTable';

/** A table of figures as a file, by how it is asked for: `csv` or `xlsx`. */
export async function figureFile(table: FigureTable, as: string | null): Promise<Response> {
  const headers = (type: string, end: string) => ({
    'Content-Type': type,
    'Content-Disposition': `attachment; filename="${table.name}.${end}"`,
    'Cache-Control': 'no-store',
  });
  if (as === 'csv')
    return new Response(figureCsv(table), {
      headers: headers('text/csv; charset=utf-8; header=present', 'csv'),
    });
  if (as === 'xlsx')
    return new Response((await figureWorkbook(table)).slice().buffer, {
      headers: headers('application/vnd.openxmlformats-officedocument.spreadsheetml.sheet', 'xlsx'),
    });
  return noSuchFile('as', 'Ask for it as “csv” or as “xlsx”.');
}

export const noSuchFile = (path: string, message: string): Response =>
  problemResponse(400, 'Not a table of this report', [{ path: [path], code: 'unknown', message }]);
