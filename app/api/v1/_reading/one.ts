import 'server-only';
import { z } from 'zod';
import type { Answer, Refused } from '@/app/_server/answer';
import { endpoint, type Handler } from '@/app/_server/enter';
import { noSuch } from '@/app/_server/outcome-answer';
import { readAnswer } from './answer';
import type { ReadAsked, ReadEndpoint } from './list';
import { queryOf } from './query';

interface OneAbout<Q extends z.ZodRawShape> {
  /** What there is none of, where there is none: `There is no such set.` */
  what: string;
  query?: Q;
}

/**
 * A single thing as its screen shows it, or that there is none. One with a `revision` (or a `version`) has it as its ETag, to be
 * sent back as `If-Match` with what is written.
 */
export function oneOf<
  K extends ReadEndpoint,
  T extends object,
  Q extends z.ZodRawShape = Record<never, never>,
>(
  key: K,
  { what, query }: OneAbout<Q>,
  find: (asked: ReadAsked<K, Q>) => Promise<T | null>,
): Handler<K, Answer<T> | Refused> {
  const schema = query === undefined ? z.object({}) : z.strictObject(query);
  return endpoint(key, query === undefined ? {} : { query: schema }, async (asked) => {
    const parsed = queryOf(schema, new URL(asked.request.url));
    if (!parsed.ok) return parsed.response;
    const found = await find({ ...asked, query: parsed.value as ReadAsked<K, Q>['query'] });
    if (found === null) return noSuch(what);
    const { revision, version } = found as { revision?: unknown; version?: unknown };
    const seen = revision ?? version;
    return readAnswer<T>(found, typeof seen === 'number' ? { ETag: `"${seen}"` } : {});
  });
}
