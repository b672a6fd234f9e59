import { scanFaults } from '../checker';

/** What a database holds after a power cut, and what had been said by then. */
export interface AfterCut {
  /** Ids in the order in which they were written, all of them, also those after the cut. */
  written: readonly string[];
  /** How many of them, from the first, were acknowledged before the cut. */
  acknowledged: number;
  /** Ids of the rows, in their order, and of the ledger's entries, in theirs; `null` where it could not be opened. */
  stored: readonly string[] | null;
  entered: readonly string[];
  /** What engine and auditor find wrong with it. */
  damage: readonly string[];
}

/** What must not be after a power cut, apart from losses, which are counted: damage, gaps, what nobody wrote. */
export function cutFaults({ written, acknowledged, stored, entered, damage }: AfterCut): string[] {
  const faults = [...damage];
  if (stored === null) return faults.length > 0 ? faults : ['it cannot be opened'];
  // one more than was acknowledged may be on its way; what is there is the beginning of what was written
  const possible = new Set(written.slice(0, acknowledged + 1));
  const there = { acknowledged: new Set<string>(), unknown: possible, stored, entered };
  faults.push(...scanFaults(there));
  for (const [what, ids] of [
    ['stored', stored],
    ['in the ledger', entered],
  ] as const) {
    const gap = ids.findIndex((id, at) => id !== written[at]);
    if (gap >= 0) faults.push(`${what} is ${ids[gap]} where ${written[gap] ?? 'nothing'} should be`);
  }
  return faults;
}

/** How many acknowledged writes are gone, from rows or ledger, whichever lost more. */
export function cutLosses({
  written,
  acknowledged,
  stored,
  entered,
}: Pick<AfterCut, 'written' | 'acknowledged' | 'stored' | 'entered'>): number {
  const gone = (ids: readonly string[]) => {
    const there = new Set(ids);
    return written.slice(0, acknowledged).filter((id) => !there.has(id)).length;
  };
  return Math.max(gone(stored ?? []), gone(entered));
}
