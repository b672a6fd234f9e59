import 'server-only';
import { createHash } from 'node:crypto';
import { z } from 'zod';
import type { Key } from '@/lib/api/page';

const kept = z.tuple([z.string()], z.union([z.string(), z.number()]));

/** What a list is asked for, without the page of it: a cursor leads on in the very same list. */
export function questionOf(url: URL): string {
  const params = [...url.searchParams].filter(([name]) => name !== 'cursor' && name !== 'limit').sort();
  return createHash('sha256')
    .update(JSON.stringify([url.pathname, params]))
    .digest('base64url')
    .slice(0, 8);
}

/** A place in a list as text that says nothing to whoever holds it. */
export const cursorAt = (question: string, key: Key): string =>
  Buffer.from(JSON.stringify([question, ...key])).toString('base64url');

/** The place a cursor names in this list, or `null` where it is none of this list's. */
export function placeOf(question: string, cursor: string): Key | null {
  try {
    const [mark, ...key] = kept.parse(JSON.parse(Buffer.from(cursor, 'base64url').toString()));
    return mark === question && key.length > 0 ? key : null;
  } catch {
    return null;
  }
}
