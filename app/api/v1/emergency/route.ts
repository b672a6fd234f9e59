import { z } from 'zod';
import { takeAsShown } from '@/app/_server/emergency/take';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { openEmergencies } from '@/db/queries/emergency/record';
import { readAsked } from '@/lib/emergency/asked';

const members = z.strictObject({
  /** The answers, as they stand in the address. */
  asked: z.record(z.string().max(20), z.string().max(200)),
  /** What was shown that it takes from others. */
  shown: z.string().max(20_000),
});

/** Takes sets for an emergency; what it takes from others is planned anew in the same act. */
export const POST = endpoint('POST /api/v1/emergency', { body: members }, async ({ db, person, request }) => {
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  const { asked, shown } = body.value;
  return outcomeAnswer(await takeAsShown(db, person, readAsked(asked), shown), 201);
});

/** Emergencies with something left open. */
export const GET = listOf('GET /api/v1/emergency', {
  rows: ({ db }) => openEmergencies(db),
  keyOf: ({ recordedAt, caseId }) => [recordedAt, caseId],
  newestFirst: true,
});
