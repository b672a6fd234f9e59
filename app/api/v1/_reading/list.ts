import 'server-only';
import { z } from 'zod';
import type { Answer, Refused } from '@/app/_server/answer';
import { type Asked, endpoint, type Handler } from '@/app/_server/enter';
import { problemResponse } from '@/app/_server/problem-response';
import { type Key, type Page, rowsAfter } from '@/lib/api/page';
import type { Endpoint } from '@/lib/people/access';
import { apiWords } from '@/lib/wording/api';
import { readAnswer } from './answer';
import { cursorAt, placeOf, questionOf } from './cursor';
import { queryOf } from './query';

/** A page is this long unless another length is asked for; the longest keeps one answer from holding up everybody’s scans. */
const USUAL = 50;
const LONGEST = 200;

const paged = {
  limit: z.coerce
    .number('a whole number')
    .int('a whole number')
    .min(1, 'at least 1')
    .max(LONGEST, `at most ${LONGEST}`)
    .default(USUAL)
    .describe(`How many of them at most: 1 to ${LONGEST}, ${USUAL} when left out.`),
  cursor: z
    .string()
    .max(1000)
    .optional()
    .describe('The `next` of the page before, for the same list; the first page when left out.'),
};

export type ReadEndpoint = Extract<Endpoint, `GET /api/v1/${string}`>;
type Query<Q extends z.ZodRawShape> = z.output<z.ZodObject<Q>>;
export type ReadAsked<K, Q extends z.ZodRawShape> = Asked<K> & { query: Query<Q> };

/** Where a page begins, after which key, and how many rows of it are wanted. */
interface Place {
  after: Key | null;
  limit: number;
}

/**
 * A list, page by page, of which the store reads only what is asked for. `rows` gives those that follow `after`, at most `limit`
 * of them, in the order of their keys; `null` where there is no such list, `undefined` where there is no such place in it any
 * more. `query` is what may stand behind the `?` beside the page.
 */
export function pagesOf<K extends ReadEndpoint, T, Q extends z.ZodRawShape = Record<never, never>>(
  key: K,
  {
    query,
    rows,
    keyOf,
  }: {
    query?: Q;
    rows: (asked: ReadAsked<K, Q>, place: Place) => Promise<readonly T[] | null | undefined>;
    keyOf: (row: T) => Key;
  },
): Handler<K, Answer<Page<T>> | Refused> {
  // a narrowing that is passed over would answer another question
  const schema = z.strictObject({ ...query, ...paged });
  return endpoint(key, { query: schema }, async (asked) => {
    const url = new URL(asked.request.url);
    const parsed = queryOf(schema, url);
    if (!parsed.ok) return parsed.response;
    const { limit, cursor, ...rest } = parsed.value as { limit: number; cursor?: string };
    const question = questionOf(url);
    const after = cursor === undefined ? null : placeOf(question, cursor);
    if (cursor !== undefined && after === null) return noPlace();
    const found = await rows({ ...asked, query: rest as Query<Q> }, { after, limit: limit + 1 });
    if (found === undefined) return noPlace();
    if (found === null) return noList();
    const items = found.slice(0, limit);
    const last = items.at(-1);
    const next = found.length > limit && last !== undefined ? cursorAt(question, keyOf(last)) : null;
    return readAnswer<Page<T>>({ items, next }, next === null ? {} : { Link: linkTo(url, next) });
  });
}

/** A list of things the program looks through as a whole anyhow, page by page; `null` where there is no such list. */
export function listOf<K extends ReadEndpoint, T, Q extends z.ZodRawShape = Record<never, never>>(
  key: K,
  {
    query,
    rows,
    keyOf,
    newestFirst = false,
  }: {
    query?: Q;
    rows: (asked: ReadAsked<K, Q>) => Promise<readonly T[] | null>;
    keyOf: (row: T) => Key;
    newestFirst?: boolean;
  },
): Handler<K, Answer<Page<T>> | Refused> {
  return pagesOf<K, T, Q>(key, {
    ...(query === undefined ? {} : { query }),
    keyOf,
    rows: async (asked, place) => {
      const all = await rows(asked);
      return all && rowsAfter(all, { keyOf, newestFirst, ...place });
    },
  });
}

/** Where the next page is (RFC 8288), for clients that follow links. */
function linkTo(url: URL, next: string): string {
  const params = new URLSearchParams(url.searchParams);
  params.set('cursor', next);
  return `<${url.pathname}?${params}>; rel="next"`;
}

const noPlace = (): Refused =>
  problemResponse(400, 'Not a page of this list', [
    { path: ['cursor'], code: 'cursor', message: apiWords.cursor },
  ]);

const noList = (): Refused =>
  problemResponse(404, 'Not found', [{ path: [], code: 'not-found', message: apiWords.noList }]);
