import type { ListInfo, ListKind } from '../list';
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
