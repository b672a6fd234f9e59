import { createHash } from 'node:crypto';

/** Told by a server in front of this one, and by anybody else who likes to: believed only where one is said to be there. */
const FORWARDED = [
  'forwarded',
  'x-forwarded-for',
  'x-forwarded-host',
  'x-forwarded-proto',
  'x-forwarded-port',
  'x-real-ip',
];

/**
 * Takes out of a request what its sender may not say: where it was forwarded from, and the policy of its answer.
 * @param {import('node:http').IncomingMessage} request
 * @param {boolean} behindProxy
 */
export function takeOutClaims(request, behindProxy) {
  const { headers } = request;
  delete headers['content-security-policy'];
  delete headers['content-security-policy-report-only'];
  if (behindProxy) return;
  for (const name of FORWARDED) delete headers[name];
}

/**
 * The address a request came from: behind a server of ours the last it forwarded, which is the one it saw itself.
 * @param {import('node:http').IncomingMessage} request
 * @param {boolean} behindProxy
 */
export function addressOf(request, behindProxy) {
  const forwarded = behindProxy ? request.headers['x-forwarded-for'] : undefined;
  const last = String(forwarded ?? '')
    .split(',')
    .at(-1)
    ?.trim();
  return last || request.socket.remoteAddress || 'unknown';
}

/**
 * A name for whoever asks that is not their secret: a digest of the session's cookie or of the token; `null`: neither.
 * @param {import('node:http').IncomingHttpHeaders} headers
 */
export function personOf({ authorization, cookie }) {
  const session = /(?:^|;\s*)__Host-session=([^;]+)/.exec(cookie ?? '')?.[1];
  const secret = authorization ?? session;
  return secret ? createHash('sha256').update(secret).digest('base64url').slice(0, 22) : null;
}
