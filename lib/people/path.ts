/** The header in which the proxy tells a page its own address, for the way back after signing in. */
export const PATH_HEADER = 'x-kitwright-path';

/** A way back that leads nowhere but into this program: an address of another host, or none, becomes the start page. */
export function wayBack(from: unknown): string {
  if (typeof from !== 'string' || !from.startsWith('/') || from.length > 2000) return '/';
  const home = 'http://home.invalid';
  if (!URL.canParse(from, home)) return '/';
  const url = new URL(from, home);
  if (url.origin !== home || url.pathname.startsWith('//') || url.pathname === '/sign-in') return '/';
  return url.pathname + url.search;
}
