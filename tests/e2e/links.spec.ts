import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from './harness';

/** Of the links from one kind of screen to another, this many are followed. */
const OF_A_KIND = 4;

/** The build's own list of its routes: screens, papers and the rest. */
function routes(): string[] {
  const folder = process.env.KITWRIGHT_DIST ?? '.next';
  const manifest = JSON.parse(
    readFileSync(join(process.cwd(), folder, 'app-path-routes-manifest.json'), 'utf8'),
  ) as Record<string, string>;
  return Object.values(manifest);
}

/** The route an address belongs to: of those that match, the one with the fewest places. */
function routeOf(address: string, all: readonly string[]): string {
  const parts = new URL(address, 'http://here').pathname.split('/');
  const matching = all.filter((route) => {
    const wanted = route.split('/');
    return (
      wanted.length === parts.length && wanted.every((part, at) => part.startsWith('[') || part === parts[at])
    );
  });
  const places = (route: string) => route.split('[').length;
  return matching.sort((a, b) => places(a) - places(b))[0] ?? `no route: ${address}`;
}

const UNESCAPED: Record<string, string> = { '&amp;': '&', '&#x27;': "'", '&quot;': '"' };

test('every kind of link leads to something, from every screen that can be reached', async ({ page }) => {
  // every kind of link of a program that grows
  test.setTimeout(240_000);
  const all = routes();
  const followed = new Map<string, number>();
  const known = new Set(['/']);
  const waiting = [{ address: '/', from: 'the start' }];
  const dead: string[] = [];
  for (let next = waiting.shift(); next; next = waiting.shift()) {
    const answer = await page.request.get(next.address);
    if (answer.status() === 404 || answer.status() >= 500)
      dead.push(`${next.address} on ${next.from}: ${answer.status()}`);
    if (!answer.ok() || !answer.headers()['content-type']?.includes('text/html')) continue;
    const here = routeOf(next.address, all);
    for (const [, href = ''] of (await answer.text()).matchAll(/<a [^>]*href="(\/[^"#]*)/g)) {
      const address = href.replace(/&(amp|#x27|quot);/g, (entity) => UNESCAPED[entity] ?? entity);
      const kind = `${here} to ${routeOf(address, all)}`;
      const times = followed.get(kind) ?? 0;
      if (known.has(address) || times >= OF_A_KIND) continue;
      known.add(address);
      followed.set(kind, times + 1);
      waiting.push({ address, from: next.address });
    }
  }
  expect(dead).toEqual([]);
  expect(known.size, 'addresses followed').toBeGreaterThan(100);
});
