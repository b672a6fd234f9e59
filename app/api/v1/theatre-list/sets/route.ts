import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { setsInService } from '@/db/queries/theatre/theatreDay';

/** Every set in service as a choice: its code, and its kind beside it. */
export const GET = endpoint('GET /api/v1/theatre-list/sets', async ({ db }) =>
  jsonAnswer({
    sets: (await setsInService(db)).map(({ id, code, configuration }) => ({
      value: id,
      label: code,
      note: configuration,
    })),
  }),
);
