import type { BroughtIn } from '@/db/operations/exchange/bring-in';
import type { ExchangeChoices } from '@/db/operations/exchange/work';
import type { ListColumn, ListInfo } from '@/lib/exchange/list';
import { columnsOf } from '@/lib/exchange/list';
import type { Change, RowOutcome } from '@/lib/exchange/outcome';
import type { ReadFile } from '@/lib/exchange/readFile';
import type { Question } from '@/lib/exchange/readRows';
import { saidCell } from '@/lib/exchange/shownCell';
import {
  DAMAGE_WORDS,
  headingOf,
  noteWords,
  problemWords,
  suspicionWords,
  understoodWords,
} from '@/lib/wording/exchange';
import { momentWords } from '@/lib/wording/sets';
import type { ExchangeView, LineView, QuestionView } from './exchange-view';

/** More of one kind nobody reads on a screen; how many there are beyond is said. */
const MOST_LINES = 1000;
const MOST_CELLS = 12;
const MOST_SHOWN = 40;

const short = (text: string) => (text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN)}…` : text);

/** What trying a file came to, in words. */
export function viewOf(
  { digest, marks, mapping, undecided, read, outcomes, problems, before, done }: BroughtIn,
  info: ListInfo,
  { file, choices, at }: { file: ReadFile; choices: ExchangeChoices; at: string },
): ExchangeView {
  const columns = new Map(info.columns.map((column) => [column.key, column]));
  const heading = (key: string | null) => headingOf(info, key) ?? 'the row';
  const count = (kind: RowOutcome['kind']) => outcomes.filter((one) => one.kind === kind).length;
  const telling = [...outcomes].sort((a, b) => order(a) - order(b));
  const { understood } = file;
  return {
    seen: { digest, marks },
    understood: understoodWords(file),
    sheets: understood.format === 'xlsx' ? understood.sheets : [],
    sheet: understood.format === 'xlsx' ? understood.sheet : null,
    isText: understood.format === 'csv',
    fileColumns: mapping.columns,
    columns: columnsOf(info).map((column) => ({
      key: column.key,
      heading: column.heading,
      says: column.says,
      number: mapping.chosen[column.key]?.number ?? null,
      by: mapping.chosen[column.key]?.by ?? 'name',
    })),
    undecided: undecided.map(heading),
    open: {
      ...read.open,
      empty: info.partialBy !== null && count('changed') + count('unchanged') > 0,
      more: info.kind === 'stock' && differs(outcomes, (difference) => difference > 0),
      fewer: info.kind === 'stock' && differs(outcomes, (difference) => difference < 0),
    },
    newMakers: [
      ...new Set([
        ...choices.newMakers,
        ...problems.flatMap(({ code, value }) => (code === 'maker-unknown' && value ? [value] : [])),
      ]),
    ],
    questions: read.questions.map((question) => questionView(question, heading(question.column))),
    problems: problems.slice(0, MOST_LINES).map((problem, at) => ({
      id: String(at),
      row: problem.row,
      column: problem.column === null ? null : heading(problem.column),
      value: problem.value === null ? null : short(problem.value),
      withheld: false,
      sentence: problemWords(problem, info),
    })),
    moreProblems: Math.max(0, problems.length - MOST_LINES),
    lines: telling.slice(0, MOST_LINES).map((one) => lineView(one, columns)),
    moreLines: Math.max(0, outcomes.length - MOST_LINES),
    counts: {
      new: count('new'),
      changed: count('changed'),
      unchanged: count('unchanged'),
      leftOut: read.leftOut.length,
    },
    notes: read.notes.map(
      (note) =>
        `${note.row === null ? '' : `Row ${note.row}, ${heading(note.column)}: `}${noteWords(note, heading(note.column))}`,
    ),
    before: before === null ? null : `${momentWords(before.at, at)} by ${before.by}`,
    done,
  };
}

/** What would be done comes before what stays as it is. */
const order = ({ kind }: RowOutcome) => (kind === 'unchanged' ? 1 : 0);

function differs(outcomes: readonly RowOutcome[], is: (difference: number) => boolean): boolean {
  return outcomes.some(({ work }) => is((work as { difference?: number }).difference ?? 0));
}

function lineView(
  { rows, kind, name, changes, remarks }: RowOutcome,
  columns: ReadonlyMap<string, ListColumn>,
): LineView {
  const row = rows[0] ?? 0;
  return {
    id: `${row}-${name}`,
    row,
    kind,
    name,
    changes: changes
      .slice(0, MOST_CELLS)
      .map((change) => changeWords(change, columns))
      .concat(changes.length > MOST_CELLS ? [`and ${changes.length - MOST_CELLS} more`] : []),
    remarks,
  };
}

function changeWords({ column, from, to, of }: Change, columns: ReadonlyMap<string, ListColumn>): string {
  const own = columns.get(column);
  const say = (text: string) => (own ? saidCell(own, text) : text || 'not stated');
  return `${of ? `${of}, ` : ''}${own?.heading ?? column}: ${say(from)} → ${say(to)}`;
}

function questionView({ key, damage, cells }: Question, heading: string): QuestionView {
  const canRepair = cells.every(({ repaired }) => repaired !== null);
  const [first] = cells;
  return {
    key,
    heading,
    damage: DAMAGE_WORDS[damage],
    why: suspicionWords(
      damage,
      { ...first?.suspicion, repaired: canRepair ? (first?.repaired ?? null) : null },
      true,
    ),
    canRepair,
    canKeep: cells.every(({ suspicion }) => suspicion.date === undefined),
    cells: cells
      .slice(0, MOST_CELLS)
      .map(({ row, value, repaired }) => ({ row, value: short(value), repaired })),
    more: Math.max(0, cells.length - MOST_CELLS),
  };
}
