import { canonicalJson } from '../ledger/canonical';
import type { UseEntry } from './act';

/**
 * The entries of a record of use as one text, the same for the same entries. Its SHA-256 stands in the ledger when the
 * record is closed.
 */
export const digestOfUse = (caseId: string, entries: readonly UseEntry[]): string =>
  [caseId, ...entries.map(({ id, act, doneAt }) => canonicalJson({ id, act, doneAt }))].join('\n');
