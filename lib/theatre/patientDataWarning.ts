/** What a piece of text looks like that must never be written here. */
export type PatientDataKind =
  | 'nationalNumber'
  | 'hospitalNumber'
  | 'dateOfBirth'
  | 'nameWithTitle'
  | 'telephone'
  | 'email'
  | 'postcode';

export interface PatientDataWarning {
  kind: PatientDataKind;
  /** The words that gave it away, as written. */
  excerpt: string;
}

const BIRTH_WORDS = /\b(?:d\.?\s?o\.?\s?b\.?|date of birth|born(?: on)?)\b[\s:]*[\d./-]*/i;
const DATE = String.raw`(?:\d{1,2}[./-]\d{1,2}[./-](?:19|20)?\d{2}|(?:19|20)\d{2}-\d{2}-\d{2})`;
const NAME = String.raw`\p{Lu}[\p{Ll}'’-]+(?:\s+\p{Lu}[\p{Ll}'’-]+)+`;

const PATTERNS: readonly { kind: PatientDataKind; pattern: RegExp }[] = [
  { kind: 'dateOfBirth', pattern: BIRTH_WORDS },
  // A date alone may be a theatre date; beside two capitalised words it is most likely somebody's birth.
  { kind: 'dateOfBirth', pattern: new RegExp(`${NAME}[\\s,;:(]+${DATE}`, 'u') },
  { kind: 'dateOfBirth', pattern: new RegExp(`${DATE}[\\s,;:)]+${NAME}`, 'u') },
  { kind: 'nameWithTitle', pattern: /\b(?:Mr|Mrs|Ms|Miss|Mx|Master)\.?\s+\p{Lu}[\p{Ll}'’-]+/u },
  {
    kind: 'hospitalNumber',
    pattern: /\b(?:hosp(?:ital)?|mrn|unit|patient)\s*(?:no|number|id)?\.?\s*[:#]?\s*[A-Z]{0,2}\d{5,9}\b/i,
  },
  { kind: 'hospitalNumber', pattern: /\b[A-Z]\d{6,7}\b/ },
  { kind: 'telephone', pattern: /(?:\+44\s?|\b0)\d{2,4}[\s-]?\d{3,4}[\s-]?\d{3,4}\b/ },
  { kind: 'email', pattern: /[^\s@]+@[^\s@]+\.[a-z]{2,}/i },
  { kind: 'postcode', pattern: /\b[A-Z]{1,2}\d[A-Z\d]?\s*\d[A-Z]{2}\b/ },
];

/**
 * What in a text looks like a patient's data. A warning, not proof: the person who wrote it decides whether it is.
 * Case references (`LM-26-7K2P`) and catalogue codes don't set it off.
 */
export function patientDataWarnings(text: string): PatientDataWarning[] {
  const plain = text.replace(/\b[A-Z]{2}-\d{2}-[A-Z0-9]{4}\b/g, ' ');
  const found = PATTERNS.flatMap(({ kind, pattern }) => {
    const match = pattern.exec(plain);
    return match ? [{ kind, excerpt: match[0].trim() }] : [];
  });
  const national = nationalNumberIn(plain);
  const all = national ? [{ kind: 'nationalNumber' as const, excerpt: national }, ...found] : found;
  const kinds = new Set<PatientDataKind>();
  return all.filter(({ kind }) => !kinds.has(kind) && kinds.add(kind));
}

/** Ten digits, spaced or not, whose last is the modulus 11 check digit of the NHS number (NHS Data Dictionary). */
function nationalNumberIn(text: string): string | null {
  for (const match of text.matchAll(/\b\d{3}[\s-]?\d{3}[\s-]?\d{4}\b/g)) {
    const digits = [...match[0].replace(/\D/g, '')].map(Number);
    const sum = digits.slice(0, 9).reduce((total, digit, index) => total + digit * (10 - index), 0);
    const check = (11 - (sum % 11)) % 11;
    if (check === digits[9]) return match[0];
  }
  return null;
}
