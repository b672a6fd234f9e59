import { absent } from './absent';
import type { CodeableConcept, Identifier, Quantity, Reference, Resource } from './datatypes';
import type { Frame } from './frame';
import { makerReference, ownIdentifier, placeReference } from './identifiers';
import { fhirId } from './ids';
import { pieces } from './quantities';

/** Pieces of one lot that came and were put on one heap: on a line of an order, or in a delivery by itself. */
export interface DeliveryFacts {
  id: string;
  from: 'order' | 'delivery';
  /** The request it answers; `null`: none, or none on record. */
  restockLineId: string | null;
  /** A maker of the catalogue, or, with no id, as its delivery note was entered. */
  supplier: { id: string | null; name: string };
  stockId: string;
  /** `null`: whoever asks is counting that heap. */
  quantity: number | null;
  place: { id: string; name: string };
  /** An instant, or the day it arrived. */
  cameAt: string;
  enteredAt: string;
}

export interface SupplyDelivery extends Resource {
  resourceType: 'SupplyDelivery';
  identifier: Identifier[];
  basedOn?: Reference[];
  status: 'completed';
  type: CodeableConcept;
  suppliedItem: { quantity: Quantity; itemReference: Reference }[];
  occurrenceDateTime: string;
  supplier: Reference;
  destination: Reference;
}

/**
 * What came. It is recorded once it is on the shelf, so it is always `completed`; what is still to come is the request's. Lot and
 * use-by are the heap's, to which it leads.
 */
export function supplyDelivery(frame: Frame, delivery: DeliveryFacts): SupplyDelivery {
  const { from, restockLineId, supplier } = delivery;
  return {
    resourceType: 'SupplyDelivery',
    id: fhirId(delivery.id),
    meta: { lastUpdated: delivery.enteredAt },
    identifier: [ownIdentifier(frame, from === 'order' ? 'order-part' : 'delivery-line', delivery.id)],
    ...(restockLineId !== null && {
      basedOn: [{ reference: `SupplyRequest/${fhirId(restockLineId)}` }],
    }),
    status: 'completed',
    type: { coding: [{ system: 'http://hl7.org/fhir/supplydelivery-supplyitemtype', code: 'device' }] },
    suppliedItem: [
      {
        quantity: delivery.quantity === null ? absent('masked') : pieces(delivery.quantity),
        itemReference: { reference: `InventoryItem/${fhirId(delivery.stockId)}` },
      },
    ],
    occurrenceDateTime: delivery.cameAt,
    supplier:
      supplier.id === null
        ? { type: 'Organization', display: supplier.name }
        : makerReference(frame, { id: supplier.id, name: supplier.name }),
    destination: placeReference(frame, delivery.place),
  };
}
