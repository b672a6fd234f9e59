import type { TurnStep } from '../sets/setState';
import { fhirWords } from '../wording/fhir';
import { stepWords } from '../wording/sets';
import type { CodeableConcept, CodeableReference, Identifier, Reference, Resource } from './datatypes';
import { type Frame, ownSystem } from './frame';
import { ownIdentifier, placeReference } from './identifiers';
import { fhirId } from './ids';

/** A set as it is now, ours or on loan. Pieces in sets and on shelves have no number of their own: they are counted. */
export interface SetFacts {
  id: string;
  code: string;
  owner: 'ours' | 'loan';
  /** Of a set on loan; `null`: not on record. */
  lender: string | null;
  step: TurnStep;
  heldBecause: string | null;
  withdrawn: boolean;
  /** Of its sterile pack. */
  useBy: string | null;
  place: { id: string; name: string } | null;
  configuration: { code: string; name: string; versionId: string };
}

export interface Device extends Resource {
  resourceType: 'Device';
  identifier: Identifier[];
  displayName: string;
  definition: CodeableReference;
  status: DeviceStatus;
  availabilityStatus: CodeableConcept;
  expirationDate?: string;
  name: { value: string; type: 'user-friendly-name' }[];
  type: CodeableConcept[];
  owner?: Reference;
  location?: Reference;
}

type DeviceStatus = 'active' | 'inactive';

/** R5's status is of the record, not of the thing: out of service is `inactive`, whatever the step. */
export const deviceStatus = (withdrawn: boolean): DeviceStatus => (withdrawn ? 'inactive' : 'active');

/**
 * A set. Its step is said in words alone: R5's code `available` would promise that it may be used, and whether it may is decided
 * when it is sent; `lost`, `damaged` and `destroyed` are said of pieces here, never of a whole set.
 */
export function setDevice(frame: Frame, set: SetFacts): Device {
  const { configuration, owner, lender, place, useBy } = set;
  return {
    resourceType: 'Device',
    id: fhirId(set.id),
    identifier: [ownIdentifier(frame, 'set-code', set.code)],
    displayName: set.code,
    definition: {
      concept: {
        coding: [{ system: ownSystem(frame, 'configuration-code'), code: configuration.code }],
        text: configuration.name,
      },
      reference: { reference: `DeviceDefinition/${fhirId(configuration.versionId)}` },
    },
    status: deviceStatus(set.withdrawn),
    availabilityStatus: { text: stepWords(set.step, set.heldBecause) },
    ...(useBy !== null && { expirationDate: useBy }),
    name: [{ value: configuration.name, type: 'user-friendly-name' }],
    type: [{ text: owner === 'loan' ? fhirWords.loanSet : fhirWords.set }],
    ...ownerOf(frame, owner, lender),
    ...(place !== null && { location: placeReference(frame, place) }),
  };
}

function ownerOf(frame: Frame, owner: SetFacts['owner'], lender: string | null): { owner?: Reference } {
  const display = owner === 'ours' ? frame.hospital : lender;
  return display === null ? {} : { owner: { type: 'Organization', display } };
}
