import 'server-only';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** An operation of the API, as far as a page shows it. */
export interface DescribedOperation {
  operationId: string;
  tags: string[];
  summary: string;
  description: string;
  security: Record<string, unknown>[];
  parameters?: { name: string; in: string; required: boolean; description?: string }[];
  requestBody?: { content: Record<string, { schema: object }> };
  responses: Record<
    string,
    { $ref?: string; description?: string; content?: Record<string, { schema: object }> }
  >;
}

/** The description of the API: made by `npm run api:document`, and compared with the routes by a test. */
export interface DescribedApi {
  openapi: string;
  info: { title: string; version: string; description: string };
  tags: { name: string }[];
  paths: Record<string, Record<string, DescribedOperation>>;
  components: { schemas: Record<string, object> };
}

export function describedApi(): DescribedApi {
  kept ??= JSON.parse(readFileSync(join(process.cwd(), 'app/api-docs/openapi.json'), 'utf8')) as DescribedApi;
  return kept;
}

/** The operation that an address of the program is described as. */
export function describedOperation(key: string): DescribedOperation | undefined {
  const [method = '', address = ''] = key.split(' ');
  return describedApi().paths[address.replaceAll(/\[(\w+)\]/g, '{$1}')]?.[method.toLowerCase()];
}

let kept: DescribedApi | null = null;
