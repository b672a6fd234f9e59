import { inArray } from 'drizzle-orm';
import type { Queries } from '../../client';
import { items, sets } from '../../schema';

/** What each pick is called: a set by its code, single packs by their item, with the lot. By pick; inside or outside a write. */
export async function pickNames(
  read: Queries,
  picks: readonly { id: string; setId: string | null; itemId: string | null; lot: string | null }[],
): Promise<Map<string, string>> {
  const [codes, names] = await Promise.all([
    read
      .select({ id: sets.id, code: sets.code })
      .from(sets)
      .where(
        inArray(
          sets.id,
          picks.flatMap(({ setId }) => setId ?? []),
        ),
      ),
    read
      .select({ id: items.id, name: items.name })
      .from(items)
      .where(
        inArray(
          items.id,
          picks.flatMap(({ itemId }) => itemId ?? []),
        ),
      ),
  ]);
  const codeOf = new Map(codes.map(({ id, code }) => [id, code]));
  const nameOf = new Map(names.map(({ id, name }) => [id, name]));
  return new Map(
    picks.map(({ id, setId, itemId, lot }) => [
      id,
      setId === null
        ? `${nameOf.get(itemId ?? '') ?? itemId}${lot === null ? '' : `, lot ${lot}`}`
        : (codeOf.get(setId) ?? setId),
    ]),
  );
}
