import 'server-only';
import { keptCatalogue } from '@/db/queries/caseKit';
import { packItems } from '@/db/queries/theatre/theatreDay';
import type { Reading } from '@/db/reader';
import type { ItemId } from '@/lib/identity/ids';

/** How pieces are called where cases and sets are spoken of: items by name, a heap of pouches by its item's. */
export async function namesOfPieces(
  db: Reading,
): Promise<{ item: (id: ItemId) => string; pouch: (stockId: string) => string }> {
  const [catalogue, heaps] = await Promise.all([keptCatalogue(db), packItems(db)]);
  const names = new Map<string, string>(catalogue.map(({ id, name }) => [id, name]));
  return {
    item: (id) => names.get(id) ?? id,
    pouch: (stockId) => names.get(heaps.get(stockId) ?? '') ?? 'a pouch',
  };
}
