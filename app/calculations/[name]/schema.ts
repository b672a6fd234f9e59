/** The part of JSON Schema (2020-12) that the inputs of calculations use. */
export interface Schema {
  type?: string;
  title?: string;
  description?: string;
  default?: unknown;
  const?: unknown;
  enum?: unknown[];
  properties?: Record<string, Schema>;
  required?: string[];
  items?: Schema;
  oneOf?: Schema[];
  anyOf?: Schema[];
  minimum?: number;
  maximum?: number;
  maxLength?: number;
}

/** What a field for this schema looks like. */
export type Shape =
  | { kind: 'number'; whole: boolean }
  | { kind: 'text' }
  | { kind: 'yesNo' }
  | { kind: 'choice'; options: unknown[] }
  | { kind: 'fields'; fields: [string, Schema][] }
  | { kind: 'variants'; key: string; variants: { value: string; title: string; schema: Schema }[] }
  | { kind: 'words'; of: Schema }
  | { kind: 'rows'; of: Schema }
  | { kind: 'json' };

/** The schema without `null`, and whether `null` (not stated) is allowed. */
export function withoutNull(schema: Schema): { schema: Schema; nullable: boolean } {
  const options = schema.anyOf;
  if (!options?.some(({ type }) => type === 'null')) return { schema, nullable: false };
  const rest = options.filter(({ type }) => type !== 'null');
  const { title, description, default: first } = schema;
  const outer = Object.fromEntries(
    Object.entries({ title, description, default: first }).filter(([, value]) => value !== undefined),
  );
  const inner = rest.length === 1 ? rest[0] : { anyOf: rest };
  return { schema: { ...inner, ...outer }, nullable: true };
}

export function shapeOf(schema: Schema): Shape {
  if (schema.enum) return { kind: 'choice', options: schema.enum };
  if (schema.const !== undefined) return { kind: 'choice', options: [schema.const] };
  if (schema.oneOf) return variantsOf(schema.oneOf);
  switch (schema.type) {
    case 'integer':
    case 'number':
      return { kind: 'number', whole: schema.type === 'integer' };
    case 'string':
      return { kind: 'text' };
    case 'boolean':
      return { kind: 'yesNo' };
    case 'object':
      return schema.properties
        ? { kind: 'fields', fields: Object.entries(schema.properties) }
        : { kind: 'json' };
    case 'array': {
      const of = schema.items ?? {};
      const inner = shapeOf(withoutNull(of).schema).kind;
      if (inner === 'number' || inner === 'text' || inner === 'choice') return { kind: 'words', of };
      return inner === 'json' ? { kind: 'json' } : { kind: 'rows', of };
    }
    default:
      return { kind: 'json' };
  }
}

function variantsOf(options: readonly Schema[]): Shape {
  const key = Object.keys(options[0]?.properties ?? {}).find((name) =>
    options.every(({ properties }) => typeof properties?.[name]?.const === 'string'),
  );
  if (!key) return { kind: 'json' };
  return {
    kind: 'variants',
    key,
    variants: options.map((schema) => {
      const value = String(schema.properties?.[key]?.const);
      return { value, title: schema.title ?? spelled(value), schema };
    }),
  };
}

/** A first value that has the right form, where a row is added or another variant is chosen. */
export function firstValue(whole: Schema): unknown {
  const { schema, nullable } = withoutNull(whole);
  if (schema.default !== undefined) return structuredClone(schema.default);
  if (nullable) return null;
  const shape = shapeOf(schema);
  switch (shape.kind) {
    case 'number':
      return schema.minimum ?? 0;
    case 'text':
      return '';
    case 'yesNo':
      return false;
    case 'choice':
      return shape.options[0];
    case 'fields':
      return Object.fromEntries(shape.fields.map(([key, field]) => [key, firstValue(field)]));
    case 'variants':
      return firstValue(shape.variants[0]?.schema ?? {});
    case 'words':
    case 'rows':
      return [];
    case 'json':
      return null;
  }
}

const UNITS: [RegExp, string][] = [
  [/Mm$/, 'mm'],
  [/Um$/, 'µm'],
  [/Grams$/, 'g'],
  [/Pence$/, 'p'],
  [/Minutes$/, 'min'],
  [/Percent$/, '%'],
  [/Metres$/, 'm'],
];

/** The unit that a field's name carries: `lengthMm` is in mm. */
export function unitOf(key: string): string | undefined {
  return UNITS.find(([ending]) => ending.test(key))?.[1];
}

/** A field's name as words, without its unit: `plateLengthMm` → `Plate length`. */
export function spelled(key: string): string {
  const bare = UNITS.reduce((name, [ending]) => name.replace(ending, ''), key);
  const words = (bare || key)
    .replaceAll('-', ' ')
    .replace(/([a-z\d])([A-Z])/g, '$1 $2')
    .toLowerCase();
  return words.charAt(0).toUpperCase() + words.slice(1);
}

export const labelOf = (key: string, schema: Schema): string => schema.title ?? spelled(key);
