import type { ListKind } from '@/lib/exchange/list';
import { configurationsWork } from './configurations-work';
import { deliveriesWork } from './deliveries-work';
import { catalogueWork, holesWork } from './items-work';
import { peopleWork } from './people-work';
import { setsWork } from './sets-work';
import { stockWork } from './stock-work';
import type { ListWork } from './work';

/** Every kind of list at work. What one plans is handed to its own operations only. */
export const LIST_WORKS: Record<ListKind, ListWork> = {
  catalogue: catalogueWork as ListWork,
  holes: holesWork as ListWork,
  stock: stockWork as ListWork,
  deliveries: deliveriesWork as ListWork,
  people: peopleWork as ListWork,
  sets: setsWork as ListWork,
  configurations: configurationsWork as ListWork,
};
