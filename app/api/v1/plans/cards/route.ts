import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { saveCard } from '@/db/operations/cards/save-card';
import { listCards } from '@/db/queries/cards/cards';
import { cardBody } from '@/lib/plans/card';

const members = z.strictObject({ procedureId: z.string().max(100), card: z.unknown() });

/** Makes a surgeon's own preference card; the operation parses what it says. */
export const POST = endpoint(
  'POST /api/v1/plans/cards',
  { body: members.extend({ card: cardBody }) },
  async ({ db, person, request }) => {
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(await saveCard({ db, now: now(), newId, person, ...body.value }), 201);
  },
);

/** Every preference card, retired ones too. */
export const GET = listOf('GET /api/v1/plans/cards', {
  rows: ({ db }) => listCards(db),
  keyOf: ({ id }) => [id],
});
