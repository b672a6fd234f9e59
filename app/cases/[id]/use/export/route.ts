import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch } from '@/app/_server/outcome-answer';
import { problemResponse } from '@/app/_server/problem-response';
import { recordToGive } from '@/app/_server/use-record';
import { csvOfUse, type ExportHead, jsonOfUse } from '@/lib/usage/export';
import { differenceSentences, usageWords } from '@/lib/wording/usage';

export const dynamic = 'force-dynamic';

/** The record of use of a case as a file for the clinical record: CSV, or with `as=json` the whole of it. No patient. */
export const GET = endpoint('GET /cases/[id]/use/export', async ({ db, request, params }) => {
  const given = await recordToGive(db, params.id);
  if (!given) return noSuch('case');
  const { booked, record, reckoned, lines, delays, open, itemName } = given;
  if (record.hidden.length > 0) return notWhole(record.hidden.map(({ code }) => code));
  const at = now();
  const head: ExportHead = {
    reference: booked.reference,
    caseDate: booked.caseDate,
    planVersion: record.plan?.version ?? null,
    closed: record.closed && { at: record.closed.at, by: record.closed.by },
    differences: differenceSentences(reckoned.differences, itemName),
    open,
    delays,
    exportedAt: at,
  };
  const json = new URL(request.url).searchParams.get('as') === 'json';
  const minute = `${at.slice(0, 16).replaceAll(/[-:]/g, '')}Z`;
  return new Response(json ? jsonOfUse(head, lines) : csvOfUse(head, lines), {
    headers: {
      'Content-Type': json ? 'application/json; charset=utf-8' : 'text/csv; charset=utf-8; header=present',
      'Content-Disposition': `attachment; filename="record-of-use-${booked.reference}-${minute}.${json ? 'json' : 'csv'}"`,
      'Cache-Control': 'no-store',
    },
  });
});

/** A record without what was taken from a set would be taken for the whole of it. */
const notWhole = (codes: readonly string[]) =>
  problemResponse(409, 'Not while you check blind', [
    { path: [], code: 'blind', message: usageWords.notWhole(codes) },
  ]);
