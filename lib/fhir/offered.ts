/** The seven types that are offered, and by what they are searched: the one list that searches, metadata and tests read. */

export const OFFERED_TYPES = [
  'Device',
  'DeviceDefinition',
  'DeviceUsage',
  'InventoryItem',
  'InventoryReport',
  'SupplyDelivery',
  'SupplyRequest',
] as const;
export type OfferedType = (typeof OFFERED_TYPES)[number];

export const isOffered = (type: string): type is OfferedType =>
  (OFFERED_TYPES as readonly string[]).includes(type);

export type ParameterType = 'token' | 'string' | 'date';

export interface Parameter {
  type: ParameterType;
  /** HL7's definition; `null`: a parameter of this service alone. */
  definition: string | null;
  documentation: string;
}

const hl7 = (name: string) => `http://hl7.org/fhir/SearchParameter/${name}`;
const official = (type: ParameterType, name: string, documentation: string): Parameter => ({
  type,
  definition: hl7(name),
  documentation,
});
const own = (type: ParameterType, documentation: string): Parameter => ({
  type,
  definition: null,
  documentation,
});

const ID = official('token', 'Resource-id', 'The id of the resource.');
const LAST_UPDATED = official('date', 'Resource-lastUpdated', 'When it was last changed.');
const ITEM = 'The item’s code here, or its GTIN.';

/** Where nothing keeps when something last changed, `_lastUpdated` is not offered. */
const PARAMETERS: Record<OfferedType, Record<string, Parameter>> = {
  Device: {
    _id: ID,
    identifier: official('token', 'Device-identifier', 'The code of the set.'),
    status: official('token', 'Device-status', 'active, or inactive: out of service.'),
  },
  DeviceDefinition: {
    _id: ID,
    identifier: official(
      'token',
      'DeviceDefinition-identifier',
      'The item’s code here, its GTIN, or a version of a configuration as code/version.',
    ),
  },
  DeviceUsage: {
    _id: ID,
    device: official('token', 'DeviceUsage-device', ITEM),
    status: official('token', 'DeviceUsage-status', 'active, not-done or entered-in-error.'),
    date: own('date', 'When the piece was used.'),
    lot: own('string', 'The lot of the piece, as it is written on its label.'),
    case: own('token', 'The case’s opaque reference: the identifier of the procedure.'),
  },
  InventoryItem: {
    _id: ID,
    identifier: official('token', 'InventoryItem-identifier', 'The heap.'),
    code: official('token', 'InventoryItem-code', ITEM),
    status: official('token', 'InventoryItem-status', 'active, inactive or unknown.'),
    lot: own('string', 'The lot, as it is written on its label.'),
  },
  InventoryReport: {
    _id: ID,
    status: official('token', 'InventoryReport-status', 'active or draft.'),
  },
  SupplyDelivery: {
    _id: ID,
    _lastUpdated: LAST_UPDATED,
    status: official('token', 'SupplyDelivery-status', 'completed.'),
    lot: own('string', 'The lot that came, as it is written on its label.'),
  },
  SupplyRequest: {
    _id: ID,
    _lastUpdated: LAST_UPDATED,
    status: official('token', 'SupplyRequest-status', 'draft, active, completed or cancelled.'),
    date: official('date', 'clinical-date', 'When it was proposed.'),
    order: own('token', 'The number of the order it was placed with.'),
  },
};

export const parametersOf = (type: OfferedType): Readonly<Record<string, Parameter>> => PARAMETERS[type];
