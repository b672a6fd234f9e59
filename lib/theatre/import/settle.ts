import type { DateOrder } from '../../lists/dates';
import type { Construct } from '../../plans/plan';
import type { PlainDate } from '../../quantities/plainDate';
import { caseReference, type Urgency, urgency } from '../surgicalCase';
import type { ImportFault, ImportProblem, ImportRemark } from './faults';
import type { ImportField } from './fields';
import { type Named, nameKey, regionOf, sideOf } from './names';
import { settleTimes } from './settleTimes';
import { looksLikePatientNumber, shownCell } from './shown';
import type { StatedRow } from './table';
import type { RepeatedHour, WallTimes } from './wallTime';

/** The hospital, as far as a row is read against it. */
export interface HospitalNames {
  wall: WallTimes;
  today: PlainDate;
  theatres: readonly Named[];
  surgeons: readonly Named[];
  /** Names of people who are here and no surgeons. */
  others: readonly string[];
}

/** What a person chose where the file leaves it open; `null` where nothing is chosen. */
export interface RowChoices {
  dateOrder: DateOrder | 'mixed' | null;
  repeatedHour: RepeatedHour | null;
  urgencyWhereNone: Urgency | null;
}

/** What a row says, read. `null`: it does not say. */
export interface SettledRow {
  row: number;
  theatre: Named | null;
  startsAt: string | null;
  endsAt: string | null;
  region: Construct['region'] | null;
  limb: 'left' | 'right' | null;
  surgeon: Named | null;
  urgency: Urgency | null;
  caseReference: string | null;
  rowId: string | null;
  remarks: ImportRemark[];
}

/** Notes a fault of the present row. */
export type Wrong = (field: ImportField | null, fault: ImportFault) => void;

const LONGEST_ROW_ID = 80;
/** Fields that name a theatre or a person of the hospital. */
const NAMES: readonly ImportField[] = ['theatre', 'surgeon'];

/** Reads one row against the hospital; every fault of it, each at its cell. */
export function settleRow(
  stated: StatedRow<ImportField>,
  hospital: HospitalNames,
  choices: RowChoices,
): { settled: SettledRow; problems: ImportProblem[] } {
  const problems: ImportProblem[] = [];
  const remarks: ImportRemark[] = [];
  const wrong: Wrong = (field, fault) => problems.push(problemAt(stated, field, fault));
  const text = (field: ImportField): string | null => {
    const cell = stated.cells[field];
    if (cell === undefined || cell.value === null) return null;
    if (cell.several) {
      wrong(field, { code: 'several' });
      return null;
    }
    return String(cell.value);
  };
  const named = (field: ImportField, all: readonly Named[], unknown: () => ImportFault): Named | null => {
    const said = text(field);
    if (said === null) return null;
    const found = all.filter(({ name }) => nameKey(name) === nameKey(said));
    if (found.length > 1) wrong(field, { code: 'surgeon-ambiguous' });
    if (found.length === 0) wrong(field, unknown());
    return found.length === 1 ? (found[0] ?? null) : null;
  };

  const theatre = named('theatre', hospital.theatres, () => ({
    code: 'theatre-unknown',
    known: hospital.theatres.map(({ name }) => name),
  }));
  const surgeon = named('surgeon', hospital.surgeons, () => {
    const said = nameKey(String(stated.cells.surgeon?.value));
    return {
      code: hospital.others.some((name) => nameKey(name) === said) ? 'not-a-surgeon' : 'surgeon-unknown',
    };
  });
  const { startsAt, endsAt } = settleTimes(stated, hospital, choices, wrong, remarks);

  const regionSaid = text('region');
  const region = regionSaid === null ? null : regionOf(regionSaid);
  if (regionSaid !== null && region === null) wrong('region', { code: 'region-unknown' });
  const sideSaid = text('side');
  const side = sideSaid === null ? null : sideOf(sideSaid);
  if (side === 'both') wrong('side', { code: 'both-sides' });
  if (sideSaid !== null && side === null) wrong('side', { code: 'side-unknown' });

  const reference = text('caseReference')?.toUpperCase() ?? null;
  if (reference !== null && !caseReference.safeParse(reference).success)
    wrong('caseReference', { code: 'not-a-reference' });

  const urgencySaid = text('urgency');
  let urgent = urgencySaid === null ? null : (urgency.safeParse(urgencySaid.toLowerCase()).data ?? null);
  if (urgencySaid !== null && urgent === null) wrong('urgency', { code: 'urgency-unknown' });
  // a case that stands has its urgency already
  if (stated.cells.urgency === undefined && reference === null && choices.urgencyWhereNone !== null) {
    urgent = choices.urgencyWhereNone;
    remarks.push({ code: 'urgency-from-choice' });
  }

  const rowId = text('rowId');
  if (rowId !== null) {
    if (looksLikePatientNumber(rowId)) wrong('rowId', { code: 'looks-like-a-patient-number' });
    else if (/^\d{1,3}$/.test(rowId)) wrong('rowId', { code: 'row-counter' });
    else if (rowId.length > LONGEST_ROW_ID) wrong('rowId', { code: 'row-id-too-long' });
  }
  const limb = side === 'both' ? null : side;
  return {
    settled: {
      row: stated.row,
      theatre,
      startsAt,
      endsAt,
      region,
      limb,
      surgeon,
      urgency: urgent,
      caseReference: reference,
      rowId,
      remarks,
    },
    problems,
  };
}

/** A fault at a cell of a row, with what stands there as far as it may be repeated. */
export function problemAt(
  { row, cells }: StatedRow<ImportField>,
  field: ImportField | null,
  fault: ImportFault,
): ImportProblem {
  const cell = field === null ? undefined : cells[field];
  const shown =
    fault.code === 'looks-like-a-patient-number'
      ? { value: null, withheld: true }
      : shownCell(cell?.value ?? null, field !== null && NAMES.includes(field));
  return { row, field, column: cell?.column ?? null, ...shown, fault };
}
