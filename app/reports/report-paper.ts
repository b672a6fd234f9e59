import 'server-only';
import { printingNow, sheetAnswer } from '@/app/_pdf/answer';
import { type ReportKind, reportOfDay } from '@/app/_server/day-report';
import type { Access } from '@/app/_server/session';
import { dayReportSheet } from '@/lib/documents/dayReportSheet';
import { dayChangesWords } from '@/lib/wording/day-changes';

/** A report of a day as a PDF, as things stand now. */
export async function reportPaper(
  access: Pick<Access, 'db' | 'person'> & { request: Request },
  kind: ReportKind,
): Promise<Response> {
  const asked = new URL(access.request.url).searchParams.get('day');
  const { report, names, changed } = await reportOfDay(access, kind, asked);
  const printing = printingNow(access.person);
  const { look } = changed;
  const sheet = dayReportSheet({
    kind: kind === 'morning' ? 'morningReport' : 'dayBeforeReport',
    report,
    names,
    since: look && dayChangesWords.since(look.view, look.shownAt, names.now),
    changes: changed.lines,
    ledgerSeq: changed.mark.ledgerSeq,
    printing,
  });
  return sheetAnswer(sheet, access.request, printing);
}
