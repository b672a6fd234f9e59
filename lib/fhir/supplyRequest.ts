import { fhirWords } from '../wording/fhir';
import type { CodeableReference, Identifier, Quantity, Reference, Resource } from './datatypes';
import type { Frame } from './frame';
import { itemConcept, makerReference, type NamedItem, ownIdentifier } from './identifiers';
import { fhirId } from './ids';
import { pieces } from './quantities';

/** One item of a proposal of what to order, and the line of an order that was made of it. */
export interface RequestFacts {
  id: string;
  item: NamedItem & { id: string };
  maker: { id: string; name: string };
  proposal: 'proposed' | 'approved' | 'superseded' | 'turnedDown';
  proposed: number;
  /** `null` until somebody decided. */
  approved: number | null;
  proposedAt: string;
  /** Why so many, as it was said when it was proposed. */
  sentence: string;
  order: {
    number: string;
    state: 'open' | 'closed';
    ordered: number;
    here: number;
    expectedOn: string | null;
  } | null;
  /** The latest of what was done to it: proposed, decided, ordered, closed. */
  changedAt: string;
}

type SupplyRequestStatus = 'draft' | 'active' | 'cancelled' | 'completed';

export interface SupplyRequest extends Resource {
  resourceType: 'SupplyRequest';
  identifier: Identifier[];
  status: SupplyRequestStatus;
  basedOn?: Reference[];
  item: CodeableReference;
  quantity: Quantity;
  occurrenceDateTime?: string;
  authoredOn: string;
  supplier: Reference[];
  reason: CodeableReference[];
}

/**
 * | here | R5 | because |
 * |---|---|---|
 * | proposed, nobody decided | `draft` | not yet ready for action |
 * | a newer proposal took its place, turned down, or none of it approved | `cancelled` | no further activity |
 * | ordered, some of it still to come | `active` | to be acted on |
 * | all of it came | `completed` | done in full |
 * | its order was closed before all of it came | `cancelled` | "terminated prior to the full completion" |
 *
 * Meanings: hl7.org/fhir/R5/valueset-supplyrequest-status.html
 */
export function supplyRequestStatus({
  proposal,
  order,
}: Pick<RequestFacts, 'proposal' | 'order'>): SupplyRequestStatus {
  if (proposal === 'proposed') return 'draft';
  if (proposal !== 'approved' || order === null) return 'cancelled';
  if (order.here >= order.ordered) return 'completed';
  return order.state === 'open' ? 'active' : 'cancelled';
}

/** Who proposed and approved it is not said: other systems need no colleague's name. */
export function supplyRequest(frame: Frame, request: RequestFacts): SupplyRequest {
  const { item, order } = request;
  return {
    resourceType: 'SupplyRequest',
    id: fhirId(request.id),
    meta: { lastUpdated: request.changedAt },
    identifier: [ownIdentifier(frame, 'restock-line', request.id)],
    status: supplyRequestStatus(request),
    // an order goes to one maker and has many lines, so its number is what this is based on, not what it is
    ...(order !== null && {
      basedOn: [
        {
          identifier: ownIdentifier(frame, 'order-number', order.number),
          display: fhirWords.order(order.number),
        },
      ],
    }),
    item: {
      concept: itemConcept(frame, item),
      reference: { reference: `DeviceDefinition/${fhirId(item.id)}` },
    },
    quantity: pieces(order?.ordered ?? request.approved ?? request.proposed),
    ...(order?.expectedOn != null && { occurrenceDateTime: order.expectedOn }),
    authoredOn: request.proposedAt,
    supplier: [makerReference(frame, request.maker)],
    reason: [{ concept: { text: request.sentence } }],
  };
}
