import type { IncomingMessage } from 'node:http';
import { expect, test } from 'vitest';
import { addressOf, personOf, takeOutClaims } from '../../../scripts/server/asker.mjs';
import { isFromElsewhere, isKnownMethod } from '../../../scripts/server/origin.mjs';

const HOST = 'kitwright.hospital.example:8443';

// what a browser sends: the Fetch standard, “Origin header”, and Fetch Metadata Request Headers, 2.3
test.each([
  ['a page of ours', { origin: `https://${HOST}`, 'sec-fetch-site': 'same-origin' }, false],
  ['a page of ours, in an old browser', { origin: `https://${HOST}` }, false],
  ['something typed or a bookmark', { 'sec-fetch-site': 'none' }, false],
  ['no browser at all', {}, false],
  ['another site', { origin: 'https://elsewhere.invalid' }, true],
  ['another site without an origin', { 'sec-fetch-site': 'cross-site' }, true],
  ['a sandboxed frame', { origin: 'null' }, true],
  ['another port', { origin: 'https://kitwright.hospital.example:8444' }, true],
  ['the usual port', { origin: 'https://kitwright.hospital.example' }, true],
  ['a sub-domain', { origin: `https://evil.${HOST}` }, true],
  ['a neighbour', { origin: 'https://other.hospital.example:8443', 'sec-fetch-site': 'same-site' }, true],
  ['a name that begins alike', { origin: 'https://kitwright.hospital.example.invalid:8443' }, true],
  ['a name before an at sign', { origin: `https://${HOST}@elsewhere.invalid` }, true],
  ['an empty origin', { origin: '' }, true],
  ['ours and theirs', { origin: `https://${HOST}`, 'sec-fetch-site': 'cross-site' }, true],
  ['a word nobody knows', { 'sec-fetch-site': 'same-origin, cross-site' }, true],
])('a write from %s', (_from, headers, refused) => {
  for (const method of ['POST', 'PUT', 'PATCH', 'DELETE'])
    expect(isFromElsewhere({ method, headers }, HOST)).toBe(refused);
  for (const method of ['GET', 'HEAD', 'OPTIONS'])
    expect(isFromElsewhere({ method, headers }, HOST)).toBe(false);
});

test('a write that says where it comes from, and not where it goes, is refused', () => {
  expect(isFromElsewhere({ method: 'POST', headers: { origin: 'https://x.example' } }, undefined)).toBe(true);
});

test('ways of asking that nothing here answers are known by not being on the list', () => {
  for (const method of ['TRACE', 'CONNECT', 'PROPFIND', 'get', '', undefined])
    expect(isKnownMethod(method)).toBe(false);
});

const asked = (headers: Record<string, string>, remoteAddress = '10.0.0.7') =>
  ({ headers, socket: { remoteAddress } }) as unknown as IncomingMessage;

test('what a sender claims of proxies is believed only where one stands in front', () => {
  const claims = { 'x-forwarded-for': '1.1.1.1, 2.2.2.2', 'x-forwarded-host': 'evil.invalid', host: HOST };
  const direct = asked({ ...claims, 'content-security-policy': "script-src 'nonce-MINE'" });
  takeOutClaims(direct, false);
  expect(direct.headers).toEqual({ host: HOST });
  expect(addressOf(direct, false)).toBe('10.0.0.7');
  const proxied = asked({ ...claims, 'content-security-policy': "script-src 'nonce-MINE'" });
  takeOutClaims(proxied, true);
  expect(proxied.headers).toEqual(claims);
  // the last is the one the proxy saw itself; those before it are what its client said
  expect(addressOf(proxied, true)).toBe('2.2.2.2');
  expect(addressOf(asked({}), true)).toBe('10.0.0.7');
});

test('a person is known by a digest, the same for the same secret, that does not tell it', () => {
  const one = personOf({ cookie: 'a=b; __Host-session=SECRET-OF-ONE; c=d' });
  expect(one).toBe(personOf({ cookie: '__Host-session=SECRET-OF-ONE' }));
  expect(one).not.toBe(personOf({ cookie: '__Host-session=SECRET-OF-TWO' }));
  expect(one).not.toContain('SECRET');
  expect(personOf({ authorization: 'Bearer SECRET-TOKEN' })).toMatch(/^[\w-]{22}$/);
  expect(personOf({ cookie: 'x__Host-session=NOT' })).toBeNull();
  expect(personOf({})).toBeNull();
});
