import { readFileSync } from 'node:fs';
import { drawReference, HOSPITAL_LETTERS } from '@/app/_server/case-references';
import { planAgainBy } from '@/app/_server/list-planner';
import type { ImportView } from '@/app/cases/import/import-view';
import { viewOf } from '@/app/cases/import/view-of';
import { importList } from '@/db/operations/theatre/import-list';
import { roundTimes } from '@/db/queries/turns/roundTimes';
import { FIELD_HEADINGS, IMPORT_FIELDS } from '@/lib/theatre/import/fields';
import { readListFile } from '@/lib/theatre/import/readList';
import { urgency } from '@/lib/theatre/surgicalCase';
import { fileFaultWords } from '@/lib/wording/list-import';
import { answerOf, newId } from '../administrator';
import { type Answer, CannotDo, type Given } from '../command';
import type { AtWork } from './at-work';
import { columnsOf, DATE_ORDERS, oneOf, onlyThese, text } from './options';
import { firstOf, onlyTried, openColumnLines, problemLine, type TryEnd } from './told';

type TriedView = Omit<ImportView, 'planned'>;

/**
 * Tries a theatre list, and imports it where `--yes` says so, through the same operation as the screen; then who gets which set
 * is planned anew, as after an import there.
 */
export async function importTheatreList({ given, db, person }: AtWork, path: string): Promise<Answer> {
  const choices = choicesOf(given);
  const { sheet: _sheet, columns: _columns, ...rowChoices } = choices;
  const bytes = new Uint8Array(readFileSync(path));
  const read = await readListFile(bytes, choices);
  if (!read.ok) throw new CannotDo(fileFaultWords(read.fault));
  const { list } = read;
  const now = given.now().toISOString();
  const round = await roundTimes(db);
  const run = async (digest: string | null) =>
    answerOf(
      await importList({
        ...{
          db,
          person,
          now,
          newId,
          draw: drawReference,
          hospitalLetters: HOSPITAL_LETTERS,
          round,
          bytes,
          list,
          digest,
        },
        choices: rowChoices,
      }),
    );
  const tried = await run(null);
  const view = viewOf(tried, list, choices, now);
  const lines = triedLines(view);
  const end = endOf(view);
  if (given.options.yes !== true || end !== 'ready')
    return onlyTried(lines, { list: 'theatre-list', ...view }, end);
  const { done } = viewOf(await run(tried.digest), list, choices, now);
  const changed = done !== null && done.booked + done.moved > 0;
  const planner = { db, person, now: () => given.now().toISOString(), newId };
  const planned = changed ? await planAgainBy(planner, 'import-list') : null;
  return {
    exit: 0,
    lines: [
      ...lines,
      `Imported: ${done?.booked} booked, ${done?.moved} moved, ${done?.linked} known by their row.`,
      ...(planned === null ? [] : [`Planned anew: ${planned.sentence}`]),
    ],
    json: { list: 'theatre-list', ...view, done, planned: planned?.sentence ?? null },
  };
}

function endOf({ problems, importedBefore, links, lines }: TriedView): TryEnd {
  if (problems.length > 0) return 'stopped';
  const does = links > 0 || lines.some(({ kind }) => kind !== 'unchanged');
  return does && importedBefore === null ? 'ready' : 'nothingToDo';
}

function choicesOf(given: Given) {
  onlyThese(given, ['as', 'yes', 'sheet', 'column', 'dates', 'repeated-hour', 'urgency']);
  return {
    sheet: text(given, 'sheet'),
    columns: columnsOf(given, IMPORT_FIELDS),
    dateOrder: oneOf(given, 'dates', DATE_ORDERS),
    repeatedHour: oneOf(given, 'repeated-hour', { first: 'first', second: 'second' } as const),
    urgencyWhereNone: oneOf(given, 'urgency', Object.fromEntries(urgency.options.map((one) => [one, one]))),
  };
}

const DONE_WORDS = { new: 'new', moved: 'moved', unchanged: 'as it is' } as const;

function triedLines({
  understood,
  sheets,
  columns,
  chosen,
  importedBefore,
  lines,
  problems,
  lost,
  notNamed,
  open,
}: TriedView): string[] {
  return [
    ...understood,
    ...(importedBefore === null
      ? []
      : [`This very file was imported before, ${importedBefore}: there is nothing to do.`]),
    ...firstOf(
      lines.map(({ row, kind, reference, when, before, theatre, what, surgeon, remarks }) =>
        [
          `Row ${row}, ${DONE_WORDS[kind]}: ${reference === null ? '' : `${reference}, `}${when}, ${theatre}`,
          `${what}, ${surgeon}`,
          ...(before === null ? [] : [`was ${before}`]),
          ...remarks,
        ].join('; '),
      ),
    ),
    ...firstOf(problems.map(problemLine)),
    ...firstOf(lost),
    ...(notNamed.length === 0
      ? []
      : [`Not named by the file, and left as they are: ${firstOf(notNamed).join('; ')}.`]),
    ...openColumnLines(
      IMPORT_FIELDS.filter(
        (field) =>
          chosen?.[field] === null &&
          problems.some(({ row, column }) => row === null && column === FIELD_HEADINGS[field]),
      ),
      { columns, sheets },
    ),
    ...(open.dateOrder ? ['Dates: --dates day-first or month-first.'] : []),
    ...(open.repeatedHour ? ['The hour that comes twice: --repeated-hour first or second.'] : []),
    ...(open.urgency ? [`Where no urgency is stated: --urgency ${urgency.options.join(', ')}.`] : []),
  ];
}
