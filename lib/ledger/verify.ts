import { groupBy } from '../lists/groupBy';
import type { LedgerRow } from './chain';
import { type ChainFault, chainChecker } from './checkChain';
import type { HeadFault, KnownHead } from './heads';

export type LedgerFault = ChainFault | HeadFault;

export interface Verification {
  entries: number;
  head: { seq: number; hash: string } | null;
  /** The first faults found; `more` were found besides. */
  faults: LedgerFault[];
  more: number;
}

const MOST_FAULTS = 50;

/** Checks a ledger entry by entry against itself, and against heads that are known from outside. */
export function ledgerVerifier(sha256: (text: string) => string, heads: readonly KnownHead[] = []) {
  const chain = chainChecker(sha256);
  const bySeq = groupBy(heads, ({ seq }) => seq);
  const faults: LedgerFault[] = backwards(heads);
  let entries = 0;
  let found = faults.length;
  const add = (fault: LedgerFault) => {
    found += 1;
    if (faults.length < MOST_FAULTS) faults.push(fault);
  };
  return {
    take(row: LedgerRow): void {
      entries += 1;
      for (const fault of chain.take(row)) add(fault);
      for (const head of bySeq.get(row.seq) ?? []) {
        if (isOf(head, chain.first()) && !row.hash.startsWith(head.hash)) add({ kind: 'headDiffers', head });
      }
    },
    end(): Verification {
      const last = chain.head();
      for (const head of heads) {
        if (!isOf(head, chain.first())) add({ kind: 'headOfAnother', head });
        else if (head.seq > last.seq) add({ kind: 'headBeyond', head, last: last.seq });
      }
      return { entries, head: entries === 0 ? null : last, faults, more: found - faults.length };
    },
  };
}

/** A head that does not say which ledger it is of is held against this one. */
function isOf(head: KnownHead, first: string | null): boolean {
  return head.ledger === null || head.ledger === first;
}

/** Heads are written one after the other, so within one ledger their numbers never fall. */
function backwards(heads: readonly KnownHead[]): HeadFault[] {
  const highest = new Map<string, number>();
  const faults: HeadFault[] = [];
  for (const head of heads) {
    if (head.ledger === null || head.at === null) continue;
    const before = highest.get(head.ledger) ?? 0;
    if (head.seq < before) faults.push({ kind: 'headBackwards', head });
    highest.set(head.ledger, Math.max(before, head.seq));
  }
  return faults;
}
