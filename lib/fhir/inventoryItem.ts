import type { ItemKind } from '../catalogue/item';
import type { StockForm } from '../stock/stock';
import { KIND_WORDS } from '../wording/catalogue';
import { fhirWords, propertyWords } from '../wording/fhir';
import { FORM_WORDS, heldWords, OWNER_WORDS } from '../wording/stock';
import { absent } from './absent';
import type { CodeableConcept, Identifier, Ratio, Reference, Resource } from './datatypes';
import type { Frame } from './frame';
import { itemConcept, type NamedItem, ownIdentifier, placeReference } from './identifiers';
import { fhirId } from './ids';
import { pieces } from './quantities';

/** A heap: pieces of one item, form, lot, use-by and owner at one place of the shelf. */
export interface HeapFacts {
  id: string;
  item: NamedItem & { id: string; kind: ItemKind };
  form: StockForm;
  lot: string | null;
  useBy: string | null;
  /** `null`: whoever asks is counting it, and may not see what the record says. */
  quantity: number | null;
  owner: 'ours' | 'consignment';
  place: { id: string; name: string };
  heldBecause: string | null;
}

export interface InventoryItem extends Resource {
  resourceType: 'InventoryItem';
  identifier: Identifier[];
  status: InventoryItemStatus;
  category: CodeableConcept[];
  code: CodeableConcept[];
  inventoryStatus?: CodeableConcept[];
  baseUnit: CodeableConcept;
  association: { associationType: CodeableConcept; relatedItem: Reference; quantity: Ratio }[];
  characteristic: { characteristicType: CodeableConcept; valueCodeableConcept: CodeableConcept }[];
  instance: { lotNumber?: string; expiry?: string; location: Reference };
}

type InventoryItemStatus = 'active' | 'inactive' | 'unknown';

/** Pieces lie there: `active`. Used up, and kept on record: `inactive`. Being counted by whoever asks: `unknown`. */
export function inventoryItemStatus(quantity: number | null): InventoryItemStatus {
  if (quantity === null) return 'unknown';
  return quantity > 0 ? 'active' : 'inactive';
}

/**
 * A heap. How many pieces it holds is the ratio of its association with the item: R5 reads that as so many of the item in one
 * of this (hl7.org/fhir/R5/inventoryitem-definitions.html#InventoryItem.association.quantity). Names are left to `code`: a name
 * would have to state its language, which the catalogue does not.
 */
export function heapInventoryItem(frame: Frame, heap: HeapFacts): InventoryItem {
  const { item, lot, useBy, heldBecause } = heap;
  return {
    resourceType: 'InventoryItem',
    id: fhirId(heap.id),
    identifier: [ownIdentifier(frame, 'stock', heap.id)],
    status: inventoryItemStatus(heap.quantity),
    category: [{ text: KIND_WORDS[item.kind] }],
    code: [itemConcept(frame, item)],
    ...(heldBecause !== null && {
      inventoryStatus: [{ text: `held, because ${heldWords(heldBecause)}` }],
    }),
    baseUnit: { coding: [{ system: 'http://unitsofmeasure.org', code: '{piece}' }], text: 'piece' },
    association: [
      {
        associationType: { text: fhirWords.piecesOf },
        relatedItem: { reference: `DeviceDefinition/${fhirId(item.id)}` },
        quantity:
          heap.quantity === null
            ? absent('masked')
            : { numerator: pieces(heap.quantity), denominator: { value: 1 } },
      },
    ],
    characteristic: [
      characteristic(propertyWords.form, FORM_WORDS[heap.form]),
      characteristic(propertyWords.owner, OWNER_WORDS[heap.owner]),
    ],
    instance: {
      ...(lot !== null && { lotNumber: lot }),
      ...(useBy !== null && { expiry: useBy }),
      location: placeReference(frame, heap.place),
    },
  };
}

const characteristic = (name: string, value: string) => ({
  characteristicType: { text: name },
  valueCodeableConcept: { text: value },
});
