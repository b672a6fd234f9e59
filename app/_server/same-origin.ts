import 'server-only';

/**
 * Whether a write comes from a page of our own. Beside SameSite cookies: a browser says where a write comes from, and one
 * from elsewhere is refused. What is no browser (it sends neither header) carries no cookie it was not given.
 */
export function isFromHere(headers: Headers): boolean {
  const site = headers.get('sec-fetch-site');
  if (site !== null && site !== 'same-origin' && site !== 'none') return false;
  const origin = headers.get('origin');
  if (origin === null) return true;
  const host = headers.get('x-forwarded-host') ?? headers.get('host');
  return URL.canParse(origin) && new URL(origin).host === host;
}
