import { inArray } from 'drizzle-orm';
import type { Problem } from '@/lib/identity/result';
import { type CardBody, mayBeExtra } from '@/lib/plans/card';
import { construct } from '@/lib/plans/plan';
import { cardWords as words } from '@/lib/wording/cards';
import type { Queries } from '../../client';
import { itemFromRow } from '../../mappers/item';
import { items, planStarts } from '../../schema';

/**
 * What a card can't ask for: starts that are retired, somebody else's or for another region, and items that are gone or are
 * implants. What an earlier version asked for already may stay, though it was withdrawn meanwhile.
 */
export async function cardProblems(
  write: Queries,
  card: CardBody,
  { personId, region, before }: { personId: string; region: string; before: CardBody | null },
): Promise<Problem[]> {
  const [starts, rows] = await Promise.all([
    write.select().from(planStarts).where(inArray(planStarts.id, card.startIds)),
    write
      .select()
      .from(items)
      .where(
        inArray(
          items.id,
          card.extras.map(({ itemId }) => itemId),
        ),
      ),
  ]);
  const known = new Map(rows.map((row) => [row.id, itemFromRow(row)]));
  const ofStarts = card.startIds.flatMap((id, at): Problem[] => {
    const start = starts.find((one) => one.id === id);
    const path = ['startIds', at];
    if (start?.personId !== personId) return [{ path, code: 'start-unknown', message: words.noSuchStart }];
    if (construct.parse(start.body).region !== region)
      return [{ path, code: 'other-region', message: words.startOther(start.name) }];
    const stays = before?.startIds.includes(id) ?? false;
    return start.retiredAt === null || stays
      ? []
      : [{ path, code: 'start-retired', message: words.startRetired(start.name) }];
  });
  const ofExtras = card.extras.flatMap(({ itemId }, at): Problem[] => {
    const item = known.get(itemId);
    const path = ['extras', at, 'itemId'];
    if (!item) return [{ path, code: 'item-unknown', message: words.noSuchItem }];
    if (!mayBeExtra(item.kind)) return [{ path, code: 'never-extra', message: words.neverExtra(item.name) }];
    const stays = before?.extras.some((one) => one.itemId === itemId) ?? false;
    return item.status === 'current' || stays
      ? []
      : [{ path, code: 'item-not-current', message: words.itemGone(item.name, item.status) }];
  });
  return [...ofStarts, ...ofExtras];
}
