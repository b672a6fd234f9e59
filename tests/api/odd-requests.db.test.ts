import { describe, expect, test } from 'vitest';
import { lenders } from '@/db/schema';
import { tokenWords } from '@/lib/wording/tokens';
import { faultsOf } from '../published/fhir-r5/validate';
import { apiServer } from './server';

/** What no client of ours sends, and somebody’s will. */

describe('who asks', () => {
  test('by a token is let in by no cookie beside it, be it a token or not', async () => {
    const { send, asPerson } = await apiServer();
    const { headers } = await asPerson('person_edda-winslow');
    for (const Authorization of ['Bearer', 'Bearer ', 'Bearer one two', 'bearer nothing', 'Bearer\tx']) {
      const answer = await send('GET', '/api/v1/tokens', { headers: { ...headers, Authorization } });
      expect([Authorization, answer.status]).toEqual([Authorization, 401]);
      expect((await answer.json()) as object).toMatchObject({ detail: tokenWords.unknown });
    }
    // another scheme is for whatever stands in front of the server
    const basic = await send('GET', '/api/v1/tokens', {
      headers: { ...headers, Authorization: 'Basic YTpi' },
    });
    expect(basic.status).toBe(200);
  });

  test('and is not let in is told by which way it is asked for (RFC 9110, 11.6.1)', async () => {
    const { send } = await apiServer();
    for (const path of ['/api/v1/places', '/api/v1/fhir/Device']) {
      const nobody = await send('GET', path);
      expect([nobody.status, nobody.headers.get('www-authenticate')]).toEqual([401, 'Bearer']);
      const wrong = await send('GET', path, { token: 'kitwright_none' });
      expect(wrong.headers.get('www-authenticate')).toBe('Bearer error="invalid_token"');
    }
  });
});

test('a text that can’t be kept as it was sent is refused, and nothing is kept in its place', async () => {
  const { db, send, token } = await apiServer();
  const secret = await token('person_dilys-harrow', ['keepLenders']);
  const put = (body: string | Uint8Array<ArrayBuffer>) =>
    send('POST', '/api/v1/lenders', {
      token: secret,
      body,
      headers: { 'Content-Type': 'application/json' },
    });
  const before = await db.read.select().from(lenders);
  const notUtf8 = new Uint8Array([...new TextEncoder().encode('{"name":"x'), 0xff, 0xfe, 0x22, 0x7d]);
  const latin1 = Uint8Array.from(Buffer.from('{"name":"Łódź é"}', 'latin1'));
  for (const body of [
    notUtf8,
    latin1,
    '{"name":"\\ud800"}',
    '{"name":"\\uDC00\\uD800"}',
    '{"name":"Sound","note":"\\ud83d"}',
  ]) {
    const answer = await put(body);
    expect([String(body), answer.status, answer.headers.get('content-type')]).toEqual([
      String(body),
      400,
      'application/problem+json',
    ]);
  }
  expect(await db.read.select().from(lenders)).toEqual(before);
  // a pair, and a backslash that is one, are texts like others
  for (const name of ['A \u{1f9b4} lender', 'A \\ud800 lender'])
    expect((await put(JSON.stringify({ name }).replace('\u{1f9b4}', '\\ud83e\\uddb4'))).status).toBe(201);
  const names = (await db.read.select().from(lenders)).map(({ name }) => name);
  expect(names).toEqual(expect.arrayContaining(['A \u{1f9b4} lender', 'A \\ud800 lender']));
});

test('what the FHIR service has not is told as FHIR tells it', async () => {
  const { send, token } = await apiServer();
  const secret = await token('person_dilys-harrow', []);
  for (const path of ['', '/Device/set.ben-01/_history', '/Device/set.ben-01/$validate']) {
    const answer = await send('GET', `/api/v1/fhir${path}`, { token: secret });
    expect([path, answer.status, answer.headers.get('content-type')]).toEqual([
      path,
      404,
      'application/fhir+json; charset=utf-8',
    ]);
    const outcome = await answer.json();
    expect(outcome).toMatchObject({ resourceType: 'OperationOutcome', issue: [{ code: 'not-supported' }] });
    expect(faultsOf(outcome)).toEqual([]);
  }
  const beside = await send('GET', '/api/v1/fhirs');
  expect(beside.headers.get('content-type')).toBe('application/problem+json');
});
