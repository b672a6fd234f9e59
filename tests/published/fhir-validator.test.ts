import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { capabilityStatement } from '@/lib/fhir/capabilityStatement';
import { OFFERED_TYPES, parametersOf } from '@/lib/fhir/offered';
import { official } from './fhir-r5/official';
import { fitsSchema } from './fhir-r5/schema';
import { isUcum } from './fhir-r5/ucum';
import { faultsOf } from './fhir-r5/validate';

/**
 * The validator that the tests of the FHIR service rest on, against HL7’s official R5 packages (5.0.0, CC0; what of them and how:
 * fhir-r5/source.json, fhir-r5/extract.mjs): it must pass HL7’s own examples, and it must fail whatever is broken.
 */

type Json = Record<string, unknown> & { resourceType: string };
const EXAMPLES = official<Record<string, Json>>('examples');
const rulesOf = (resource: unknown) => faultsOf(resource).map(({ at, rule }) => `${at}: ${rule}`);

/** Examples of the official package that break R5 themselves, each with the reason. There is none among these. */
const KNOWN_DEFECTS: Record<string, string> = {};

describe('the official examples', () => {
  it('are there for each of the seven types', () => {
    for (const type of OFFERED_TYPES)
      expect(Object.keys(EXAMPLES).some((name) => name.startsWith(`${type}-`))).toBe(true);
    expect(Object.keys(EXAMPLES)).toHaveLength(47);
  });

  it.each(Object.keys(EXAMPLES))('%s passes', (name) => {
    const example = EXAMPLES[name] as Json;
    expect(fitsSchema(example)).toBe(true);
    if (name in KNOWN_DEFECTS) expect(rulesOf(example)).not.toEqual([]);
    else expect(rulesOf(example)).toEqual([]);
  });
});

const usage = EXAMPLES['DeviceUsage-example'] as Json;
const device = EXAMPLES['Device-example-udi1'] as Json;
const order = EXAMPLES['SupplyRequest-simpleorder'] as Json;
const without = (resource: Json, ...names: string[]) =>
  Object.fromEntries(Object.entries(resource).filter(([name]) => !names.includes(name)));

/** One break of each rule the validator knows, with what it must say. */
const BROKEN: [string, unknown, string][] = [
  ['no resource', 'a text', ': no resourceType'],
  ['an unknown type', { resourceType: 'Tray' }, 'Tray: no such resource'],
  ['a data type as a resource', { resourceType: 'Quantity', value: 1 }, 'Quantity: no such resource'],
  ['an unknown element', { ...usage, lot: 'A' }, 'DeviceUsage.lot: no such element'],
  ['a required element left out', without(usage, 'patient'), 'DeviceUsage.patient: lacking'],
  ['a required status left out', without(usage, 'status'), 'DeviceUsage.status: lacking'],
  ['an empty object', { ...usage, patient: {} }, 'DeviceUsage.patient: empty'],
  ['an empty list', { ...usage, identifier: [] }, 'DeviceUsage.identifier: an empty list'],
  ['a list for one', { ...usage, status: ['active'] }, 'DeviceUsage.status: a list'],
  ['one for a list', { ...usage, identifier: { value: 'a' } }, 'DeviceUsage.identifier: not a list'],
  [
    'a code of no value set',
    { ...usage, status: 'used' },
    'DeviceUsage.status: not in http://hl7.org/fhir/ValueSet/deviceusage-status|5.0.0',
  ],
  [
    'a concept of no value set',
    { resourceType: 'SupplyDelivery', type: { coding: [{ system: 'http://a.example', code: 'device' }] } },
    'SupplyDelivery.type: not in http://hl7.org/fhir/ValueSet/supplydelivery-supplyitemtype|5.0.0',
  ],
  [
    'a reference to another type',
    { ...usage, patient: { reference: 'Device/a' } },
    'DeviceUsage.patient: may not lead to Device',
  ],
  [
    'a reference that states another type',
    { ...usage, patient: { type: 'Device', display: 'a' } },
    'DeviceUsage.patient: may not lead to Device',
  ],
  [
    'a concept or reference to another type',
    { ...usage, device: { reference: { reference: 'Patient/a' } } },
    'DeviceUsage.device: may not lead to Patient',
  ],
  ['an id with an underscore', { ...usage, id: 'item_a' }, 'DeviceUsage.id: not a id'],
  ['an id of 65', { ...usage, id: 'a'.repeat(65) }, 'DeviceUsage.id: not a id'],
  [
    'a day that never is',
    { ...usage, dateAsserted: '2026-02-30' },
    'DeviceUsage.dateAsserted: not a dateTime',
  ],
  [
    'a time without its offset',
    { ...usage, dateAsserted: '2026-02-03T10:00:00' },
    'DeviceUsage.dateAsserted: not a dateTime',
  ],
  [
    'a number as text',
    { ...order, quantity: { value: '10' } },
    'SupplyRequest.quantity.value: not a decimal',
  ],
  ['text as a number', { ...device, lotNumber: 7654321 }, 'Device.lotNumber: not a string'],
  ['an empty text', { ...device, lotNumber: '' }, 'Device.lotNumber: not a string'],
  [
    'a fraction as an integer',
    { resourceType: 'DeviceDefinition', hasPart: [{ reference: { display: 'a' }, count: 1.5 }] },
    'DeviceDefinition.hasPart[0].count: not a integer',
  ],
  [
    'two choices',
    { ...usage, timingDateTime: '2026', timingPeriod: { start: '2026' } },
    'DeviceUsage.timing[x]: more than one choice',
  ],
  [
    'a choice of no such type',
    { ...usage, timingString: 'often' },
    'DeviceUsage.timingString: no such element',
  ],
  [
    'half a UDI',
    { ...device, udiCarrier: [{ deviceIdentifier: '1' }] },
    'Device.udiCarrier[0].issuer: lacking',
  ],
  [
    'a reference that says nothing (ref-2)',
    { ...usage, patient: { type: 'Patient' } },
    'DeviceUsage.patient: ref-2',
  ],
  [
    'a link to nothing contained (ref-1)',
    { ...usage, patient: { reference: '#a' } },
    'DeviceUsage.patient: ref-1',
  ],
  [
    'something contained that nothing refers to (dom-3)',
    { ...usage, contained: [{ resourceType: 'Device', id: 'a' }] },
    'DeviceUsage: dom-3',
  ],
  [
    'something broken that is contained',
    { ...usage, contained: [{ resourceType: 'Device', id: 'a', status: 'on' }] },
    'Device.status: not in http://hl7.org/fhir/ValueSet/device-status|5.0.0',
  ],
  [
    'half a ratio (rat-1)',
    {
      resourceType: 'InventoryItem',
      status: 'active',
      association: [
        {
          associationType: { text: 'a' },
          relatedItem: { display: 'a' },
          quantity: { numerator: { value: 1 } },
        },
      ],
    },
    'InventoryItem.association[0].quantity: rat-1',
  ],
  [
    'a code of no system (qty-3)',
    { ...order, quantity: { value: 1, code: 'mm' } },
    'SupplyRequest.quantity: qty-3',
  ],
  [
    'an extension without a value (ext-1)',
    { ...usage, patient: { extension: [{ url: 'http://a.example' }] } },
    'DeviceUsage.patient.extension[0]: ext-1',
  ],
  [
    'a searchset with a request in it (bdl-3…)',
    { resourceType: 'Bundle', type: 'searchset', entry: [{ request: { method: 'GET', url: 'a' } }] },
    'Bundle: bdl-3a',
  ],
];

describe('a resource that is broken', () => {
  it.each(BROKEN)('%s is found', (_name, resource, fault) => {
    expect(rulesOf(resource)).toContain(fault);
  });

  it('is found wherever the official JSON Schema finds it', () => {
    // the schema is read by another program (ajv), so this compares two readings of R5
    const names = Object.keys(EXAMPLES).filter((name) => !name.startsWith('CapabilityStatement'));
    let refused = 0;
    fc.assert(
      fc.property(fc.constantFrom(...names), fc.nat(), fc.constantFrom(...CHANGES), (name, at, change) => {
        const example = structuredClone(EXAMPLES[name]) as Json;
        const places = placesIn(example);
        change(places[at % places.length] as Place);
        if (fitsSchema(example)) return;
        refused += 1;
        expect(rulesOf(example)).not.toEqual([]);
      }),
      { numRuns: 400 },
    );
    expect(refused).toBeGreaterThan(100);
  });
});

interface Place {
  owner: Record<string, unknown>;
  key: string;
}

/** Every property of a resource and of what is in it, but its type. */
function placesIn(value: unknown): Place[] {
  if (Array.isArray(value)) return value.flatMap(placesIn);
  if (typeof value !== 'object' || value === null) return [];
  const owner = value as Record<string, unknown>;
  return Object.keys(owner).flatMap((key) => [
    ...(key === 'resourceType' ? [] : [{ owner, key }]),
    ...placesIn(owner[key]),
  ]);
}

const CHANGES: ((place: Place) => void)[] = [
  ({ owner, key }) => {
    delete owner[key];
  },
  ({ owner, key }) => {
    owner[key] = 7;
  },
  ({ owner, key }) => {
    owner[key] = [owner[key]];
  },
  ({ owner, key }) => {
    owner[`${key}Too`] = owner[key];
  },
  ({ owner, key }) => {
    owner[key] = { unheardOf: true };
  },
  ({ owner, key }) => {
    owner[key] = ' ';
  },
];

describe('the capability statement', () => {
  const statement = capabilityStatement({ base: 'https://kitwright.example/api/v1/fhir' });

  it('is R5', () => {
    expect(rulesOf(statement)).toEqual([]);
    expect(fitsSchema(statement)).toBe(true);
  });

  it('names HL7’s search parameters as HL7 defines them for that type', () => {
    const known = official<Record<string, { url: string; type: string }>>('search-parameters');
    for (const type of OFFERED_TYPES)
      for (const [name, { definition, type: kind }] of Object.entries(parametersOf(type))) {
        const official = known[`${type} ${name}`] ?? known[`Resource ${name}`];
        if (definition === null) expect(official, `${type} ${name} is HL7’s`).toBeUndefined();
        else expect(official).toEqual({ url: definition, type: kind });
      }
  });
});

// ucum.org, read by @lhncbc/ucum-lhc
it.each(['{piece}', 'mm', 'g', 'N.mm'])('%s is a unit of UCUM', (code) => expect(isUcum(code)).toBe(true));
it.each(['pieces', 'N·mm', 'grams'])('%s is none', (code) => expect(isUcum(code)).toBe(false));
