import { LIMB_WORDS, REGION_WORDS, URGENCY_WORDS } from '../../wording/plans';
import { collisions } from './collisions';
import type { ImportFault, ImportProblem, ImportRemark } from './faults';
import type { ImportField } from './fields';
import type { Named } from './names';
import type { ListedCase, Place, RowOutcome } from './outcome';
import type { SettledRow } from './settle';
import { problemAt } from './settle';
import type { StatedRow } from './table';

/** The theatre list as it stands. */
export interface ListNow {
  now: string;
  cases: readonly ListedCase[];
  /** Cases by the row ids they are known under. */
  caseOfRowId: ReadonlyMap<string, string>;
  theatres: readonly Named[];
}

export interface ReadRow {
  stated: StatedRow<ImportField>;
  settled: SettledRow;
  /** Something in the row could not be read: it is not matched. */
  faulty: boolean;
}

/**
 * What each row would do to the list, and all that is in the way. A row is known by our own case reference, by the id the
 * other list gives it, or by saying exactly what a case of ours says; every other row is a new case.
 */
export function matchRows(
  rows: readonly ReadRow[],
  list: ListNow,
): { outcomes: RowOutcome[]; problems: ImportProblem[] } {
  const problems: ImportProblem[] = [];
  const outcomes: RowOutcome[] = [];
  for (const read of rows) {
    const wrong = (field: ImportField | null, fault: ImportFault) =>
      problems.push(problemAt(read.stated, field, fault));
    if (read.faulty) {
      // what it does not say is told with what it says wrongly
      if (read.stated.cells.caseReference === undefined) complete(read, wrong, !isKnown(read, list));
      continue;
    }
    const before = problems.length;
    const outcome = outcomeOf(read, list, wrong);
    if (outcome !== null && problems.length === before) outcomes.push(outcome);
  }
  const statedOf = new Map(rows.map(({ stated }) => [stated.row, stated]));
  const at = (row: number, field: ImportField | null, fault: ImportFault) => {
    const stated = statedOf.get(row);
    if (stated) problems.push(problemAt(stated, field, fault));
  };
  for (const [, same] of twice(outcomes, (one) => one.rowId))
    for (const { row } of same) at(row, 'rowId', { code: 'row-id-twice', rows: rowsOf(same) });
  for (const [, same] of twice(outcomes, (one) => (one.kind === 'new' ? null : one.listed.id)))
    for (const one of same)
      if (one.kind !== 'new')
        at(one.row, null, { code: 'case-twice', reference: one.listed.reference, rows: rowsOf(same) });
  for (const { row, fault } of collisions(outcomes, list)) at(row, 'start', fault);
  return { outcomes, problems };
}

const isKnown = ({ settled: { rowId } }: ReadRow, { caseOfRowId }: ListNow) =>
  rowId !== null && caseOfRowId.has(rowId);

type Say = (field: ImportField | null, fault: ImportFault) => void;

function outcomeOf(read: ReadRow, list: ListNow, wrong: Say): RowOutcome | null {
  const row = read.settled;
  const known = row.rowId === null ? undefined : list.caseOfRowId.get(row.rowId);
  if (row.caseReference !== null) {
    const listed = list.cases.find(({ reference }) => reference === row.caseReference);
    if (!listed) wrong('caseReference', { code: 'no-such-case' });
    else if (known !== undefined && known !== listed.id) {
      const other = list.cases.find(({ id }) => id === known);
      wrong('rowId', { code: 'row-id-of-another', reference: other?.reference ?? '' });
    } else return againstCase(row, listed, known !== undefined, list, wrong);
    return null;
  }
  const byRowId = list.cases.find(({ id }) => id === known);
  const listed = byRowId ?? list.cases.find((one) => saysTheSame(row, one));
  if (listed && complete(read, wrong, false))
    return againstCase(row, listed, known !== undefined, list, wrong);
  return listed ? null : newCase(read, list, wrong);
}

const saysTheSame = (row: SettledRow, one: ListedCase) =>
  !one.cancelled &&
  row.theatre?.id === one.theatreId &&
  row.startsAt === one.startsAt &&
  row.endsAt === one.endsAt &&
  row.region === one.region &&
  row.limb === one.limb &&
  row.surgeon?.id === one.surgeonId;

/** Whether all is said that a case needs; what is not, is a problem at its cell. A date that lacks is said with the times. */
function complete({ stated: { cells }, settled }: ReadRow, wrong: Say, urgencyToo: boolean): boolean {
  const says = (...fields: ImportField[]) => fields.some((field) => cells[field] !== undefined);
  const missing: ImportField[] = (['theatre', 'region', 'side', 'surgeon'] as const).filter(
    (field) => !says(field),
  );
  if (!says('date', 'start', 'end', 'minutes')) missing.push('start');
  if (!says('end', 'minutes')) missing.push('minutes');
  if (urgencyToo && settled.urgency === null && !says('urgency')) missing.push('urgency');
  for (const field of missing) wrong(field, { code: 'needed' });
  return missing.length === 0;
}

function newCase(read: ReadRow, { now }: ListNow, wrong: Say): RowOutcome | null {
  if (!complete(read, wrong, true)) return null;
  const row = read.settled;
  const { theatre, startsAt, endsAt, region, limb, surgeon, urgency } = row;
  if (!theatre || !startsAt || !endsAt || !region || !limb || !surgeon || !urgency) return null;
  if (endsAt <= now) {
    wrong('start', { code: 'is-over' });
    return null;
  }
  const { rowId, remarks } = row;
  const to = { theatre, startsAt, endsAt };
  return { kind: 'new', row: row.row, rowId, remarks, to, region, limb, surgeon, urgency };
}

/** A row that is about a case of ours: what it moves, and what it says otherwise than the case, which no import changes. */
function againstCase(
  row: SettledRow,
  listed: ListedCase,
  linked: boolean,
  list: ListNow,
  wrong: Say,
): RowOutcome | null {
  const { reference } = listed;
  const remarks: ImportRemark[] = [...row.remarks];
  const differs = (field: ImportField, stands: string) =>
    wrong(field, { code: 'differs-from-case', reference, stands });
  if (row.region !== null && row.region !== listed.region) differs('region', REGION_WORDS[listed.region]);
  if (row.limb !== null && row.limb !== listed.limb) differs('side', LIMB_WORDS[listed.limb]);
  if (row.surgeon !== null && row.surgeon.id !== listed.surgeonId) differs('surgeon', listed.surgeon);
  if (row.urgency !== null && row.urgency !== listed.urgency)
    remarks.push({ code: 'urgency-stays', stands: URGENCY_WORDS[listed.urgency] });
  const theatre = row.theatre ?? list.theatres.find(({ id }) => id === listed.theatreId);
  if (!theatre) throw new Error(`${reference} is in a theatre that there is not`);
  const startsAt = row.startsAt ?? listed.startsAt;
  const to: Place = { theatre, startsAt, endsAt: row.endsAt ?? keepsLength(listed, startsAt) };
  const { rowId } = row;
  const moves =
    theatre.id !== listed.theatreId || to.startsAt !== listed.startsAt || to.endsAt !== listed.endsAt;
  if (listed.cancelled) {
    wrong(row.caseReference === null ? 'rowId' : 'caseReference', { code: 'case-cancelled', reference });
    return null;
  }
  if (!moves)
    return { kind: 'unchanged', row: row.row, rowId, remarks, listed, links: rowId !== null && !linked };
  if (listed.endsAt <= list.now) wrong('start', { code: 'case-over', reference });
  else if (to.endsAt <= list.now) wrong('start', { code: 'is-over' });
  else if (
    listed.setInTheatre !== null &&
    (theatre.id !== listed.theatreId || to.startsAt !== listed.startsAt)
  )
    wrong('start', { code: 'case-begun', reference, set: listed.setInTheatre });
  return { kind: 'moved', row: row.row, rowId, remarks, listed, to };
}

const keepsLength = (listed: ListedCase, startsAt: string) =>
  new Date(Date.parse(startsAt) + Date.parse(listed.endsAt) - Date.parse(listed.startsAt)).toISOString();

/** Outcomes that share a key with another, by key. */
function twice(outcomes: readonly RowOutcome[], key: (one: RowOutcome) => string | null) {
  const byKey = new Map<string, RowOutcome[]>();
  for (const one of outcomes) {
    const found = key(one);
    if (found !== null) byKey.set(found, [...(byKey.get(found) ?? []), one]);
  }
  return [...byKey].filter(([, same]) => same.length > 1);
}

const rowsOf = (outcomes: readonly RowOutcome[]) => outcomes.map(({ row }) => row);
