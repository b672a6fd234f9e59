import type { Item, ItemKind } from '../catalogue/item';
import type { AsideRoute } from './act';

const IMPLANTS: ReadonlySet<ItemKind> = new Set(['plate', 'screw', 'washer']);

export const isImplant = ({ kind }: Pick<Item, 'kind'>): boolean => IMPLANTS.has(kind);

/**
 * Where an unfit piece may go. Implants and single-use pieces are discarded: there is no repair of either. Common
 * practice, no source; the makers' instructions for use prevail.
 */
export function routesFor(item: Pick<Item, 'kind' | 'use'>): readonly AsideRoute[] {
  return isImplant(item) || item.use === 'singleUse' ? ['discard'] : ['repair', 'discard'];
}
