import { fhirWords } from '../wording/fhir';
import { absent } from './absent';
import type {
  CodeableConcept,
  CodeableReference,
  Identifier,
  Quantity,
  Reference,
  Resource,
} from './datatypes';
import type { Frame } from './frame';
import { itemConcept, type NamedItem, ownIdentifier, placeReference } from './identifiers';
import { fhirId } from './ids';
import { pieces } from './quantities';

type InventoryReportStatus = 'active' | 'draft';

export interface InventoryReport extends Resource {
  resourceType: 'InventoryReport';
  identifier: Identifier[];
  status: InventoryReportStatus;
  countType: 'snapshot';
  reportedDateTime: string;
  inventoryListing?: Listing[];
}

interface Listing {
  location?: Reference;
  countingDateTime?: string;
  item: ListedItem[];
}

interface ListedItem {
  category?: CodeableConcept;
  quantity: Quantity;
  item: CodeableReference;
}

/** Pieces; or why they are not said: whoever asks is counting them, or nobody gave a figure. */
type Figure = number | 'masked' | 'unknown';

/** What lies on the shelf of one place now, heap by heap. */
export interface ShelfFacts {
  place: { id: string; name: string };
  /** Those that hold something. */
  heaps: readonly { id: string; item: NamedItem; pieces: Figure }[];
}

/** What a set holds now, as it was last counted. */
export interface HoldingFacts {
  id: string;
  code: string;
  place: { id: string; name: string } | null;
  /** `null`: it was never counted. */
  countedAt: string | null;
  /** `null`: whoever asks is to count it blind. */
  lines: readonly { item: NamedItem; found: number; unsound: number }[] | null;
}

/** A blind count of the shelf. */
export interface StockCountFacts {
  id: string;
  place: { id: string; name: string };
  begunAt: string;
  /** `null`: figures may still change, or may not be seen yet. */
  finished: { at: string; lines: readonly CountedHeap[] } | null;
}

interface CountedHeap {
  /** `null`: what lay there was on no record. */
  stockId: string | null;
  item: NamedItem;
  pieces: Figure;
}

/** The stock list of a place. It is made as it is asked for, so that moment is its date. */
export const shelfReport = (frame: Frame, { place, heaps }: ShelfFacts): InventoryReport => ({
  resourceType: 'InventoryReport',
  id: fhirId(place.id),
  identifier: [ownIdentifier(frame, 'place', place.id)],
  ...snapshot('active', frame.now),
  ...listing({
    location: placeReference(frame, place),
    item: heaps.map(({ id, item, pieces: count }) => ({
      quantity: figure(count),
      item: heapOfItem(frame, id, item),
    })),
  }),
});

/**
 * What a set holds. The items are named and not linked: R5 lets a report lead to a Device or an InventoryItem, and a piece in a
 * set is neither, for it has no number and its lot is not known. A set its reader is to count blind is reported without content.
 */
export function holdingReport(frame: Frame, set: HoldingFacts): InventoryReport {
  const head = {
    resourceType: 'InventoryReport' as const,
    id: fhirId(set.id),
    identifier: [ownIdentifier(frame, 'set-code', set.code)],
  };
  if (set.lines === null) return { ...head, ...snapshot('draft', frame.now) };
  const item = set.lines.flatMap(({ item: named, found, unsound }): ListedItem[] => {
    const of = { concept: itemConcept(frame, named) };
    return [
      { quantity: pieces(found), item: of },
      ...(unsound > 0
        ? [{ category: { text: fhirWords.unsound }, quantity: pieces(unsound), item: of }]
        : []),
    ];
  });
  return {
    ...head,
    ...snapshot('active', frame.now),
    ...listing({
      ...(set.place !== null && { location: placeReference(frame, set.place) }),
      ...(set.countedAt !== null && { countingDateTime: set.countedAt }),
      item,
    }),
  };
}

/**
 * A count of the shelf. Until it is finished R5's `draft` fits ("registered, but still without content"): the second counter
 * must not see what the first one found. A count that was given up never became a report, and is not given.
 */
export function stockCountReport(frame: Frame, count: StockCountFacts): InventoryReport {
  const head = {
    resourceType: 'InventoryReport' as const,
    id: fhirId(count.id),
    identifier: [ownIdentifier(frame, 'stock-count', count.id)],
  };
  if (count.finished === null) return { ...head, ...snapshot('draft', count.begunAt) };
  const { at, lines } = count.finished;
  return {
    ...head,
    meta: { lastUpdated: at },
    ...snapshot('active', at),
    ...listing({
      location: placeReference(frame, count.place),
      countingDateTime: at,
      item: lines.map(({ stockId, item, pieces: counted }) => ({
        quantity: figure(counted),
        item: stockId === null ? { concept: itemConcept(frame, item) } : heapOfItem(frame, stockId, item),
      })),
    }),
  };
}

/** Absolute figures, every one of them: differences are not reported. */
const snapshot = (status: InventoryReportStatus, reportedDateTime: string) => ({
  status,
  countType: 'snapshot' as const,
  reportedDateTime,
});

/** R5 has no empty lists: where nothing lies there is nothing to list. */
const listing = (one: Listing): Pick<InventoryReport, 'inventoryListing'> =>
  one.item.length === 0 ? {} : { inventoryListing: [one] };

const heapOfItem = (frame: Frame, stockId: string, item: NamedItem): CodeableReference => ({
  concept: itemConcept(frame, item),
  reference: { reference: `InventoryItem/${fhirId(stockId)}` },
});

const figure = (said: Figure): Quantity => (typeof said === 'number' ? pieces(said) : absent(said));
