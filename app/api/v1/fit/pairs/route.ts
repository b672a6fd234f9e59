import { z } from 'zod';
import { listOf } from '@/app/api/v1/_reading/list';
import { today } from '@/app/fit/_parts/today';
import { keptCatalogue } from '@/db/queries/caseKit';
import { loadFitEngine } from '@/db/queries/fitRules';
import { questionsOf, sideOf, verdictsOf } from '@/lib/fit/pairFrom';

const asked = {
  a: z.string().max(80).describe('Code of an item, or bone, limb-left or limb-right.'),
  b: z.string().max(80).describe('The other thing, likewise.'),
  hole: z.string().max(20).optional().describe('One hole of the plate alone.'),
  use: z
    .string()
    .max(20)
    .optional()
    .describe('neutral-1, offset-2, lag-1, locked-2 and the like: purpose and cortices.'),
  position: z.string().max(20).optional().describe('Where the sleeve stands for drilling.'),
};

/** Every relation that could hold between two things, with its answer and every rule that governed it; none of such a pair is a 404. */
export const GET = listOf('GET /api/v1/fit/pairs', {
  query: asked,
  rows: async ({ db, query }) => {
    const [catalogue, engine] = await Promise.all([keptCatalogue(db), loadFitEngine(db, today())]);
    const questions = questionsOf(engine, [sideOf(query.a, catalogue), sideOf(query.b, catalogue)], query);
    return questions && verdictsOf(engine, questions);
  },
  keyOf: ({ number }) => [number],
});
