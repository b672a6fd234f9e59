import { dayWords } from '../theatre/localTime';
import type { DayReport } from '../theatre/report/dayReport';
import type { CaseLine } from '../theatre/report/lines';
import { askLines } from '../wording/day-asks';
import { type ChangeLine, dayChangesWords } from '../wording/day-changes';
import {
  bucketFigures,
  expectedWords,
  forWords,
  lackWords,
  lineMargin,
  lineNeedBy,
  lineStanding,
  marginWords,
  pouchesOf,
  type ReportNames,
  timesWords,
  turnedWords,
  wantWords,
  whenWords,
  whereWords,
  dayReportWords as words,
} from '../wording/day-report';
import { stepLines } from '../wording/day-steps';
import { capitalised } from '../wording/numbers';
import { SHEET_WORDS } from '../wording/paper';
import { dateWords, editionOf, momentWords, type Printing, recordCode, sheetCautions } from './edition';
import { type Block, type Cell, type Column, type Sheet, text, textCell } from './sheet';

/** What the paper of a report is made from. */
export interface DayReportSheetOf {
  kind: 'morningReport' | 'dayBeforeReport';
  report: DayReport;
  names: ReportNames;
  /** Since when the printing person was told of changes; `null` where they never marked the day as seen. */
  since: string | null;
  changes: readonly ChangeLine[];
  /** The ledger's newest entry when the report was made: which state of things it tells. */
  ledgerSeq: number;
  printing: Printing;
}

const { columns: heads } = words;
const column = (head: string, widthMm: number | null): Column => ({ head, widthMm, align: 'left' });
const heading = (words: string, note: string | null = null, level: 2 | 3 = 2): Block => ({
  kind: 'heading',
  level,
  text: words,
  note,
});
const says = (words: string): Block => ({ kind: 'paragraph', text: words, size: 'body' });

/** The report of a day on paper: what to do first, what changed, then theatre by theatre. */
export function dayReportSheet(given: DayReportSheetOf): Sheet {
  const { kind, report, names, printing, ledgerSeq } = given;
  const edition = editionOf(String(ledgerSeq), printing);
  return {
    kind,
    kindWords: SHEET_WORDS[kind],
    title: dayWords(report.day),
    subtitle: kind === 'morningReport' ? words.morningLead : words.dayBeforeLead,
    facts: [
      { term: words.dayTerm, value: dateWords(report.day) },
      ...bucketFigures(report.counts).map(({ label, value }) => ({ term: label, value: String(value) })),
      { term: words.asOfTerm, value: momentWords(report.now) },
    ],
    blocks:
      report.lines.length === 0
        ? [says(`${words.noCase}.`), ...changeBlocks(given)]
        : [
            ...stepBlocks(given),
            ...askBlocks(given),
            ...changeBlocks(given),
            ...theatreBlocks(report.lines, names),
            ...onTheWayBlocks(given),
            ...lackingBlocks(given),
            ...turnedBlocks(given),
          ],
    record: recordCode(kind, report.day, `E${ledgerSeq}`, printing.at),
    edition,
    cautions: sheetCautions(edition),
  };
}

function table(caption: string, columns: Column[], rowHeader: number, rows: Cell[][], none: string): Block {
  if (rows.length === 0) return says(none);
  return { kind: 'table', caption, columns, rowHeader, rowMm: 8, rows };
}

function stepBlocks({ report, names }: DayReportSheetOf): Block[] {
  const columns = [
    column(heads.done, 12),
    column(heads.by, 26),
    column(heads.what, 44),
    column(heads.why, null),
  ];
  const rows = stepLines(report.steps, names).map((step): Cell[] => [
    { kind: 'tick' },
    textCell(text(step.needBy, 'body', true)),
    textCell(text(step.about, 'body', true), text(step.word, 'small')),
    textCell(text(step.sentence), text(step.cases.map(({ reference }) => reference).join(', '), 'small')),
  ]);
  return [heading(words.first, words.firstNote), table(words.first, columns, 2, rows, words.firstNone)];
}

function askBlocks({ report, names }: DayReportSheetOf): Block[] {
  if (report.ask === null) return [];
  const columns = [
    column(heads.done, 12),
    column(heads.what, 56),
    column(heads.why, null),
    column(heads.for, 34),
  ];
  const rows = askLines(report.ask, names).map((line): Cell[] => [
    { kind: 'tick' },
    textCell(text(line.about, 'body', true), text(line.word, 'small')),
    textCell(text(line.sentence)),
    textCell(text(line.references.join(', '), 'small')),
  ]);
  return [heading(words.ask, words.askNote), table(words.ask, columns, 1, rows, words.askNone)];
}

function changeBlocks({ changes, since }: DayReportSheetOf): Block[] {
  const { columns: said } = dayChangesWords;
  const columns = [column(said.what, 40), column(said.change, null), column(said.by, 62)];
  const rows = changes.map((change): Cell[] => [
    textCell(text(change.about, 'body', true), ...(change.where === '' ? [] : [text(change.where, 'small')])),
    textCell(text(change.word, 'body', true), text(change.sentence)),
    textCell(text(change.by, 'small')),
  ]);
  return [
    heading(dayChangesWords.title, since),
    table(
      dayChangesWords.title,
      columns,
      0,
      rows,
      since === null ? dayChangesWords.never : dayChangesWords.nothing,
    ),
  ];
}

function theatreBlocks(lines: readonly CaseLine[], names: ReportNames): Block[] {
  const theatres = [...new Set(lines.map(({ facts }) => facts.theatre))];
  const columns = [
    column(heads.time, 24),
    column(heads.case, 27),
    column(heads.standing, null),
    column(heads.sets, 36),
    column(heads.needBy, 22),
    column(heads.margin, 23),
  ];
  return [
    heading(words.theatres),
    ...theatres.flatMap((theatre): Block[] => {
      const its = lines.filter(({ facts }) => facts.theatre === theatre);
      return [
        heading(theatre, null, 3),
        table(
          theatre,
          columns,
          1,
          its.map((line) => caseRow(line, names)),
          '',
        ),
      ];
    }),
  ];
}

function caseRow(line: CaseLine, names: ReportNames): Cell[] {
  const { word, sentence } = lineStanding(line, names);
  const gets = [...line.sets.map(({ code }) => code), ...pouchesOf(line, names)];
  return [
    textCell(text(timesWords(line.facts), 'body', true)),
    textCell(text(line.facts.reference, 'body', true), text(line.facts.surgeon, 'small')),
    textCell(text(word, 'body', true), ...(sentence === '' ? [] : [text(sentence, 'small')])),
    textCell(text(gets.length === 0 ? '–' : gets.join(', '))),
    textCell(text(lineNeedBy(line, names.now))),
    textCell(text(lineMargin(line))),
  ];
}

function onTheWayBlocks({ report, names }: DayReportSheetOf): Block[] {
  const columns = [
    column(heads.set, 24),
    column(heads.where, null),
    column(heads.p50, 25),
    column(heads.p90, 25),
    column(heads.needBy, 25),
    column(heads.margin, 23),
    column(heads.for, 31),
  ];
  const rows = report.onTheWay.map((one): Cell[] => [
    textCell(text(one.set.code, 'body', true)),
    textCell(text(capitalised(whereWords(one, names.now)))),
    textCell(text(expectedWords(one.expected, names.now).p50)),
    textCell(text(expectedWords(one.expected, names.now).p90)),
    textCell(text(whenWords(one.needByAt, names.now))),
    textCell(text(marginWords(one.marginMinutes))),
    textCell(text(forWords(one), 'small')),
  ]);
  return [
    heading(words.onTheWay, words.expected),
    table(words.onTheWay, columns, 0, rows, words.onTheWayNone),
  ];
}

function lackingBlocks({ report, names }: DayReportSheetOf): Block[] {
  const columns = [column(heads.set, 44), column(heads.why, null), column(heads.for, 52)];
  const rows = report.lacking.map((one): Cell[] => [
    textCell(text(one.set.code, 'body', true), text(one.set.configuration, 'small')),
    textCell(...lackWords(one, names).map((said) => text(capitalised(said)))),
    textCell(text(wantWords(one), 'small')),
  ]);
  return [heading(words.lacking), table(words.lacking, columns, 0, rows, words.lackingNone)];
}

function turnedBlocks({ report, names }: DayReportSheetOf): Block[] {
  const columns = [column(heads.set, 28), column(heads.between, null), column(heads.margin, 28)];
  const rows = report.turned.map((one): Cell[] => [
    textCell(text(one.code, 'body', true)),
    textCell(text(turnedWords(one, names.now))),
    textCell(text(marginWords(one.marginMinutes), 'body', one.tight)),
  ]);
  return [heading(words.turned), table(words.turned, columns, 0, rows, words.turnedNone)];
}
