import type { Problem } from '../identity/result';
import type { ItemDraft } from './form/draft';

/** Why a write to the catalogue was refused, with the item as it stands where both values must be shown. */
export interface ItemRefusal {
  because: 'notFound' | 'notPermitted' | 'conflict' | 'invalid';
  problems: Problem[];
  current: { draft: ItemDraft; revision: number } | null;
}

export type ItemOutcome<T> = { ok: true; value: T } | ({ ok: false } & ItemRefusal);

export function itemRefused(
  because: ItemRefusal['because'],
  problems: Problem[] | string,
  current: ItemRefusal['current'] = null,
): { ok: false } & ItemRefusal {
  const list = typeof problems === 'string' ? [{ path: [], code: because, message: problems }] : problems;
  return { ok: false, because, problems: list, current };
}
