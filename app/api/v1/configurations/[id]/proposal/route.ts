import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proposeVersion, versionProposal } from '@/db/operations/configurations/propose-version';
import { configurationId } from '@/lib/identity/ids';

/** Makes a draft of what the review of a configuration proposes. */
export const POST = endpoint(
  'POST /api/v1/configurations/[id]/proposal',
  { body: versionProposal },
  async ({ db, person, params, request }) => {
    const id = configurationId.safeParse(params.id);
    if (!id.success) return noSuch('configuration');
    const body = await readBody(request, z.unknown());
    if (!body.ok) return body.response;
    return outcomeAnswer(
      await proposeVersion({ db, now: now(), newId, person, configurationId: id.data, entry: body.value }),
      201,
    );
  },
);
