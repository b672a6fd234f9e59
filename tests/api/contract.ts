import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Ajv2020, { type ValidateFunction } from 'ajv/dist/2020.js';
import { DOCUMENT_PLACE } from '@/scripts/api/place';

/** The description of the API as it is kept. */
export const DOCUMENT = JSON.parse(readFileSync(join(process.cwd(), DOCUMENT_PLACE), 'utf8')) as {
  openapi: string;
  paths: Record<string, Record<string, Operation>>;
  components: { schemas: Record<string, object>; responses: Record<string, DescribedResponse> };
};

export interface Operation {
  operationId: string;
  summary: string;
  description: string;
  security: Record<string, string[]>[];
  parameters?: { name: string; in: string; required: boolean }[];
  requestBody?: { content: Record<string, { schema: object }> };
  responses: Record<string, DescribedResponse>;
}
interface DescribedResponse {
  $ref?: string;
  description?: string;
  content?: Record<string, { schema: object }>;
}

const ID = 'https://kitwright.test/openapi.json';
const ajv = new Ajv2020({ strict: false, allErrors: true, validateFormats: false });
ajv.addSchema({ ...DOCUMENT, $id: ID });
const validators = new Map<string, ValidateFunction>();

/** What is wrong with a value against the schema at a place of the document (a JSON pointer). */
function faults(pointer: string, value: unknown): string[] {
  const validate = validators.get(pointer) ?? ajv.compile({ $ref: `${ID}#${pointer}` });
  validators.set(pointer, validate);
  if (validate(value)) return [];
  return (validate.errors ?? []).slice(0, 5).map((one) => `${one.instancePath || '/'} ${one.message}`);
}

const step = (text: string) => `/${encodeURIComponent(text.replaceAll('~', '~0').replaceAll('/', '~1'))}`;

/** An address of the document for a route of the program. */
export const described = (address: string): string => address.replaceAll(/\[(\w+)\]/g, '{$1}');

/**
 * What in an answer is not as described: its status, its kind, its body; and where it was taken, what in the body that was
 * sent is not as described. Empty when all is.
 *
 * @param address with names in braces, as the document has it
 */
export function againstContract(
  { method, address }: { method: string; address: string },
  answer: { status: number; contentType: string; text: string },
  sent?: unknown,
): string[] {
  const name = method.toLowerCase();
  const operation = DOCUMENT.paths[address]?.[name];
  if (!operation) return [`${method} ${address} is not described`];
  const here = `/paths${step(address)}/${name}`;
  const response = operation.responses[answer.status];
  if (!response) return [`${method} ${address} answers ${answer.status}, which is not described`];
  const say = (all: string[]) => all.map((one) => `${method} ${address} ${answer.status}: ${one}`);
  const wrongBody =
    sent !== undefined && answer.status < 300 && operation.requestBody
      ? faults(`${here}/requestBody/content${step('application/json')}/schema`, sent).map(
          (one) => `sent: ${one}`,
        )
      : [];
  const [pointer, content] = response.$ref
    ? [response.$ref.slice(1), DOCUMENT.components.responses[response.$ref.split('/').at(-1) ?? '']?.content]
    : [`${here}/responses/${answer.status}`, response.content];
  if (!content) return say([...(answer.text === '' ? [] : ['it should be empty']), ...wrongBody]);
  const media = answer.contentType.split(';')[0] ?? '';
  if (!content[media]) return say([`its kind is ${media}`, ...wrongBody]);
  if (media === 'application/x-ndjson') return say(wrongBody);
  return say([...faults(`${pointer}/content${step(media)}/schema`, JSON.parse(answer.text)), ...wrongBody]);
}
