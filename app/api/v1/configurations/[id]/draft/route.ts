import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { beginConfigurationDraft } from '@/db/operations/begin-configuration-draft';
import { discardConfigurationDraft } from '@/db/operations/discard-configuration-draft';
import { configurationDraftEntry, saveConfigurationDraft } from '@/db/operations/save-configuration-draft';
import { configurationId, configurationVersionId } from '@/lib/identity/ids';

const named = {
  versionId: configurationVersionId,
  baseRevision: z.number('the revision you saw').int().positive(),
};
const saving = z.strictObject({ ...named, entry: z.unknown() });
const discarding = z.strictObject(named);

/** Begins the next version as a copy of the one in force. */
export const POST = endpoint('POST /api/v1/configurations/[id]/draft', async ({ db, person, params }) => {
  const id = configurationId.safeParse(params.id);
  if (!id.success) return noSuch('configuration');
  const request = { db, now: now(), newId, person, configurationId: id.data };
  return outcomeAnswer(await beginConfigurationDraft(request), 201);
});

/** Saves the whole draft over the revision it was read at. */
export const PUT = endpoint(
  'PUT /api/v1/configurations/[id]/draft',
  { body: saving.extend({ entry: configurationDraftEntry }) },
  async ({ db, person, request }) => {
    const body = await readBody(request, saving);
    if (!body.ok) return body.response;
    return outcomeAnswer(await saveConfigurationDraft({ db, now: now(), person, ...body.value }));
  },
);

/** Takes the draft away. */
export const DELETE = endpoint(
  'DELETE /api/v1/configurations/[id]/draft',
  { body: discarding },
  async ({ db, person, request }) => {
    const body = await readBody(request, discarding);
    if (!body.ok) return body.response;
    return outcomeAnswer(await discardConfigurationDraft({ db, now: now(), person, ...body.value }));
  },
);
