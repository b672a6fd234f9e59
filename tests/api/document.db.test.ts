import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Ajv2020 from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import { describedApi } from '@/app/_server/described-api';
import { ENDPOINTS } from '@/lib/people/access';
import { NEEDS_PRESENCE } from '@/lib/people/tokens';
import { clientTypes } from '@/scripts/api/client-types';
import { makeDocument } from '@/scripts/api/document';
import { CLIENT_TYPES_PLACE } from '@/scripts/api/place';
import { againstContract, DOCUMENT, described, type Operation } from './contract';
import { apiServer } from './server';

const OPERATIONS = Object.entries(DOCUMENT.paths).flatMap(([address, item]) =>
  Object.entries(item).map(([method, operation]) => ({
    key: `${method.toUpperCase()} ${address}`,
    operation,
  })),
);

test('it is a document of OpenAPI 3.1 by the schema of the OpenAPI Initiative', () => {
  // source: tests/published/openapi-3.1/source.json
  const schema = JSON.parse(
    readFileSync(join(process.cwd(), 'tests/published/openapi-3.1/schema.json'), 'utf8'),
  );
  const ajv = new Ajv2020({ strict: false, allErrors: true, validateFormats: false });
  const validate = ajv.compile(schema);
  expect([validate(DOCUMENT), validate.errors ?? null]).toEqual([true, null]);
  // and is refused where it is not one: the check can fail
  expect(validate({ ...DOCUMENT, openapi: '3.0.3' })).toBe(false);
  expect(validate({ ...DOCUMENT, paths: { sets: {} } })).toBe(false);
});

test('every schema in it is one of JSON Schema 2020-12, and every reference leads somewhere in it', () => {
  const wrong: string[] = [];
  const meta = new Ajv2020({ strict: false, validateFormats: false });
  const look = (value: unknown, way: string) => {
    if (value === null || typeof value !== 'object') return;
    for (const [name, inner] of Object.entries(value)) {
      if (name === '$ref' && typeof inner === 'string') {
        const found = inner
          .slice(2)
          .split('/')
          .reduce<unknown>((at, part) => (at as Record<string, unknown> | undefined)?.[part], DOCUMENT);
        if (!inner.startsWith('#/components/') || found === undefined) wrong.push(`${way}: ${inner}`);
      } else if (name === 'schema' && !meta.validateSchema(inner as object)) wrong.push(`${way}: no schema`);
      else look(inner, `${way}/${name}`);
    }
  };
  look(DOCUMENT, '');
  for (const [name, schema] of Object.entries(DOCUMENT.components.schemas))
    if (!meta.validateSchema(schema)) wrong.push(name);
  expect(wrong).toEqual([]);
});

test('every address of the API is described, and nothing that is none', () => {
  const declared = Object.keys(ENDPOINTS).filter((key) => key.includes(' /api/v1/') && !key.includes('[...'));
  expect(OPERATIONS.map(({ key }) => key).sort()).toEqual(declared.map(described).sort());
});

test('each says what it does and for whom, has a name of its own, and what it takes when it writes', () => {
  const ids = OPERATIONS.map(({ operation }) => operation.operationId);
  expect(new Set(ids).size).toBe(ids.length);
  for (const { key, operation } of OPERATIONS) {
    expect([key, operation.summary]).toEqual([key, expect.stringMatching(/^[A-Z“].{8,}[.:]$/s)]);
    const good = Object.keys(operation.responses).filter((status) => Number(status) < 300);
    expect([key, good.length]).toEqual([key, expect.toSatisfy((count: number) => count >= 1)]);
  }
});

test('what needs a person who is here says so, and is not said to be open to a token', () => {
  for (const [key, act] of Object.entries(ENDPOINTS)) {
    if (!key.includes(' /api/v1/') || key.includes('[...') || act === 'anybody') continue;
    const found = OPERATIONS.find((one) => one.key === described(key));
    const byToken = (found as { operation: Operation }).operation.security.some((way) => 'token' in way);
    expect([key, byToken]).toEqual([key, !(act in NEEDS_PRESENCE)]);
  }
});

test('it is the description of the routes as they are now', { timeout: 300_000 }, async () => {
  const now = JSON.parse(JSON.stringify(await makeDocument(process.cwd())));
  expect(now, 'run `npm run api:document`').toEqual(DOCUMENT);
});

test('the types of the client are those of the description', () => {
  const kept = readFileSync(join(process.cwd(), CLIENT_TYPES_PLACE), 'utf8');
  const now = clientTypes(DOCUMENT as unknown as Record<string, unknown>);
  expect(kept === now, 'run `npm run api:document`').toBe(true);
});

test('it is served as it is kept', async () => {
  const { send } = await apiServer();
  const answer = await send('GET', '/api/v1/openapi.json');
  expect(answer.status).toBe(200);
  expect(await answer.json()).toEqual(DOCUMENT);
  expect(describedApi().paths['/api/v1/tokens']).toBeDefined();
});

test('the check of answers finds what is not as described', () => {
  const asked = { method: 'GET', address: '/api/v1/people' };
  const good = { people: [{ id: 'person_x', name: 'X', role: 'Surgeon' }] };
  const given = (value: unknown, status = 200) =>
    againstContract(asked, { status, contentType: 'application/json', text: JSON.stringify(value) });
  expect(given(good)).toEqual([]);
  expect(given({})).toHaveLength(1);
  expect(given({ people: [{ id: 'person_x', name: 3, role: 'Surgeon' }] })).toHaveLength(1);
  expect(given(good, 299)).toHaveLength(1);
});
