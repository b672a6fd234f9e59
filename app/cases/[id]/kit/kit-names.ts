import type { KitOfCase } from '@/db/queries/caseKit';
import type { ItemId } from '@/lib/identity/ids';
import type { KitPlace, SourceRef } from '@/lib/kits/caseKit';

/** How things of a kit are called on its page. */
export interface KitNames {
  item: (id: ItemId) => string;
  code: (id: ItemId) => string;
  /** `SFS-02`, or `pouch, lot 4471, Shelf B2`. */
  source: (from: SourceRef) => string;
  place: (place: KitPlace | null) => string;
}

export function kitNames({ catalogue, store }: Pick<KitOfCase, 'catalogue' | 'store'>): KitNames {
  const items = new Map(catalogue.map((item) => [item.id, item]));
  const sets = new Map(store.sets.map((set) => [set.id, set]));
  const packs = new Map(store.packs.map((pack) => [pack.id, pack]));
  return {
    item: (id) => items.get(id)?.name ?? id,
    code: (id) => items.get(id)?.code ?? id,
    source: (from) => {
      if (from.kind === 'set') return sets.get(from.setId)?.code ?? from.setId;
      const pack = packs.get(from.stockId);
      const form = pack?.form === 'pouch' ? 'pouch' : 'sterile pack';
      return pack?.place ? `${form}, ${pack.place.name}` : form;
    },
    place: (place) => place?.name ?? 'place not stated',
  };
}
