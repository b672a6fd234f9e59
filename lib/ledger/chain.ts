import { canonicalJson } from './canonical';

/** An entry as it is kept. `detailText` is the stored JSON, letter by letter. */
export interface LedgerRow {
  seq: number;
  /** Which of the two forms below its hash is made in. */
  form: number;
  doneAt: string;
  enteredAt: string;
  personId: string | null;
  action: string;
  subjectKind: string;
  subjectId: string;
  detailText: string;
  previousHash: string;
  hash: string;
}

/** What the first entry follows. */
export const LEDGER_START = '0'.repeat(64);

/** The form new entries are written in. */
export const LEDGER_FORM = 2;

/** The entry that closes those of form 1: its detail is `{ from, to, digest }`. */
export const SEAL = 'seal-earlier-entries';

/**
 * What an entry's hash is made over, as text whose UTF-8 bytes go through SHA-256; written as 64 small hexadecimal digits.
 * Never changed once entries are written in it: a new need is a new form.
 *
 * **Form 2**: the canonical JSON (RFC 8785) of the array `["kitwright ledger 2", previousHash, seq, doneAt, enteredAt,
 * personId, action, subjectKind, subjectId, detailText]`. The stored text of the detail is a string in it, so a text that
 * merely reads the same is another entry.
 *
 * **Form 1**, of the first release: `previousHash`, then the JSON of `[seq, doneAt, enteredAt, personId, action,
 * subjectKind, subjectId, detail]`, the detail read and its members sorted. What its text alone could hide is closed by
 * the seal that the first entry of form 2 writes (`textDigest`).
 */
export function hashInput(row: Omit<LedgerRow, 'hash'>): string | null {
  const { form, previousHash, seq, doneAt, enteredAt, personId, action, subjectKind, subjectId } = row;
  const said = [seq, doneAt, enteredAt, personId, action, subjectKind, subjectId];
  if (form === 2) return canonicalJson(['kitwright ledger 2', previousHash, ...said, row.detailText]);
  if (form === 1) return previousHash + JSON.stringify([...said, sorted(JSON.parse(row.detailText))]);
  return null;
}

/** One step of the digest over the stored texts of all entries of form 1, from `LEDGER_START` on. */
export function textDigest(before: string, row: LedgerRow, sha256: (text: string) => string): string {
  return sha256(`${before}${row.seq}:${row.detailText}`);
}

/** Form 1's own sorting. Names that are whole numbers come first whatever is asked, so it is not RFC 8785's. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([name, inner]) => [name, sorted(inner)]),
  );
}
