import { canonicalJson } from '../ledger/canonical';
import type { BenchEntry } from './act';
import { inOrder } from './state';

/**
 * The entries of a count as one text, the same for the same entries whatever order they came in: one line of JSON an
 * entry, in the order they were done, keys sorted. Its SHA-256 stands in the ledger when the count is closed.
 */
export function digestText(countId: string, personId: string, entries: Iterable<BenchEntry>): string {
  const lines = inOrder(entries).map(({ id, act, doneAt, secondPersonId }) =>
    canonicalJson({ id, act, doneAt, secondPersonId: secondPersonId ?? null }),
  );
  return [`${countId} ${personId}`, ...lines].join('\n');
}
