import { hashInput, LEDGER_START, type LedgerRow, SEAL, textDigest } from './chain';

/** What an entry breaks. All that can be said of it is said, and the walk goes on from the entry as it stands. */
export type ChainFault =
  /** Numbers left out, repeated or out of order. */
  | { kind: 'number'; seq: number; expected: number }
  /** It does not name the hash of the entry before it. */
  | { kind: 'previous'; seq: number }
  /** Its own hash is not the hash of what it says. */
  | { kind: 'content'; seq: number }
  /** A form that is not known, or an earlier one after a later one. */
  | { kind: 'form'; seq: number }
  /** The entries of form 1 before this one were altered in their text, or their seal is not there. */
  | { kind: 'seal'; seq: number };

export interface ChainChecker {
  /** Takes the next entry; answers what is wrong with it. */
  take(row: LedgerRow): ChainFault[];
  /** The newest entry taken; 0 and the start before any. */
  head(): { seq: number; hash: string };
  /** The hash of entry 1, which names the ledger; `null` before any. */
  first(): string | null;
}

/** Walks a chain entry by entry in constant memory. `sha256` is that of a text's UTF-8 bytes, in hexadecimal. */
export function chainChecker(sha256: (text: string) => string): ChainChecker {
  let seq = 0;
  let hash = LEDGER_START;
  let first: string | null = null;
  let form = 1;
  let earlierTexts = LEDGER_START;
  return {
    take(row) {
      const faults: ChainFault[] = [];
      if (row.seq !== seq + 1) faults.push({ kind: 'number', seq: row.seq, expected: seq + 1 });
      if (row.previousHash !== hash) faults.push({ kind: 'previous', seq: row.seq });
      if (!knownForm(row.form) || row.form < form) faults.push({ kind: 'form', seq: row.seq });
      else if (hashOf(row, sha256) !== row.hash) faults.push({ kind: 'content', seq: row.seq });
      if (row.form === 1) {
        earlierTexts = textDigest(earlierTexts, row, sha256);
        if (!isWrittenText(row.detailText)) faults.push({ kind: 'content', seq: row.seq });
      } else if (form === 1) {
        const sealed = first === null || (row.action === SEAL && digestIn(row.detailText) === earlierTexts);
        if (!sealed) faults.push({ kind: 'seal', seq: row.seq });
        form = row.form;
      }
      seq = row.seq;
      hash = row.hash;
      first ??= row.hash;
      return faults;
    },
    head: () => ({ seq, hash }),
    first: () => first,
  };
}

const knownForm = (form: number) => form === 1 || form === 2;

/** `null` where it cannot even be read. */
function hashOf(row: LedgerRow, sha256: (text: string) => string): string | null {
  try {
    const input = hashInput(row);
    return input === null ? null : sha256(input);
  } catch {
    return null;
  }
}

/** Form 1 stored what `JSON.stringify` wrote: no blanks, no name twice, no other spelling. */
function isWrittenText(text: string): boolean {
  try {
    return JSON.stringify(JSON.parse(text)) === text;
  } catch {
    return false;
  }
}

function digestIn(detailText: string): unknown {
  try {
    const detail: unknown = JSON.parse(detailText);
    return typeof detail === 'object' && detail !== null && 'digest' in detail ? detail.digest : null;
  } catch {
    return null;
  }
}
