import 'server-only';
import type { z } from 'zod';
import type { Refused } from '@/app/_server/answer';
import { problemResponse } from '@/app/_server/problem-response';
import { problemsFromZod } from '@/lib/identity/result';

/** What stands behind the `?`, as its schema has it; what is wrong is told with its name (400). */
export function queryOf<S extends z.ZodType>(
  schema: S,
  url: URL,
): { ok: true; value: z.output<S> } | { ok: false; response: Refused } {
  const parsed = schema.safeParse(Object.fromEntries(url.searchParams));
  if (parsed.success) return { ok: true, value: parsed.data };
  return {
    ok: false,
    response: problemResponse(400, 'This can’t be asked so', problemsFromZod(parsed.error)),
  };
}
