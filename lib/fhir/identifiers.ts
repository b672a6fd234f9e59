import type { CodeableConcept, Coding, Identifier, Reference } from './datatypes';
import { type Frame, type OwnSystem, ownSystem } from './frame';

/** A GTIN as identifier or code: the URI HL7 uses for GS1's trade item numbers (hl7.org/fhir/R5, official examples). */
export const GTIN_SYSTEM = 'https://www.gs1.org/gtin';

/** GS1 as issuer of a device identifier (hl7.org/fhir/R5/device-definitions.html#Device.udiCarrier.issuer). */
export const GS1_ISSUER = 'http://hl7.org/fhir/NamingSystem/gs1-di';

/** An identifier of this hospital's own, with whose it is. */
export const ownIdentifier = (frame: Frame, name: OwnSystem, value: string): Identifier => ({
  system: ownSystem(frame, name),
  value,
  assigner: { display: frame.hospital },
});

export const gtinIdentifier = (gtin: string): Identifier => ({ system: GTIN_SYSTEM, value: gtin });

/** A catalogue item as others name it. */
export interface NamedItem {
  code: string;
  name: string;
  gtin: string | null;
}

/** An item as a concept: its code here, and its GTIN where one is stated. */
export function itemConcept(frame: Frame, item: NamedItem): CodeableConcept {
  const coding: Coding[] = [{ system: ownSystem(frame, 'item-code'), code: item.code, display: item.name }];
  if (item.gtin !== null) coding.push({ system: GTIN_SYSTEM, code: item.gtin });
  return { coding, text: item.name };
}

/** A place of this hospital: its locations are not offered as resources, so it is named and not linked. */
export const placeReference = (frame: Frame, place: { id: string; name: string }): Reference => ({
  type: 'Location',
  identifier: ownIdentifier(frame, 'place', place.id),
  display: place.name,
});

/** A maker: named and not linked, as above. */
export const makerReference = (frame: Frame, maker: { id: string; name: string }): Reference => ({
  type: 'Organization',
  identifier: ownIdentifier(frame, 'maker', maker.id),
  display: maker.name,
});
