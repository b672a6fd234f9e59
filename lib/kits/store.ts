import type { ConfigurationId, ItemId, PlaceId, SetId, StockId } from '../identity/ids';
import type { PlainDate } from '../quantities/plainDate';
import type { MustHaveClass } from '../sets/configuration';
import type { TurnStep } from '../sets/setState';

/**
 * What is really in store, loaded before anything is decided. Counts are of sound pieces only.
 */
export interface Store {
  sets: StoredSet[];
  packs: StoredPack[];
}

/** One physical set as it is now. */
export interface StoredSet {
  id: SetId;
  code: string;
  configurationId: ConfigurationId;
  configurationName: string;
  step: TurnStep;
  /** Why it can't be opened, when it is held. */
  heldBecause: string | null;
  /** When it will be in the sterile store, as an ISO instant; `null` when it is there or nobody knows. */
  readyAt: string | null;
  useBy: PlainDate | null;
  place: { id: PlaceId; name: string; metres: number } | null;
  massGrams: number | null;
  /** Cases it is promised to, other than the one being planned. */
  promisedTo: string[];
  /** It is promised to the case being planned; left out where it is not. */
  promisedHere?: true;
  /** The other case it was let go short for, or that this has lapsed; left out where it may serve any case. */
  shortFor?: { reference: string | null };
  /** The other case whose kit it lies with, picked; left out where it lies in its place. */
  onKitOf?: string;
  /** The other case alone that it was let out for before the result of its load was known. */
  letOutFor?: { reference: string };
  contents: { itemId: ItemId; found: number; expected: number; mustHaveClass: MustHaveClass }[];
}

/** Pouches or sterile-packed implants of one item, lot and place. */
export interface StoredPack {
  id: StockId;
  itemId: ItemId;
  form: 'pouch' | 'sterilePacked';
  quantity: number;
  lot: string | null;
  useBy: PlainDate | null;
  owner: 'ours' | 'consignment';
  place: { id: PlaceId; name: string; metres: number } | null;
  heldBecause: string | null;
  /** The other case alone that it was let out for before the result of its load was known. */
  letOutFor?: { reference: string };
}
