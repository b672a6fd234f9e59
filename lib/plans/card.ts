import { z } from 'zod';
import type { ItemKind } from '../catalogue/item';
import { itemId, startId } from '../identity/ids';
import { failed, ok, type Problem, problemsFromZod, type Result } from '../identity/result';
import { cardWords as words } from '../wording/cards';
import { textProblems } from './checkConstruct';

/** One thing a surgeon wants in theatre beside what the plan makes necessary. */
export const cardExtra = z.strictObject({
  itemId,
  quantity: z.number().int('whole pieces').min(1, 'at least one').max(50, 'at most 50'),
  note: z.string().trim().min(1).max(200, 'at most 200 characters').nullable(),
});
export type CardExtra = z.infer<typeof cardExtra>;

/** What a preference card says. Implants are stated in plans: a card only names the saved starts that state them. */
export const cardBody = z.strictObject({
  startIds: z.array(startId).max(6, 'at most six saved starts'),
  extras: z.array(cardExtra).max(60, 'at most sixty lines'),
  note: z.string().trim().min(1).max(1_000, 'at most 1000 characters').nullable(),
});
export type CardBody = z.infer<typeof cardBody>;

/** Implants are the plan's, and what holds instruments is a set's: neither is asked for by a card. */
const NEVER_EXTRA: readonly ItemKind[] = ['plate', 'screw', 'washer', 'rack', 'basket', 'container'];
export const mayBeExtra = (kind: ItemKind): boolean => !NEVER_EXTRA.includes(kind);

/** A card sent from outside: its shape, what is named twice, and texts that look like a patient's data; all faults at once. */
export function checkCard(raw: unknown): Result<CardBody> {
  const parsed = cardBody.safeParse(raw);
  if (!parsed.success) return failed(...problemsFromZod(parsed.error));
  const card = parsed.data;
  const problems: Problem[] = [
    ...twice(card.startIds).map((at) => ({
      path: ['startIds', at],
      code: 'twice',
      message: words.startTwice,
    })),
    ...twice(card.extras.map((extra) => extra.itemId)).map((at) => ({
      path: ['extras', at, 'itemId'],
      code: 'twice',
      message: words.extraTwice,
    })),
    ...card.extras.flatMap(({ note }, at) => textProblems(note ?? '', ['extras', at, 'note'])),
    ...textProblems(card.note ?? '', ['note']),
  ];
  if (card.startIds.length + card.extras.length === 0 && card.note === null)
    problems.push({ path: [], code: 'empty', message: words.empty });
  return problems.length > 0 ? failed(...problems) : ok(card);
}

/** Places of what stands earlier in the list already. */
const twice = (ids: readonly string[]): number[] =>
  ids.flatMap((id, at) => (ids.indexOf(id) < at ? [at] : []));
