import type { Item, ItemKind } from '@/lib/catalogue/item';
import type { ItemId } from '@/lib/identity/ids';

/** An item as the editor knows it. */
export interface EditorItem {
  id: ItemId;
  kind: ItemKind;
  name: string;
  code: string;
  status: Item['status'];
  screwFamily?: string;
  lengthUm?: number | null;
}

/** A problem beside a field; `stops` keeps the version from being put in force. */
export interface EditorProblem {
  path: string;
  sentence: string;
  stops?: boolean;
}
