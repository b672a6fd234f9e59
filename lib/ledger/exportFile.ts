import { canonicalJson } from './canonical';
import type { LedgerRow } from './chain';

/** The members of an exported entry, in the order of RFC 8785. `detail` is the stored text of the detail. */
const MEMBERS =
  'action,detail,doneAt,enteredAt,form,hash,personId,previousHash,seq,subjectId,subjectKind'.split(',');
const NUMBERS = ['form', 'seq'];

/** An entry as one line of an exported ledger: canonical JSON, the stored text of its detail as a string, then a line feed. */
export function exportLine({ detailText, ...row }: LedgerRow): string {
  return `${canonicalJson({ ...row, detail: detailText })}\n`;
}

/**
 * The entries of an exported ledger, or the first line that is not as it was exported: anything but the one spelling
 * `exportLine` gives, from the first byte to the last line feed.
 */
export function readExport(bytes: Uint8Array): { ok: true; rows: LedgerRow[] } | { ok: false; line: number } {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return { ok: false, line: 0 };
  }
  const lines = text.split('\n');
  if (lines.pop() !== '') return { ok: false, line: lines.length + 1 };
  const rows: LedgerRow[] = [];
  for (const [at, line] of lines.entries()) {
    const row = readLine(line);
    if (row === null) return { ok: false, line: at + 1 };
    rows.push(row);
  }
  return { ok: true, rows };
}

function readLine(line: string): LedgerRow | null {
  try {
    const value: unknown = JSON.parse(line);
    if (!isExported(value) || canonicalJson(value) !== line) return null;
    const { detail, ...row } = value;
    return { ...row, detailText: detail };
  } catch {
    return null;
  }
}

type Exported = Omit<LedgerRow, 'detailText'> & { detail: string };

/** By hand, for a ledger has a million lines: exactly these members, in this order, each of its type. */
function isExported(value: unknown): value is Exported {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return false;
  const members = Object.entries(value);
  return (
    members.length === MEMBERS.length &&
    members.every(
      ([name, inner], at) =>
        name === MEMBERS[at] &&
        (NUMBERS.includes(name)
          ? Number.isSafeInteger(inner)
          : typeof inner === 'string' || (inner === null && name === 'personId')),
    )
  );
}
