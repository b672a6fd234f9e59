import type { Item } from '../catalogue/item';
import { ITEM_STATUS_WORDS, KIND_WORDS, MATERIAL_WORDS, SIDE_WORDS, USE_WORDS } from '../wording/catalogue';
import { DIMENSION_WORDS, type Dimension, fhirWords, propertyWords } from '../wording/fhir';
import { absent } from './absent';
import type { CodeableConcept, Identifier, Period, Quantity, Reference, Resource } from './datatypes';
import type { Frame } from './frame';
import { gtinIdentifier, makerReference, ownIdentifier } from './identifiers';
import { fhirId } from './ids';
import { grams, millimetres, newtonMillimetres } from './quantities';

interface Property {
  type: CodeableConcept;
  valueQuantity?: Quantity;
  valueString?: string;
  valueBoolean?: boolean;
  valueInteger?: number;
  valueCodeableConcept?: CodeableConcept;
}

export interface DeviceDefinition extends Resource {
  resourceType: 'DeviceDefinition';
  description?: string;
  identifier: Identifier[];
  manufacturer?: Reference;
  deviceName: { name: string; type: 'user-friendly-name' }[];
  classification: { type: CodeableConcept }[];
  hasPart?: { reference: Reference; count: number }[];
  version?: { value: string }[];
  property?: Property[];
  material?: { substance: CodeableConcept }[];
  correctiveAction?: { recall: true; period: Period };
}

/**
 * A catalogue item: the design of a piece. Its GTIN is given as an identifier and not as `udiDeviceIdentifier`: that demands
 * the jurisdiction it is registered in, which the catalogue does not have.
 */
export function itemDefinition(
  frame: Frame,
  { item, maker }: { item: Item; maker: { id: string; name: string } },
): DeviceDefinition {
  const { code, gtin, name, nickname, material, status } = item;
  return {
    resourceType: 'DeviceDefinition',
    id: fhirId(item.id),
    identifier: [ownIdentifier(frame, 'item-code', code), ...(gtin === null ? [] : [gtinIdentifier(gtin)])],
    manufacturer: makerReference(frame, maker),
    deviceName: [name, ...(nickname === null ? [] : [nickname])].map((one) => ({
      name: one,
      type: 'user-friendly-name',
    })),
    classification: [{ type: { text: KIND_WORDS[item.kind] } }],
    property: propertiesOf(item),
    ...(material !== null && { material: [{ substance: { text: MATERIAL_WORDS[material] } }] }),
    // since when it is recalled is with the recall, and a catalogue entry does not say
    ...(status === 'recalled' && { correctiveAction: { recall: true, period: absent('unknown') } }),
  };
}

/** What the catalogue states, and nothing for what it does not. */
function propertiesOf(item: Item): Property[] {
  const dimensions = (Object.keys(DIMENSION_WORDS) as Dimension[]).flatMap((key): Property[] => {
    const um = (item as Partial<Record<Dimension, number | null>>)[key] ?? null;
    return um === null ? [] : [{ type: { text: DIMENSION_WORDS[key] }, valueQuantity: millimetres(um) }];
  });
  const { side, massGrams, suppliedSterile, reprocessingLimit } = item;
  const torque = 'torqueNmm' in item ? item.torqueNmm : null;
  const named = (name: keyof typeof propertyWords, value: Omit<Property, 'type'> | false): Property[] =>
    value === false ? [] : [{ type: { text: propertyWords[name] }, ...value }];
  return [
    ...dimensions,
    ...named('torque', torque !== null && { valueQuantity: newtonMillimetres(torque) }),
    ...named('mass', massGrams !== null && { valueQuantity: grams(massGrams) }),
    ...named('side', side !== null && { valueCodeableConcept: { text: SIDE_WORDS[side] } }),
    ...named('suppliedSterile', suppliedSterile !== null && { valueBoolean: suppliedSterile }),
    ...named('use', { valueCodeableConcept: { text: USE_WORDS[item.use] } }),
    ...named('reprocessingLimit', reprocessingLimit !== null && { valueInteger: reprocessingLimit }),
    ...named('partsPerPiece', { valueInteger: item.partsPerPiece }),
    ...named('standing', { valueCodeableConcept: { text: ITEM_STATUS_WORDS[item.status] } }),
  ];
}

/** A version of a set's configuration that is or was in force: the design of a set. */
export interface ConfigurationFacts {
  id: string;
  version: number;
  code: string;
  name: string;
  note: string | null;
  /** How many of each item a whole set holds; an item is named once. */
  parts: readonly { itemId: string; count: number }[];
}

export const configurationDefinition = (
  frame: Frame,
  { id, version, code, name, note, parts }: ConfigurationFacts,
): DeviceDefinition => ({
  resourceType: 'DeviceDefinition',
  id: fhirId(id),
  ...(note !== null && { description: note }),
  identifier: [ownIdentifier(frame, 'configuration-version', `${code}/${version}`)],
  deviceName: [{ name, type: 'user-friendly-name' }],
  classification: [{ type: { text: fhirWords.setConfiguration } }],
  ...(parts.length > 0 && {
    hasPart: parts.map(({ itemId, count }) => ({
      reference: { reference: `DeviceDefinition/${fhirId(itemId)}` },
      count,
    })),
  }),
  version: [{ value: String(version) }],
});
