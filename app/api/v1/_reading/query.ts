import 'server-only';
import type { z } from 'zod';
import type { Refused } from '@/app/_server/answer';
import { problemResponse } from '@/app/_server/problem-response';
import { problemsFromZod } from '@/lib/identity/result';
import { apiWords } from '@/lib/wording/api';

/**
 * What stands behind the `?`, as its schema has it; what is wrong is told with its name (400), and so is what stands there twice:
 * which of the two is meant, nobody knows.
 */
export function queryOf<S extends z.ZodObject>(
  schema: S,
  url: URL,
): { ok: true; value: z.output<S> } | { ok: false; response: Refused } {
  const names = [...url.searchParams.keys()].filter((name) => name in schema.shape);
  const twice = names.filter((name, at) => names.indexOf(name) !== at);
  const parsed = schema.safeParse(Object.fromEntries(url.searchParams));
  if (parsed.success && twice.length === 0) return { ok: true, value: parsed.data };
  const problems = [
    ...[...new Set(twice)].map((name) => ({ path: [name], code: 'twice', message: apiWords.twice(name) })),
    ...(parsed.success ? [] : problemsFromZod(parsed.error)),
  ];
  return { ok: false, response: problemResponse(400, 'This can’t be asked so', problems) };
}
