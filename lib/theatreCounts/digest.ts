import { canonicalJson } from '../ledger/canonical';
import type { TheatreEntry } from './act';

/**
 * The entries of a count in theatre as one text, the same for the same entries in the order they were done. Its SHA-256
 * stands in the ledger when the count is closed.
 */
export const theatreDigestText = (
  countId: string,
  personId: string,
  entries: readonly TheatreEntry[],
): string =>
  [
    `${countId} ${personId}`,
    ...entries.map(({ id, act, doneAt }) => canonicalJson({ id, act, doneAt })),
  ].join('\n');
