import { z } from 'zod';
import { oneOf } from '@/app/api/v1/_reading/one';
import { traceReach } from '@/db/queries/trace/reached';
import { recallOf } from '@/lib/trace/recall';

const asked = {
  of: z.enum(['item', 'set', 'load']).describe('What is traced.'),
  id: z.string().max(80).describe('Its id.'),
};

/** What an item, a set or a load may have reached. */
export const GET = oneOf(
  'GET /api/v1/trace/reach',
  { what: 'thing to trace', query: asked },
  async ({ db, query }) => {
    const of = recallOf.safeParse({ kind: query.of, [`${query.of}Id`]: query.id });
    return of.success ? traceReach(db, of.data) : null;
  },
);
