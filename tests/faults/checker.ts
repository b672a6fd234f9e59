/** What scanners know of the scans they sent, and what the hospital has. */
export interface ScanRecord {
  /** Ids whose storing was acknowledged to the scanner. */
  acknowledged: ReadonlySet<string>;
  /** Ids that were sent and never answered: they may be there or not. */
  unknown: ReadonlySet<string>;
  /** Ids of the stored scans, one for each row. */
  stored: readonly string[];
  /** Ids that the ledger's entries of scans speak of, one for each entry. */
  entered: readonly string[];
}

/** Where acknowledged ⊆ stored ⊆ acknowledged ∪ unknown does not hold, or a scan is there twice; in sentences. */
export function scanFaults({ acknowledged, unknown, stored, entered }: ScanRecord): string[] {
  const faults: string[] = [];
  for (const [what, ids] of [
    ['stored', stored],
    ['in the ledger', entered],
  ] as const) {
    const there = new Set(ids);
    const lost = [...acknowledged].filter((id) => !there.has(id));
    const invented = [...there].filter((id) => !acknowledged.has(id) && !unknown.has(id));
    if (lost.length > 0) faults.push(`${lost.length} acknowledged and not ${what}: ${some(lost)}`);
    if (invented.length > 0) faults.push(`${invented.length} ${what} and sent by nobody: ${some(invented)}`);
    if (there.size !== ids.length)
      faults.push(`${ids.length - there.size} ${what} twice: ${some(twice(ids))}`);
  }
  return faults;
}

const some = (ids: readonly string[]) => ids.slice(0, 5).join(', ');

function twice(ids: readonly string[]): string[] {
  const seen = new Set<string>();
  return ids.filter((id) => seen.has(id) || !seen.add(id));
}
