import type { JsonSchema } from './schema-of-type';

interface DescribedDocument {
  info: { version: string };
  paths: Record<string, Record<string, DescribedOperation>>;
  components: { schemas: Record<string, JsonSchema> };
}
interface DescribedOperation {
  summary: string;
  parameters?: { name: string; in: string; required: boolean; schema: JsonSchema }[];
  requestBody?: { content: Record<string, { schema: JsonSchema }> };
  responses: Record<string, { content?: Record<string, { schema: JsonSchema }> }>;
}

/**
 * The types of the client, from the description of the API: every named schema, and for every operation what goes into its path,
 * behind its `?` and into its body, and what it answers. One file of types alone; nothing of it exists at run time.
 */
export function clientTypes(given: Record<string, unknown>): string {
  const document = given as unknown as DescribedDocument;
  const schemas = Object.entries(document.components.schemas).map(
    ([name, schema]) => `export type ${name} = ${typeOf(schema, 0)};\n`,
  );
  const operations = Object.entries(document.paths).flatMap(([address, item]) =>
    Object.entries(item).map(
      ([method, operation]) =>
        `  /** ${operation.summary} */\n  '${method.toUpperCase()} ${address}': ${operationType(operation)};\n`,
    ),
  );
  return [
    '// Made from the description of the API by `npm run api:document`; a test compares the two.\n',
    ...schemas,
    '/** Every operation by its method and address. */\nexport interface Operations {\n',
    ...operations,
    '}\n',
  ].join('\n');
}

function operationType({ parameters = [], requestBody, responses }: DescribedOperation): string {
  const members = (place: string) =>
    parameters
      .filter((one) => one.in === place)
      .map(({ name, required, schema }) => `${keyOf(name)}${required ? '' : '?'}: ${typeOf(schema, 2)}`);
  const [path, query] = [members('path'), members('query')];
  const body = requestBody?.content['application/json']?.schema;
  const answers = Object.entries(responses)
    .filter(([status]) => status.startsWith('2'))
    .map(([, { content }]) => {
      const [media, its] = Object.entries(content ?? {})[0] ?? [];
      if (media === undefined || its === undefined) return 'null';
      return media.includes('json') && !media.includes('ndjson') ? typeOf(its.schema, 2) : 'string';
    });
  return [
    '{',
    ...(path.length > 0 ? [`    path: { ${path.join('; ')} };`] : []),
    ...(query.length > 0 ? [`    query: { ${query.join('; ')} };`] : []),
    ...(body ? [`    body: ${typeOf(body, 2)};`] : []),
    `    answer: ${[...new Set(answers)].join(' | ') || 'null'};`,
    '  }',
  ].join('\n');
}

const SIMPLE: Record<string, string> = {
  string: 'string',
  number: 'number',
  integer: 'number',
  boolean: 'boolean',
  null: 'null',
};

/** The TypeScript of a JSON Schema, as far as the description uses JSON Schema; what says nothing is `unknown`. */
function typeOf(schema: JsonSchema, depth: number): string {
  if (typeof schema.$ref === 'string') return schema.$ref.split('/').at(-1) ?? 'unknown';
  if ('const' in schema) return JSON.stringify(schema.const);
  if (Array.isArray(schema.enum)) return schema.enum.map((one) => JSON.stringify(one)).join(' | ');
  if ('not' in schema) return 'never';
  const choices = (schema.anyOf ?? schema.oneOf) as JsonSchema[] | undefined;
  if (choices) return unionOf(choices.map((one) => typeOf(one, depth)));
  const all = schema.allOf as JsonSchema[] | undefined;
  if (all) return all.map((one) => `(${typeOf(one, depth)})`).join(' & ');
  if (Array.isArray(schema.type))
    return unionOf((schema.type as string[]).map((one) => typeOf({ ...schema, type: one }, depth)));
  if (schema.type === 'array') return arrayType(schema, depth);
  if (schema.type === 'object' || schema.properties) return objectType(schema, depth);
  return SIMPLE[String(schema.type)] ?? 'unknown';
}

function arrayType(schema: JsonSchema, depth: number): string {
  const parts = schema.prefixItems as JsonSchema[] | undefined;
  if (parts) return `[${parts.map((one) => typeOf(one, depth)).join(', ')}]`;
  return `(${typeOf((schema.items as JsonSchema | undefined) ?? {}, depth)})[]`;
}

function objectType(schema: JsonSchema, depth: number): string {
  const properties = Object.entries((schema.properties as Record<string, JsonSchema> | undefined) ?? {});
  const required = new Set((schema.required as string[] | undefined) ?? []);
  const pad = ' '.repeat((depth + 1) * 2);
  const members = properties.map(
    ([name, its]) => `${pad}${keyOf(name)}${required.has(name) ? '' : '?'}: ${typeOf(its, depth + 1)};\n`,
  );
  const others = schema.additionalProperties;
  const named =
    typeof others === 'object' && others !== null
      ? `{ [name: string]: ${typeOf(others as JsonSchema, depth)} }`
      : null;
  if (members.length === 0) return named ?? '{ [name: string]: unknown }';
  const own = `{\n${members.join('')}${' '.repeat(depth * 2)}}`;
  return named === null ? own : `${own} & ${named}`;
}

const unionOf = (types: string[]): string => [...new Set(types)].map((one) => `(${one})`).join(' | ');
const keyOf = (name: string): string => (/^[A-Za-z_$][\w$]*$/.test(name) ? name : JSON.stringify(name));
