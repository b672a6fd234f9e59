/** What a row of an outside theatre list may say. */
export const IMPORT_FIELDS = [
  'theatre',
  'date',
  'start',
  'end',
  'minutes',
  'region',
  'side',
  'surgeon',
  'urgency',
  'caseReference',
  'rowId',
] as const;
export type ImportField = (typeof IMPORT_FIELDS)[number];

/** The heading of each column, as the samples write it. Case, spaces and signs between the words do not matter. */
export const FIELD_HEADINGS: Record<ImportField, string> = {
  theatre: 'Theatre',
  date: 'Date',
  start: 'Start',
  end: 'End',
  minutes: 'Minutes',
  region: 'Region',
  side: 'Side',
  surgeon: 'Surgeon',
  urgency: 'Urgency',
  caseReference: 'Case reference',
  rowId: 'Row id',
};

/** Words by which a column that is about the patient gives itself away. Such a column is never read. */
const ABOUT_THE_PATIENT =
  /patient|\bnhs\b|\bnational|hosp(ital)?\s*(no|num|id)|\bmrn\b|\bd\.?o\.?b\b|birth|^\s*(full\s*)?name\s*$|surname|forename|(first|last|given|family)\s*name|address|postcode|phone|mobile|e-?mail|gender|\bsex\b|\bage\b|diagnos|allerg|\bnotes?\b|comment|next of kin/i;

/** `Case-Reference ` and `case reference` are one heading. */
export const headingKey = (heading: string): string =>
  heading
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '');

export const isAboutThePatient = (heading: string): boolean =>
  ABOUT_THE_PATIENT.test(heading.replaceAll('_', ' '));

const BY_KEY = new Map(IMPORT_FIELDS.map((field) => [headingKey(FIELD_HEADINGS[field]), field]));

/** The field a heading names, if it is one of ours. */
export const fieldOf = (heading: string): ImportField | null => BY_KEY.get(headingKey(heading)) ?? null;
