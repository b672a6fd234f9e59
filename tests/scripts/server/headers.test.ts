import { expect, test } from 'vitest';
import { answerHeaders, newNonce, pagePolicy } from '../../../scripts/server/headers.mjs';

const page = { path: '/sets', contentType: 'text/html; charset=utf-8', nonce: 'AAAA', tls: false };

/** A policy by directive (CSP level 3, 2.2.1: separated by semicolons, the name before its values). */
const directives = (policy: string) =>
  Object.fromEntries(
    policy.split(';').map((one) => {
      const [name = '', ...values] = one.trim().split(/\s+/);
      return [name, values.join(' ')];
    }),
  );

test('a page runs what carries its nonce and nothing else, and allows nothing unsafe', () => {
  const policy = pagePolicy('AAAA');
  // OWASP, Content Security Policy Cheat Sheet, “Strict CSP”, from memory: a nonce with strict-dynamic, no plugins, no base
  expect(directives(policy)).toEqual({
    'default-src': "'none'",
    'script-src': "'nonce-AAAA' 'strict-dynamic'",
    'style-src': "'self' 'nonce-AAAA'",
    'img-src': "'self'",
    'font-src': "'self'",
    'connect-src': "'self'",
    'worker-src': "'self'",
    'object-src': "'none'",
    'base-uri': "'none'",
    'form-action': "'self'",
    'frame-ancestors': "'none'",
  });
  expect(policy).not.toMatch(/unsafe|\*|https?:|data:|blob:/);
});

test.each(['application/json', 'application/pdf', 'text/css', 'text/x-component', 'text/calendar', ''])(
  'an answer of type “%s” is data, and may do nothing at all',
  (contentType) => {
    const headers = answerHeaders({ ...page, contentType });
    expect(directives(headers['Content-Security-Policy'] ?? '')).toEqual({
      'default-src': "'none'",
      'frame-ancestors': "'none'",
      'base-uri': "'none'",
      'form-action': "'none'",
    });
    expect(headers['Permissions-Policy']).toContain('camera=()');
  },
);

test('the reader of symbols alone may compile wasm, and is no page', () => {
  const reader = answerHeaders({ ...page, path: '/scan/reader.js', contentType: 'text/javascript' });
  expect(reader['Content-Security-Policy']).toContain("script-src 'wasm-unsafe-eval'");
  const asPage = answerHeaders({ ...page, path: '/scan/reader.js' });
  expect(asPage['Content-Security-Policy']).not.toContain('unsafe');
});

test('browsers are told to come by https for good only where they do', () => {
  expect(answerHeaders(page)).not.toHaveProperty('Strict-Transport-Security');
  expect(answerHeaders({ ...page, tls: true })['Strict-Transport-Security']).toBe(
    'max-age=31536000; includeSubDomains',
  );
  expect(answerHeaders(page)['Permissions-Policy']).toContain('camera=(self)');
});

test('no nonce is like another, and each has 128 bits', () => {
  const drawn = Array.from({ length: 1000 }, newNonce);
  expect(new Set(drawn).size).toBe(1000);
  for (const nonce of drawn) expect(Buffer.from(nonce, 'base64')).toHaveLength(16);
});
