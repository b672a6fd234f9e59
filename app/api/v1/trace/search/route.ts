import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { oneOf } from '@/app/api/v1/_reading/one';
import { findForTrace } from '@/db/queries/trace/find';

const asked = {
  q: z.string().max(400).describe('A code, a lot, a set, a load, a case, or the name of an item.'),
};

/** What a scanned or typed text names that can be traced. */
export const GET = oneOf('GET /api/v1/trace/search', { what: 'text', query: asked }, ({ db, query }) =>
  findForTrace(db, query.q, now()),
);
