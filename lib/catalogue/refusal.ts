import { type Outcome, type Refusal, refused, refusedFor } from '../identity/refusal';
import type { Problem } from '../identity/result';
import type { ItemDraft } from './form/draft';

/** An item as its form shows it, for setting beside what a refused writer had. */
export interface ItemAsItStands {
  draft: ItemDraft;
  revision: number;
}

export type ItemRefusal = Refusal<ItemAsItStands>;
export type ItemOutcome<T> = Outcome<T, ItemAsItStands>;

/** A refusal for one reason in words, or for all that is wrong with the fields. */
export function itemRefused(
  because: ItemRefusal['because'],
  problems: Problem[] | string,
  current: ItemAsItStands | null = null,
): { ok: false; refusal: ItemRefusal } {
  return typeof problems === 'string' ? refused(because, problems, current) : refusedFor(problems);
}
