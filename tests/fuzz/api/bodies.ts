import fc from 'fast-check';
import type { Known } from './known';

/** What of JSON Schema 2020-12 the description of the API is written in. */
export interface Schema {
  $ref?: string;
  type?: string;
  const?: unknown;
  enum?: unknown[];
  anyOf?: Schema[];
  oneOf?: Schema[];
  properties?: Record<string, Schema>;
  required?: string[];
  additionalProperties?: boolean | Schema;
  propertyNames?: Schema;
  items?: Schema;
  prefixItems?: Schema[];
  minItems?: number;
  maxItems?: number;
  minLength?: number;
  maxLength?: number;
  minimum?: number;
  maximum?: number;
  exclusiveMinimum?: number;
  multipleOf?: number;
  pattern?: string;
  format?: string;
  contentEncoding?: string;
}

const ID = /^\^([a-zA-Z]+)_\[0-9a-z-\]\{1,60\}\$$/;
const MOST_ITEMS = 3;
const MOST_TEXT = 40;

/**
 * Values as a schema describes them, with the ids, codes and revisions of a hospital that is there, so that most come past the
 * door. `resolve` answers what a `$ref` names.
 */
export function valuesOf(
  schema: Schema,
  known: Known,
  resolve: (ref: string) => Schema,
  depth = 0,
): fc.Arbitrary<unknown> {
  const inner = (one: Schema) => valuesOf(one, known, resolve, depth + 1);
  if (schema.$ref !== undefined) return inner(resolve(schema.$ref));
  if ('const' in schema) return fc.constant(schema.const);
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum);
  const options = schema.anyOf ?? schema.oneOf;
  if (options !== undefined) return fc.oneof(...(depth > 6 ? options.slice(-1) : options).map(inner));
  switch (schema.type) {
    case 'object':
      return objects(schema, inner);
    case 'array':
      return arrays(schema, inner, depth);
    case 'string':
      return texts(schema, known);
    case 'integer':
      return numbers(schema).map(Math.round);
    case 'number':
      return numbers(schema);
    case 'boolean':
      return fc.boolean();
    case 'null':
      return fc.constant(null);
    default:
      return fc.jsonValue({ maxDepth: 2 });
  }
}

function objects(
  { properties = {}, required = [], additionalProperties, propertyNames }: Schema,
  inner: (schema: Schema) => fc.Arbitrary<unknown>,
): fc.Arbitrary<unknown> {
  if (typeof additionalProperties === 'object' && Object.keys(properties).length === 0)
    return fc.dictionary(
      (propertyNames === undefined ? fc.string({ maxLength: 12 }) : inner(propertyNames)).map(String),
      inner(additionalProperties),
      { maxKeys: MOST_ITEMS },
    );
  const members = Object.fromEntries(Object.entries(properties).map(([name, one]) => [name, inner(one)]));
  return fc.record(members, { requiredKeys: required.filter((name) => name in members) });
}

function arrays(
  { items = {}, prefixItems, minItems = 0, maxItems = MOST_ITEMS }: Schema,
  inner: (schema: Schema) => fc.Arbitrary<unknown>,
  depth: number,
): fc.Arbitrary<unknown> {
  if (prefixItems !== undefined) return fc.tuple(...prefixItems.map(inner));
  const most = Math.max(minItems, Math.min(maxItems, depth > 4 ? 1 : MOST_ITEMS));
  return fc.array(inner(items), { minLength: minItems, maxLength: most });
}

function texts({ pattern, format, contentEncoding, minLength = 0, maxLength }: Schema, known: Known) {
  if (format === 'date-time') return moments();
  if (format === 'date') return moments().map((at) => at.slice(0, 10));
  if (contentEncoding === 'base64' || format === 'base64')
    return fc.oneof(fc.constantFrom(...FILES), fc.string({ maxLength: 300 })).map(inBase64);
  const [, prefix] = ID.exec(pattern ?? '') ?? [];
  if (prefix !== undefined) return ids(prefix, known);
  if (pattern !== undefined)
    return fc.stringMatching(new RegExp(pattern)).map((text) => text.slice(0, maxLength));
  const most = Math.max(minLength, Math.min(maxLength ?? MOST_TEXT, MOST_TEXT));
  return fc.oneof(
    fc.constantFrom(...known.words).map((text) => text.slice(0, maxLength).padEnd(minLength, 'x')),
    fc.string({ minLength, maxLength: most }),
    fc.string({ unit: 'grapheme', minLength, maxLength: most }),
  );
}

/** One that is there, mostly; else one of a thing that is about to be made. */
export function ids(prefix: string, known: Known): fc.Arbitrary<string> {
  const made = fc.stringMatching(/^[0-9a-f]{8}$/).map((tail) => `${prefix}_${tail}`);
  const there = known.ids.get(prefix);
  return there === undefined ? made : fc.oneof({ weight: 5, arbitrary: fc.constantFrom(...there) }, made);
}

/** A little before and after now mostly, for what is about to happen; and any. */
function moments(): fc.Arbitrary<string> {
  const near = fc
    .integer({ min: -3_000, max: 30_000 })
    .map((minutes) => new Date(Date.now() + minutes * 60_000));
  const far = fc.date({ min: new Date('1970-01-01'), max: new Date('2100-01-01'), noInvalidDate: true });
  return fc.oneof({ weight: 4, arbitrary: near }, far).map((at) => at.toISOString());
}

function numbers({ minimum, maximum, exclusiveMinimum, multipleOf, type }: Schema): fc.Arbitrary<number> {
  const least = Math.max(minimum ?? exclusiveMinimum ?? -1_000, -1e9);
  const most = Math.max(least, Math.min(maximum ?? 1_000, 1e9));
  const whole = fc.integer({ min: Math.ceil(least), max: Math.max(Math.ceil(least), Math.floor(most)) });
  // a revision that is there is a small one
  const small = fc.integer({
    min: Math.ceil(least),
    max: Math.max(Math.ceil(least), Math.min(Math.floor(most), 4)),
  });
  if (type === 'integer' || multipleOf !== undefined) return fc.oneof(small, whole);
  return fc.oneof(small, whole, fc.double({ min: least, max: most, noNaN: true }));
}

const FILES = [
  'Name,Role\r\nNew Person,technician\r\n',
  'Theatre,Date,Start,Minutes,Region,Side,Surgeon,Urgency\r\nTheatre 1,2027-02-10,08:30,90,Ankle,Left,Tobias Wray,Booked\r\n',
  '{"resourceType":"Bundle","type":"collection","entry":[]}',
  'PK\u0003\u0004',
  '',
];

const inBase64 = (text: string) => Buffer.from(text).toString('base64');
