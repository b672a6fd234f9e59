import { type DateOrder, dateOrderOf } from '../../lists/dates';
import type { ImportFault, ImportProblem } from './faults';
import { IMPORT_FIELDS, type ImportField } from './fields';
import { type ListNow, matchRows } from './match';
import type { ListedCase, RowOutcome } from './outcome';
import type { ReadList } from './readList';
import { type HospitalNames, type RowChoices, settleRow } from './settle';

export interface ListTried {
  outcomes: RowOutcome[];
  problems: ImportProblem[];
  /** How dates such as 03/04/2026 were read; `null` where there is none. */
  dateOrder: DateOrder | 'mixed' | null;
  /** Cases on the theatres and days of the file that it does not name. They stay as they are. */
  notNamed: ListedCase[];
}

/** Reads every row against the hospital and the list as it stands: what importing would do, and all that is in the way. */
export function tryList(
  { rows, understood }: ReadList,
  hospital: HospitalNames,
  list: ListNow,
  choices: RowChoices,
): ListTried {
  const missing = understood.format === 'fhir' ? [] : columnProblems(understood.columns);
  const dates = rows.flatMap(({ cells }) =>
    typeof cells.date?.value === 'string' ? [cells.date.value] : [],
  );
  const dateOrder = choices.dateOrder ?? dateOrderOf(dates);
  if (missing.length > 0) return { outcomes: [], problems: missing, dateOrder, notNamed: [] };
  const read = rows.map((stated) => {
    const { settled, problems } = settleRow(stated, hospital, { ...choices, dateOrder });
    return { stated, settled, problems, faulty: problems.length > 0 };
  });
  const matched = matchRows(read, list);
  const problems = [...read.flatMap((one) => one.problems), ...matched.problems].sort(
    (a, b) => (a.row ?? 0) - (b.row ?? 0) || placeOf(a.field) - placeOf(b.field),
  );
  return { outcomes: matched.outcomes, problems, dateOrder, notNamed: notNamed(matched.outcomes, list) };
}

const placeOf = (field: ImportField | null) => (field === null ? -1 : IMPORT_FIELDS.indexOf(field));

/** Fields of which one each must have a column, unless rows name cases of ours, which have them already. */
const COLUMNS_NEEDED: readonly (readonly ImportField[])[] = [
  ['theatre'],
  ['start', 'date'],
  ['end', 'minutes'],
  ['region'],
  ['side'],
  ['surgeon'],
];

function columnProblems({
  chosen,
  named,
}: {
  chosen: Record<ImportField, number | null>;
  named: { field: ImportField; columns: number[] }[];
}): ImportProblem[] {
  const problem = (field: ImportField, fault: ImportFault): ImportProblem => ({
    row: null,
    field,
    column: null,
    value: null,
    withheld: false,
    fault,
  });
  const twice = named.map(({ field, columns }) => problem(field, { code: 'column-twice', columns }));
  if (chosen.caseReference !== null) return twice;
  const missing = COLUMNS_NEEDED.flatMap((fields) => {
    const [field] = fields;
    return field !== undefined && fields.every((one) => chosen[one] === null)
      ? [problem(field, { code: 'column-missing' })]
      : [];
  });
  return [...twice, ...missing];
}

function notNamed(outcomes: readonly RowOutcome[], { cases, now }: ListNow): ListedCase[] {
  const named = new Set(outcomes.flatMap((one) => (one.kind === 'new' ? [] : [one.listed.id])));
  const key = (theatreId: string, at: string) => `${theatreId} ${at.slice(0, 10)}`;
  const covered = new Set(
    outcomes.map((one) =>
      one.kind === 'unchanged'
        ? key(one.listed.theatreId, one.listed.startsAt)
        : key(one.to.theatre.id, one.to.startsAt),
    ),
  );
  return cases.filter(
    (one) =>
      !one.cancelled &&
      one.endsAt > now &&
      !named.has(one.id) &&
      covered.has(key(one.theatreId, one.startsAt)),
  );
}
