const READS = new Set(['GET', 'HEAD', 'OPTIONS']);
const METHODS = new Set([...READS, 'POST', 'PUT', 'PATCH', 'DELETE']);

/** @param {string | undefined} method */
export const isKnownMethod = (method) => METHODS.has(method ?? '');

/**
 * Whether a request that may change something comes from a page of another site. A browser says where it comes from, in one
 * header or two; what says nothing is no browser, and brings only what it was given. Asked of every request before the
 * program sees it, besides what each handler asks.
 * @param {{ method?: string | undefined, headers: import('node:http').IncomingHttpHeaders }} request
 * @param {string | undefined} host the host it was addressed to
 */
export function isFromElsewhere({ method, headers }, host) {
  if (READS.has(method ?? '')) return false;
  const site = headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && site !== 'none') return true;
  const { origin } = headers;
  if (origin === undefined) return false;
  return !URL.canParse(origin) || host === undefined || new URL(origin).host !== host.toLowerCase();
}
