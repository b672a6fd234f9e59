import { randomBytes } from 'node:crypto';

/** What no answer that is not a page may do: it is data, and nothing in it is ever run, framed or sent on. */
const DATA_POLICY = "default-src 'none'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'";

/**
 * The reader of symbols compiles wasm, which a policy allows by a word of its own. It runs in a worker, which has the policy
 * it is served with and neither page nor storage: so no page has to allow it.
 */
const READER_POLICY = `${DATA_POLICY}; script-src 'wasm-unsafe-eval'; connect-src 'self'`;
const READER = '/scan/reader.js';

/** Drawn for each request, so that no script of somebody else can know it: 128 bits (CSP level 3, 2.3.1). */
export const newNonce = () => randomBytes(16).toString('base64');

/**
 * What a page may do. Scripts run that carry the nonce of this very answer, and what those load; styles come from files of
 * ours, or from a script with the nonce; everything else of ours alone, frames and plugins not at all.
 * @param {string} nonce
 */
export function pagePolicy(nonce) {
  return [
    "default-src 'none'",
    `script-src 'nonce-${nonce}' 'strict-dynamic'`,
    `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self'",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ');
}

/** Powers of the browser that nothing here needs; the camera is for pages, one of which reads symbols with it. */
const POWERS = ['accelerometer', 'display-capture', 'geolocation', 'gyroscope', 'magnetometer', 'microphone']
  .concat(['midi', 'payment', 'publickey-credentials-get', 'screen-wake-lock', 'serial', 'usb'])
  .map((power) => `${power}=()`);

const A_YEAR_SECONDS = 31_536_000;

/**
 * The headers of an answer, whatever made it: page, data, paper, file, refusal or fault.
 * @param {{ path: string, contentType: string, nonce: string, tls: boolean }} answer `tls`: browsers come by https
 * @returns {Record<string, string>}
 */
export function answerHeaders({ path, contentType, nonce, tls }) {
  const isPage = /^text\/html\b/i.test(contentType);
  const policy = isPage ? pagePolicy(nonce) : path === READER ? READER_POLICY : DATA_POLICY;
  return {
    'Content-Security-Policy': policy,
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'same-origin',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Resource-Policy': 'same-origin',
    'Permissions-Policy': [`camera=${isPage ? '(self)' : '()'}`, ...POWERS].join(', '),
    ...(tls ? { 'Strict-Transport-Security': `max-age=${A_YEAR_SECONDS}; includeSubDomains` } : {}),
  };
}
