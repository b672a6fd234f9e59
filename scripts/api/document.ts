import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import type { About } from '@/app/_server/enter';
import { revisionMember, takesRevision } from '@/app/_server/preconditions';
import { ENDPOINTS, type Endpoint, type Reach } from '@/lib/people/access';
import { may } from '@/lib/people/permissions';
import { ROLE_WORDS, role as roles } from '@/lib/people/role';
import { NEEDS_PRESENCE } from '@/lib/people/tokens';
import { tokenWords } from '@/lib/wording/tokens';
import { type RouteTypes, typesOfRoutes } from './answers-of-routes';
import type { JsonSchema } from './schema-of-type';

const METHODS = ['GET', 'POST', 'PUT', 'PATCH', 'DELETE'] as const;
/** Named by the type that a handler answers; everything else is JSON. */
const MEDIA: Record<string, string> = {
  JsonLines: 'application/x-ndjson',
  FhirJson: 'application/fhir+json',
};

/**
 * Values that may be any JSON: the example and the input of a calculation are whatever its own schema, beside it, says; a setting
 * has the fields of its key; and an entry of the ledger holds what was entered by its act.
 */
const UNSTATED = [
  'CalculationDescription.example',
  'LengthCoverFigure.input',
  'LedgerRecord.detail.*',
  'Correction.*',
  'TurnHistory.events.[].detail.*',
  ...['SettingChange.before.*', 'SettingChange.after.*', 'SettingOnFile.value.*', 'SettingOnFile.defaults.*'],
  ...['value.*', 'defaults.*'],
];

/**
 * The OpenAPI 3.1 description of the API: addresses, acts and bodies from the running routes, sentences and answers from
 * their types. Throws where something is not described.
 */
export async function makeDocument(root: string): Promise<Record<string, unknown>> {
  const routes = routesUnder(root);
  const types = typesOfRoutes(
    root,
    routes.map(({ file }) => file),
  );
  const paths: Record<string, Record<string, unknown>> = {};
  for (const { address, file } of routes) {
    const module = (await import(file)) as Record<string, (() => unknown) & { about?: About }>;
    const item: Record<string, unknown> = {};
    for (const method of METHODS) {
      const handler = module[method];
      if (!handler) continue;
      item[method.toLowerCase()] = operation(
        `${method} ${address}` as Endpoint,
        file,
        handler.about ?? {},
        types,
      );
    }
    paths[address.replaceAll(/\[(\w+)\]/g, '{$1}')] = item;
  }
  const unstated = [...types.unstated].filter((place) => !UNSTATED.includes(place));
  if (unstated.length > 0) throw new Error(`no type says what is at: ${unstated.join(', ')}`);
  return {
    openapi: '3.1.0',
    info: {
      title: 'Kitwright',
      version: (JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string }).version,
      description:
        'The addresses that the screens of Kitwright use, open to other systems by tokens. Times are ISO instants, lengths millimetres, angles degrees; ids say by their beginning what they name. What is wrong is told as RFC 9457 has it, every fault with its place.',
    },
    tags: [...new Set(routes.map(({ address }) => tagOf(address)))].map((name) => ({ name })),
    paths,
    components: {
      schemas: {
        Problem: PROBLEM,
        ...Object.fromEntries([...types.named].sort(([a], [b]) => (a < b ? -1 : 1))),
      },
      responses: { Problem: problemResponse() },
      securitySchemes: {
        token: { type: 'http', scheme: 'bearer', description: 'A token that an administrator issued.' },
        session: {
          type: 'apiKey',
          in: 'cookie',
          name: '__Host-session',
          description: 'Somebody who is signed in, in a page of Kitwright’s own.',
        },
      },
    },
  };
}

/** Every route of the API but the one that answers what no other does. */
function routesUnder(root: string): { address: string; file: string }[] {
  return readdirSync(join(root, 'app/api/v1'), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('/route.ts') && !path.startsWith('[...'))
    .sort()
    .map((path) => ({
      address: `/api/v1/${path.slice(0, -'/route.ts'.length)}`,
      file: join(root, 'app/api/v1', path),
    }));
}

const tagOf = (address: string) => address.split('/')[3] ?? '';

function operation(key: Endpoint, file: string, about: About, types: RouteTypes) {
  const [method = '', address = ''] = key.split(' ');
  const reach: Reach | undefined = ENDPOINTS[key];
  if (reach === undefined) throw new Error(`${key} is not declared`);
  const { says, answers } = types.of(file, method);
  if (says === '') throw new Error(`${key} has no sentence that says what it does`);
  const presence = reach === 'anybody' ? undefined : NEEDS_PRESENCE[reach];
  const [summary = ''] = says.split(/(?<=\.)\s/);
  return {
    operationId: operationId(method, address),
    tags: [tagOf(address)],
    summary,
    description: [says.replaceAll(/\s+/g, ' '), whoMay(reach)].join('\n\n'),
    security: reach === 'anybody' ? [] : presence ? [{ session: [] }] : [{ token: [] }, { session: [] }],
    'x-act': reach,
    ...parametersOf(method, address, about),
    ...(about.body
      ? {
          requestBody: {
            required: true,
            content: { 'application/json': { schema: bodySchema(about.body) } },
          },
        }
      : {}),
    responses: {
      ...Object.fromEntries(answers.map(({ status, schema }) => [status, success(status, schema)])),
      ...Object.fromEntries(
        refusals(method, reach, about).map((status) => [status, { $ref: '#/components/responses/Problem' }]),
      ),
    },
  };
}

/** `POST /api/v1/sets/[id]/hold` → `postSetsByIdHold`. */
export function operationId(method: string, address: string): string {
  const words = address
    .split('/')
    .slice(3)
    .flatMap((part) => (part.startsWith('[') ? ['by', part.slice(1, -1)] : part.split(/[-.]/)));
  return method.toLowerCase() + words.map((word) => word.charAt(0).toUpperCase() + word.slice(1)).join('');
}

function whoMay(reach: Reach): string {
  if (reach === 'anybody') return 'Open to anybody who can reach the address.';
  const who = roles.options
    .filter((one) => may({ role: one }, reach))
    .map((one) => ROLE_WORDS[one].toLowerCase());
  const whom = who.length === roles.options.length ? 'everybody who works here' : who.join(', ');
  const reason = NEEDS_PRESENCE[reach];
  return `Act “${reach}”: ${whom}.${reason ? ` ${tokenWords.presence(reason)}` : ''}`;
}

function parametersOf(method: string, address: string, { query, body, answers }: About) {
  const inPath = [...address.matchAll(/\[(\w+)\]/g)].map(([, name]) => ({
    name,
    in: 'path',
    required: true,
    schema: { type: 'string' },
  }));
  const asked = query
    ? (schemaOf(query) as { properties?: Record<string, JsonSchema>; required?: string[] })
    : {};
  const inQuery = Object.entries(asked.properties ?? {}).map(([name, { description, ...schema }]) => ({
    name,
    in: 'query',
    required: asked.required?.includes(name) ?? false,
    ...(description ? { description } : {}),
    schema,
  }));
  const headers = [
    ...(takesRevision(body) ? [IF_MATCH] : []),
    ...(method !== 'GET' && answers === undefined ? [IDEMPOTENCY_KEY] : []),
  ];
  const parameters = [...inPath, ...inQuery, ...headers];
  return parameters.length > 0 ? { parameters } : {};
}

const IF_MATCH = {
  name: 'If-Match',
  in: 'header',
  required: false,
  description:
    'The revision that was seen, in quotes, as the ETag of an answer has it. Without it a token is refused (428) unless the act is safe at any revision; where it is not the present one, nothing is done (412).',
  schema: { type: 'string', pattern: '^"\\d+"$' },
};
const IDEMPOTENCY_KEY = {
  name: 'Idempotency-Key',
  in: 'header',
  required: false,
  description:
    'One of your own for each thing that is to be done, 1 to 255 visible characters. Sent again within a day, it is answered as before, with Idempotency-Replayed: true, and done once; with anything else asked it is refused (422).',
  schema: { type: 'string', minLength: 1, maxLength: 255 },
};

/** What a body takes. The revision that a page sends in it may be left out where `If-Match` says it. */
function bodySchema(body: z.ZodType): JsonSchema {
  const schema = schemaOf(body) as JsonSchema & { oneOf?: JsonSchema[] };
  if (!(body instanceof z.ZodUnion)) return withoutRevision(body, schema);
  const kinds = body.options as z.ZodType[];
  const { oneOf } = schema;
  return oneOf ? { ...schema, oneOf: oneOf.map((one, at) => withoutRevision(kinds[at], one)) } : schema;
}

function withoutRevision(body: z.ZodType | undefined, given: JsonSchema): JsonSchema {
  const schema = given as JsonSchema & { required?: string[]; properties?: Record<string, JsonSchema> };
  const revision = revisionMember(body);
  if (!revision) return schema;
  return {
    ...schema,
    properties: {
      ...schema.properties,
      [revision.name]: {
        ...schema.properties?.[revision.name],
        description: 'As If-Match says; a page sends it here.',
      },
    },
    required: (schema.required ?? []).filter((name) => name !== revision.name),
  };
}

/** JSON Schema of what is taken: before it is read, so with what may be left out left out. */
function schemaOf(schema: z.ZodType): JsonSchema {
  const { $schema: _, ...rest } = z.toJSONSchema(schema, {
    io: 'input',
    target: 'draft-2020-12',
    unrepresentable: 'any',
    reused: 'inline',
  }) as JsonSchema;
  return rest;
}

function success(status: number, schema: JsonSchema) {
  if (status === 204) return { description: 'Done; there is nothing to say.' };
  const named = typeof schema.$ref === 'string' ? (schema.$ref.split('/').at(-1) ?? '') : '';
  const media = MEDIA[named] ?? 'application/json';
  const its = media === 'application/x-ndjson' ? { type: 'string' } : schema;
  return { description: status === 201 ? 'Made.' : 'Done.', content: { [media]: { schema: its } } };
}

/** With which statuses it may be refused. */
function refusals(method: string, reach: Reach, { body, query }: About): number[] {
  const writes = method !== 'GET';
  return [
    ...(body ? [400, 413, 415, 422] : []),
    ...(query ? [400] : []),
    ...(reach === 'anybody' ? [] : [401, 403]),
    ...(reach === 'anybody' && writes ? [401, 403, 429] : []),
    404,
    ...(writes ? [400, 409, 413, 422] : []),
    ...(takesRevision(body) ? [412, 428] : []),
  ]
    .filter((status, at, all) => all.indexOf(status) === at)
    .sort((a, b) => a - b);
}

const PROBLEM: JsonSchema = {
  type: 'object',
  description: 'What is wrong (RFC 9457), every fault in `errors` with its place in the input.',
  properties: {
    type: { type: 'string' },
    title: { type: 'string' },
    status: { type: 'integer' },
    detail: { type: 'string' },
    errors: {
      type: 'array',
      items: {
        type: 'object',
        properties: {
          path: { type: 'array', items: { type: ['string', 'number'] } },
          pointer: { type: 'string', description: 'The same place as a JSON Pointer (RFC 6901).' },
          code: { type: 'string' },
          message: { type: 'string' },
        },
        required: ['path', 'pointer', 'code', 'message'],
      },
    },
    because: { enum: ['notFound', 'notPermitted', 'frozen', 'conflict', 'invalid'] },
    current: { description: 'The thing as it stands, where somebody else saved meanwhile.' },
  },
  required: ['type', 'title', 'status', 'detail'],
};

function problemResponse() {
  return {
    description: 'Not done, and why.',
    content: {
      'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } },
      'application/fhir+json': { schema: { type: 'object', required: ['resourceType'] } },
    },
  };
}
