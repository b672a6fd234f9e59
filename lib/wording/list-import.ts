import type { Problem } from '../identity/result';
import { never } from '../identity/result';
import type { ImportFault, ImportProblem, ImportRemark } from '../theatre/import/faults';
import { FIELD_HEADINGS, type ImportField } from '../theatre/import/fields';
import type { FileFault, ReadList } from '../theatre/import/readList';
import { IMPORT_LIMITS } from '../theatre/import/table';
import { capitalised, countWord, listWords } from './numbers';
import { REGION_WORDS, URGENCY_WORDS } from './plans';
import { hiddenWords } from './workbooks';

const REGIONS = listWords(Object.values(REGION_WORDS), 'or');
const URGENCIES = listWords(Object.values(URGENCY_WORDS), 'or');
const KILOBYTES = `${IMPORT_LIMITS.bytes / 1000} kB`;

/** What each column says and how it is written: for the screen, and for those who make such files. */
export const FIELD_WORDS: Record<ImportField, string> = {
  theatre: 'Name of the theatre, as it is here.',
  date: 'Day of the start: a date of the spreadsheet, or 2026-01-20, 20.01.2026, 20 Jan 2026 or 20/01/2026.',
  start: 'Wall-clock time at the hospital: 08:30, 0830 or 8:30 am.',
  end: 'Likewise. Earlier than the start, it is on the day after. Leave it out where Minutes is filled.',
  minutes: 'Whole minutes, 10 to 1440, where there is no End.',
  region: `${REGIONS}.`,
  side: 'Left or right.',
  surgeon: 'Name as under People here; a title before it does not matter.',
  urgency: `${URGENCIES}.`,
  caseReference:
    'Only for a case that is on the list here already, such as LM-26-7K2P: the row then changes that case.',
  rowId:
    'The other program’s own id of the row, to know it again. Never a number that a patient is known by.',
};

const rows = (all: readonly number[]) =>
  `${all.length === 1 ? 'row' : 'rows'} ${listWords([...all].sort((a, b) => a - b))}`;

/** What is wrong at a cell, and the way out. */
export function faultWords(fault: ImportFault, field: ImportField | null): string {
  const column = field === null ? 'This' : FIELD_HEADINGS[field];
  switch (fault.code) {
    case 'column-missing':
      return `No column says it: choose the column for ${column}, or head one “${column}”.`;
    case 'column-twice':
      return `Columns ${listWords(fault.columns)} are both headed so: choose which is meant.`;
    case 'needed':
      return NEEDED[field ?? 'theatre'];
    case 'several':
      return `More than one is stated, and nothing says which is meant. ${column === 'Surgeon' ? 'Mark the operating surgeon as primary performer (PPRF), or take the case in by a spreadsheet.' : 'State one.'}`;
    case 'theatre-unknown':
      return `There is no such theatre: write ${listWords(fault.known, 'or') || 'the name of one that is here'}.`;
    case 'surgeon-unknown':
      return 'No surgeon here has this name: write it as under People, given name first.';
    case 'surgeon-ambiguous':
      return 'More than one goes by this name: book the case by hand, or have the names told apart under People.';
    case 'not-a-surgeon':
      return 'Works here, but not as a surgeon: name the operating surgeon.';
    case 'not-a-date':
      return 'Is no date: write it as 2026-01-20, 20.01.2026 or 20 Jan 2026.';
    case 'no-such-day':
      return 'There is no such day: put the date right.';
    case 'date-either-order':
      return 'May be either of two days: choose whether the day or the month comes first, or write 2026-01-20.';
    case 'date-other-order':
      return 'Has day and month in another order than the rest of the file: write dates as 2026-01-20.';
    case 'date-far-off':
      return 'Is more than 400 days from today: is this the day of the case? If not, choose another column.';
    case 'date-twice':
      return 'Is another day than the one the start has: leave one of the two.';
    case 'not-a-time':
      return 'Is no time in whole minutes: write it as 08:30.';
    case 'not-minutes':
      return 'Is no whole number of minutes: write it as 90.';
    case 'minutes-out-of-range':
      return 'A case takes from 10 minutes to 24 hours: put start, end or minutes right.';
    case 'end-not-after-start':
      return 'The case would end as it begins, or before: put start or end right.';
    case 'end-and-minutes-differ':
      return `From start to end are ${fault.minutes} minutes: put one of the three right, or leave out Minutes.`;
    case 'time-skipped':
      return 'The clocks go forward over this time on that day, so it never comes: choose another.';
    case 'time-repeated':
      return 'The clocks go back on that day, and this time comes twice: choose which is meant.';
    case 'is-over':
      return 'Would be over already: take the row out, or put date and time right.';
    case 'region-unknown':
      return `Is none of the regions: write ${REGIONS}.`;
    case 'side-unknown':
      return 'Is no side: write Left or Right.';
    case 'both-sides':
      return 'A case is one limb: write two rows, one for each side.';
    case 'urgency-unknown':
      return `Is no urgency: write ${URGENCIES}.`;
    case 'not-a-reference':
      return 'Is no case reference of ours, such as LM-26-7K2P: leave it out, or put it under Row id.';
    case 'no-such-case':
      return 'There is no case of this reference here: leave it out to book a new one.';
    case 'case-cancelled':
      return `${fault.reference} is cancelled: put it back on the list first, or take the row out.`;
    case 'case-over':
      return `${fault.reference} is over, and is not moved: take the row out.`;
    case 'case-begun':
      return `${fault.set} is in theatre for ${fault.reference}: only its end can be moved.`;
    case 'case-twice':
      return `${capitalised(rows(fault.rows))} are all about ${fault.reference}: leave one.`;
    case 'differs-from-case':
      return `${fault.reference} has ${fault.stands} here, which an import does not change: put the row right, or cancel the case and book it anew.`;
    case 'row-id-of-another':
      return `This row id is known as that of ${fault.reference || 'another case'}: put the reference right, or leave the id out.`;
    case 'looks-like-a-patient-number':
      return 'Looks like a number that a patient is known by, which has no place here: choose another column for it, or none.';
    case 'row-counter':
      return 'Counts rows, and would stand for another case in the next file: choose another column for it, or none.';
    case 'row-id-too-long':
      return 'Is longer than 80 characters: choose another column for it, or none.';
    case 'row-id-twice':
      return `${capitalised(rows(fault.rows))} have the same id: leave one, or choose another column, or none.`;
    case 'theatre-taken':
      return `${fault.at} has case ${fault.reference} over that time: choose another time or theatre, or give the row that reference if it is the same case.`;
    case 'rows-collide':
      return `The theatre would have ${rows(fault.rows)} over the same time too: choose another time or theatre.`;
    default:
      return never(fault);
  }
}

const NEEDED: Record<ImportField, string> = {
  theatre: 'Say in which theatre.',
  date: 'Say on which day.',
  start: 'Say when it begins.',
  end: 'Say when it ends, or how many minutes it takes.',
  minutes: 'Say how many minutes it takes, or when it ends.',
  region: 'Say which region.',
  side: 'Say left or right.',
  surgeon: 'Say who operates.',
  urgency: 'Say how urgent it is, or choose what rows without it are.',
  caseReference: 'Say which case.',
  rowId: 'Say which row.',
};

/** A problem as an operation refuses with it: row and column in its path and in its sentence. */
export function importProblemOf(problem: ImportProblem): Problem {
  const { row, field, fault } = problem;
  return {
    path: ['rows', ...(row === null ? [] : [row]), ...(field === null ? [] : [field])],
    code: fault.code,
    message: `${placeWords(problem)}: ${faultWords(fault, field)}`,
  };
}

export function placeWords({ row, field, column }: Pick<ImportProblem, 'row' | 'field' | 'column'>): string {
  const name = column ?? (field === null ? null : FIELD_HEADINGS[field]);
  const parts = [row === null ? null : `Row ${row}`, name].filter((part) => part !== null);
  return parts.join(', ') || 'The file';
}

/** What was settled by a rule or a choice, or should be seen. */
export function remarkWords(remark: ImportRemark): string {
  switch (remark.code) {
    case 'past-midnight':
      return 'Ends on the day after.';
    case 'repeated-hour':
      return `The time comes twice that day: the ${remark.chosen} is taken, as chosen.`;
    case 'urgency-from-choice':
      return 'Urgency as chosen for rows without one.';
    case 'urgency-stays':
      return `Its urgency stays ${remark.stands}: an import does not change it.`;
    case 'surgeon-elsewhere':
      return `The surgeon is in another theatre over that time${remark.reference === null ? (remark.row === null ? '' : ` (row ${remark.row})`) : ` (${remark.reference})`}.`;
    default:
      return never(remark);
  }
}

/** Why nothing of a file can be read, and the way out. */
export function fileFaultWords(fault: FileFault): string {
  switch (fault.code) {
    case 'empty':
      return 'The file is empty.';
    case 'too-large':
      return `The file has ${Math.ceil(fault.bytes / 1000)} kB; at most ${KILOBYTES} are read. Import a part of the list at a time.`;
    case 'not-text':
      return 'The text is not UTF-8. Save it as “CSV UTF-8” or as XLSX.';
    case 'old-workbook':
      return 'A workbook of the old binary form (.xls) is not read. Save it as XLSX.';
    case 'broken-quote':
      return `Line ${fault.line}: a quotation mark is not closed as it should be.`;
    case 'unreadable-workbook':
      return 'The workbook can’t be read: it is damaged, locked with a password, or no XLSX. Save it anew as XLSX or CSV.';
    case 'workbook-too-large-inside':
      return 'The workbook unpacks to more than a theatre list can have. Copy the list into a new workbook.';
    case 'sheet-too-large':
      return `Cell ${fault.cell} holds something far beyond the list. Delete what lies there, or copy the list into a new workbook.`;
    case 'no-such-sheet':
      return `The workbook has no sheet of that name: it has ${listWords(fault.sheets)}.`;
    case 'no-headings':
      return 'No row of headings was found: the first rows must name the columns.';
    case 'not-json':
      return `Line ${fault.at.line}, column ${fault.at.column}: ${fault.at.reason}. A FHIR bundle is JSON.`;
    case 'not-a-bundle':
      return 'The JSON is no FHIR Bundle: export Appointments or ServiceRequests as one Bundle.';
    case 'no-rows':
      return 'There is no case in it: no row under the headings, or no Appointment or ServiceRequest.';
    case 'too-many-rows':
      return `The file has ${fault.rows} rows; at most ${IMPORT_LIMITS.rows} are read. Import a part of the list at a time.`;
    default:
      return never(fault);
  }
}

const SEPARATOR_WORDS = { '\t': 'tab', ';': 'semicolon', ',': 'comma' } as const;

/** How a file was understood, to be seen before anything is imported. */
export function understoodWords({ understood, rows: read }: ReadList): string[] {
  const count = `${read.length} ${read.length === 1 ? 'row' : 'rows'}`;
  if (understood.format === 'fhir') {
    const patients = understood.ignored.find(({ kind }) => kind === 'Patient');
    const others = understood.ignored.filter(({ kind }) => kind !== 'Patient');
    return [
      `A FHIR bundle with ${count}. A row’s number is that of its entry.`,
      ...(patients
        ? [
            `The file carries ${countWord(patients.count)} Patient ${patients.count === 1 ? 'resource' : 'resources'}. Nothing of them was read or kept; send files without them.`,
          ]
        : []),
      ...(others.length > 0
        ? [`Not looked into: ${listWords(others.map(({ kind, count: some }) => `${some} ${kind}`))}.`]
        : []),
      ...understood.leftOut.map(({ row, because }) =>
        because === 'calledOff'
          ? `Row ${row} is called off there and is left out. Nothing is cancelled here by an import: cancel the case yourself if it is on the list.`
          : `Row ${row} is not settled there yet and is left out.`,
      ),
    ];
  }
  const { columns } = understood;
  const hidden = understood.format === 'xlsx' ? hiddenWords(understood.hidden) : null;
  const about = columns.columns.filter((one) => one.aboutThePatient);
  const unread = columns.columns.filter(
    ({ number, aboutThePatient }) => !aboutThePatient && !Object.values(columns.chosen).includes(number),
  );
  return [
    understood.format === 'csv'
      ? `A CSV with ${count}, cells apart by ${SEPARATOR_WORDS[understood.separator]}.`
      : `Sheet “${understood.sheet}” of a workbook, with ${count}.`,
    ...(hidden === null ? [] : [hidden]),
    ...(columns.headingRow > 1 ? [`What stands above row ${columns.headingRow} was not read.`] : []),
    ...(about.length > 0
      ? [
          `${about.length === 1 ? 'Column' : 'Columns'} ${listWords(about.map(({ number }) => number))} ${about.length === 1 ? 'is' : 'are'} about the patient by the heading. Nothing of it was read or kept; send files without it.`,
        ]
      : []),
    ...(unread.length > 0
      ? [`Not read: ${listWords(unread.map(({ heading, number }) => heading ?? `column ${number}`))}.`]
      : []),
  ];
}

/** What else the import says. */
export const listImportWords = {
  changedMeanwhile:
    'The theatre list changed since the file was tried, and something would come out otherwise. Nothing was imported: look at it again.',
  limits: `At most ${KILOBYTES} and ${IMPORT_LIMITS.rows} rows at a time.`,
};
