import { LIST_KINDS, type ListInfo, type ListKind } from '../list';
import { catalogueList } from './catalogue';
import { holesList } from './holes';
import { peopleList } from './people';
import { configurationsList, setsList } from './sets';
import { deliveriesList, stockList } from './stock';

/** Every kind of list, in the order a new hospital would bring them in. */
export const LISTS: Record<ListKind, ListInfo> = {
  people: peopleList,
  catalogue: catalogueList,
  holes: holesList,
  configurations: configurationsList,
  sets: setsList,
  deliveries: deliveriesList,
  stock: stockList,
};

/** The kind an address names; `null` where there is none. */
export const listKindOf = (text: string): ListKind | null => LIST_KINDS.find((kind) => kind === text) ?? null;
