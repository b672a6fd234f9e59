import { expect, test } from 'vitest';
import { paintSheet } from '@/app/_pdf/paintSheet';
import type { DayReportSheetOf } from '@/lib/documents/dayReportSheet';
import { dayReportSheet } from '@/lib/documents/dayReportSheet';
import type { Cell, Sheet, Table } from '@/lib/documents/sheet';
import { cautions } from '@/lib/wording/cautions';
import type { ChangeLine } from '@/lib/wording/day-changes';
import { reportAt } from '../../fixtures/demoReport';
import { BLACK_AND_WHITE, coloursOf, tagsOf, textOf, wordsOf } from '../../pdf/readPdf';
import { DEMO_NOW, demoDatabase } from '../../setup/database';
import { PRINTING } from './setForSheet';

const NOW = DEMO_NOW.toISOString();
const CHANGE: ChangeLine = {
  key: 'one',
  caseId: 'case_one',
  about: 'LM-26-D3XE',
  where: 'tomorrow 09:00, Theatre 4',
  word: 'Cancelled',
  sentence: 'What was promised to it is free.',
  by: 'Case cancelled by Amir Foxton, today 06:12: no recovery bed',
};

const words = (cell: Cell | undefined) => (cell?.kind === 'text' ? cell.lines.map(({ text }) => text) : []);
const tableNamed = (sheet: Sheet, caption: string) =>
  sheet.blocks.find((block): block is Table => block.kind === 'table' && block.caption === caption);
const under = (table: Table | undefined, head: string) => {
  const at = table?.columns.findIndex((column) => column.head === head) ?? -1;
  return (table?.rows ?? []).map((row) => words(row[at])[0]);
};

let loading: Promise<DayReportSheetOf> | null = null;
/** The report of the demo's next day, made once; the tests only read it. */
function given(): Promise<DayReportSheetOf> {
  loading ??= (async () => {
    const { report, names } = await reportAt(await demoDatabase(), 'dayBefore', '2026-01-15', NOW);
    return {
      kind: 'dayBeforeReport' as const,
      report,
      names,
      since: 'since the theatre list as you marked it seen, yesterday 15:10',
      changes: [CHANGE],
      ledgerSeq: 812,
      printing: PRINTING,
    };
  })();
  return loading;
}

test('the paper holds what the report holds: every step, change, case, set on its way, and thing to ask for', async () => {
  const of = await given();
  const sheet = dayReportSheet(of);
  const { report } = of;
  expect(tableNamed(sheet, 'What to do first')?.rows).toHaveLength(report.steps.length);
  expect(tableNamed(sheet, 'To be asked for today')?.rows.length).toBeGreaterThan(0);
  expect(under(tableNamed(sheet, 'Changed since you looked'), 'Case')).toEqual(['LM-26-D3XE']);
  const theatres = [...new Set(report.lines.map(({ facts }) => facts.theatre))];
  expect(theatres.flatMap((theatre) => under(tableNamed(sheet, theatre), 'Case'))).toEqual(
    report.lines.map(({ facts }) => facts.reference),
  );
  expect(under(tableNamed(sheet, 'Sets still on their way'), 'Set')).toEqual(
    report.onTheWay.map(({ set }) => set.code),
  );
  expect(tableNamed(sheet, 'Sets short or held that a case wants')?.rows).toHaveLength(report.lacking.length);
  expect(sheet.facts[0]).toEqual({ term: 'Day', value: '15 January 2026' });
  expect(sheet.facts[1]).toEqual({ term: 'Cases', value: String(report.lines.length) });
});

test('it says what state of things it tells, until when it may be good, and by which code it is found', async () => {
  const of = await given();
  const sheet = dayReportSheet(of);
  expect(sheet.record.text).toBe('DR/2026-01-15/E812/20260114T0630Z');
  expect(dayReportSheet({ ...of, kind: 'morningReport' }).record.text).toBe(
    'MR/2026-01-15/E812/20260114T0630Z',
  );
  expect(sheet.edition.printedAt).toBe('14 January 2026, 06:30');
  // the cautions of domain.md §6, and the one that only paper carries
  for (const { sentence } of cautions) expect(sheet.cautions).toContain(sentence);
  expect(sheet.cautions.at(-1)).toBe(
    'This paper may be out of date: version 812, printed 14 January 2026, 06:30.',
  );
});

test('a morning has nothing to ask for; who never looked is told so; a day without a case says it', async () => {
  const of = await given();
  const morning = dayReportSheet({
    ...of,
    kind: 'morningReport',
    report: { ...of.report, ask: null },
    since: null,
    changes: [],
  });
  expect(tableNamed(morning, 'To be asked for today')).toBeUndefined();
  const said = (sheet: Sheet) =>
    sheet.blocks.flatMap((block) => (block.kind === 'paragraph' ? block.text : []));
  expect(said(morning).join(' ')).toContain('You have not marked this day as seen yet');
  expect(said(dayReportSheet({ ...of, changes: [] }))).toContain('Nothing changed.');
  const none = dayReportSheet({ ...of, report: { ...of.report, lines: [] } });
  expect(said(none)).toContain('No case on this day.');
  expect(none.blocks.some(({ kind }) => kind === 'table')).toBe(true);
});

test.each(['a4', 'letter'] as const)(
  'it prints on %s in black and white, tagged, every page numbered',
  async (paper) => {
    const pdf = await paintSheet(dayReportSheet(await given()), paper, new Date(NOW));
    const pages = await wordsOf(pdf);
    for (const [index, page] of pages.entries()) {
      const text = textOf(page);
      expect(text).toContain(`Page ${index + 1} of ${pages.length}`);
      expect(text).toContain('Local policy and the makers');
      expect(Math.max(...page.map(({ y }) => y))).toBeLessThan(paper === 'a4' ? 842 - 14 : 792 - 14);
    }
    for (const colour of await coloursOf(pdf)) expect(BLACK_AND_WHITE).toContain(colour);
    const roles = (await tagsOf(pdf)).map(({ role }) => role);
    for (const role of ['H1', 'H2', 'H3', 'Table', 'TH', 'TD']) expect(roles).toContain(role);
  },
  120_000,
);
