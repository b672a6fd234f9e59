import { readFileSync } from 'node:fs';
import type { ExchangeView } from '@/app/exchange/[list]/exchange-view';
import { viewOf } from '@/app/exchange/[list]/view-of';
import { bringIn, type Seen } from '@/db/operations/exchange/bring-in';
import type { ExchangeChoices } from '@/db/operations/exchange/work';
import { columnsOf as columnsOfList, type ListKind } from '@/lib/exchange/list';
import { LISTS } from '@/lib/exchange/lists/lists';
import { readExchangeFile } from '@/lib/exchange/readFile';
import { may } from '@/lib/people/permissions';
import { exchangeWords, fileWords } from '@/lib/wording/exchange';
import { answerOf, newId } from '../administrator';
import { type Answer, CannotDo, type Given } from '../command';
import type { AtWork } from './at-work';
import { columnsOf, DATE_ORDERS, ENCODING_NAMES, oneOf, onlyThese, text, texts } from './options';
import { firstOf, onlyTried, openColumnLines, problemLine, type TryEnd } from './told';

const ENCODING_HINT = ` By --encoding ${Object.keys(ENCODING_NAMES).join(', ')}.`;

/** Tries a list, and brings it in where `--yes` says so: through the same operation as the screen, all of it or nothing. */
export async function importOneList(at: AtWork, list: ListKind, path: string): Promise<Answer> {
  const info = LISTS[list];
  const { given, db, person } = at;
  if (!may(person, info.bringIn)) throw new CannotDo(exchangeWords.mayNot(person.name));
  const choices = choicesOf(given, list);
  const bytes = new Uint8Array(readFileSync(path));
  const read = await readExchangeFile(bytes, info, choices);
  if (!read.ok)
    throw new CannotDo(fileWords(read.fault) + (read.fault.code === 'not-text' ? ENCODING_HINT : ''));
  const { file } = read;
  const now = given.now().toISOString();
  const run = async (seen: Seen | null) =>
    answerOf(await bringIn({ db, now, newId, person, list, bytes, file, choices, seen }));
  const tried = await run(null);
  const view = viewOf(tried, info, { file, choices, at: now });
  const lines = triedLines(view, { isShort: given.options.yes === true });
  const end = endOf(view);
  if (given.options.yes !== true || end !== 'ready') return onlyTried(lines, { list, ...view }, end);
  const { done } = await run(tried);
  return {
    exit: 0,
    lines: [
      ...lines,
      `Brought in: ${done?.added} added, ${done?.changed} changed. It is known as ${done?.importId}; “import take-back ${done?.importId}” takes it back.`,
    ],
    json: { list, ...view, done },
  };
}

function endOf({ problems, questions, undecided, counts }: ExchangeView): TryEnd {
  if (problems.length + questions.length + undecided.length > 0) return 'stopped';
  if (counts.new + counts.changed > 0) return 'ready';
  return counts.unchanged === 0 && counts.leftOut > 0 ? 'allLeftOut' : 'nothingToDo';
}

function choicesOf(given: Given, list: ListKind): ExchangeChoices {
  const ofAll = [
    'as',
    'yes',
    'sheet',
    'encoding',
    'column',
    'dates',
    'decimals',
    'repair',
    'keep',
    'empty',
  ] as const;
  const ofStock = list === 'stock' ? (['more', 'fewer', 'note'] as const) : [];
  onlyThese(given, [...ofAll, ...(list === 'catalogue' ? (['maker'] as const) : []), ...ofStock]);
  return {
    sheet: text(given, 'sheet'),
    encoding: oneOf(given, 'encoding', ENCODING_NAMES),
    columns: columnsOf(
      given,
      columnsOfList(LISTS[list]).map(({ key }) => key),
    ) as Record<string, number | null>,
    dateOrder: oneOf(given, 'dates', DATE_ORDERS),
    decimal: oneOf(given, 'decimals', { point: 'point', comma: 'comma' } as const),
    repaired: texts(given, 'repair'),
    kept: texts(given, 'keep'),
    empty: oneOf(given, 'empty', { keep: 'keep', clear: 'clear' } as const) ?? 'keep',
    newMakers: texts(given, 'maker'),
    more: oneOf(given, 'more', { found: 'found', 'entered-too-few': 'enteredTooFew' } as const),
    fewer: oneOf(given, 'fewer', { 'not-found': 'notFound', 'entered-too-many': 'enteredTooMany' } as const),
    note: text(given, 'note') ?? '',
  };
}

const DONE_WORDS = { new: 'new', changed: 'changed', unchanged: 'as it is' } as const;

function triedLines(view: ExchangeView, { isShort }: { isShort: boolean }): string[] {
  const { counts, columns, questions, problems, newMakers, open } = view;
  const fileHeading = (number: number | null) =>
    view.fileColumns.find((column) => column.number === number)?.heading ?? '(no heading)';
  const changing = view.lines.filter(({ kind }) => kind !== 'unchanged');
  return [
    view.understood,
    ...columns.flatMap(({ key, heading, number, by }) =>
      number === null
        ? []
        : [
            `  ${heading}: column ${number}, “${fileHeading(number)}”${by === 'likely' ? `  ? by likeness only: say --column ${key}=${number}, or another` : ''}`,
          ],
    ),
    ...(view.before === null ? [] : [`This very file came in before, ${view.before}.`]),
    ...firstOf(view.notes),
    ...(isShort
      ? []
      : firstOf(
          changing.map(({ kind, name, changes, remarks }) =>
            [`${DONE_WORDS[kind]}: ${name}`, ...changes, ...remarks].join('; '),
          ),
          view.moreLines,
        )),
    ...firstOf(problems.map(problemLine), view.moreProblems),
    ...questions.flatMap(({ key, heading, damage, why, cells, more, canRepair, canKeep }) => [
      `? ${heading}, ${damage.toLowerCase()}: ${why}`,
      ...cells.map(
        ({ row, value, repaired }) =>
          `    row ${row}: “${value}”${repaired === null ? '' : ` → “${repaired}”`}`,
      ),
      ...(more > 0 ? [`    … and ${more} more`] : []),
      `    Answer: ${[...(canRepair ? [`--repair ${key}`] : []), ...(canKeep ? [`--keep ${key}`] : [])].join(' or ') || 'put them right in the file'}.`,
    ]),
    ...openColumnLines(lackingColumns(view), { columns: view.fileColumns, sheets: view.sheets }),
    ...(open.dateOrder ? ['Dates: --dates day-first or month-first.'] : []),
    ...(open.decimal ? ['Decimals: --decimals point or comma.'] : []),
    ...newMakers.map((name) => `A new maker is added by --maker “${name}”.`),
    ...(open.more ? ['Where more lie there than are on record: --more found or entered-too-few.'] : []),
    ...(open.fewer ? ['Where fewer lie there: --fewer not-found or entered-too-many, and --note WHY.'] : []),
    `${counts.new} new, ${counts.changed} changed, ${counts.unchanged} as they are, ${counts.leftOut} ${counts.leftOut === 1 ? 'row' : 'rows'} left out.`,
  ];
}

/** Columns of ours that the file as a whole is asked for, by the names that `--column` takes. */
const lackingColumns = ({ columns, problems }: ExchangeView): string[] =>
  columns
    .filter((ours) => problems.some(({ row, column }) => row === null && column === ours.heading))
    .filter(({ number }) => number === null)
    .map(({ key }) => key);
