import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { database } from '@/app/_server/database';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { actingPerson } from '@/app/_server/person';
import { beginConfigurationDraft } from '@/db/operations/begin-configuration-draft';
import { discardConfigurationDraft } from '@/db/operations/discard-configuration-draft';
import { saveConfigurationDraft } from '@/db/operations/save-configuration-draft';
import { configurationId, configurationVersionId } from '@/lib/identity/ids';

type Props = { params: Promise<{ id: string }> };

const named = {
  versionId: configurationVersionId,
  baseRevision: z.number('the revision you saw').int().positive(),
};
const saving = z.strictObject({ ...named, entry: z.unknown() });
const discarding = z.strictObject(named);

/** Begins the next version as a copy of the one in force. */
export async function POST(_request: Request, { params }: Props): Promise<Response> {
  const id = configurationId.safeParse((await params).id);
  if (!id.success) return noSuch('configuration');
  const person = await actingPerson();
  const request = { db: database(), now: now(), newId, person, configurationId: id.data };
  return outcomeAnswer(await beginConfigurationDraft(request), 201);
}

/** Saves the whole draft over the revision it was read at. */
export async function PUT(request: Request): Promise<Response> {
  const body = await readBody(request, saving);
  if (!body.ok) return body.response;
  const person = await actingPerson();
  return outcomeAnswer(await saveConfigurationDraft({ db: database(), now: now(), person, ...body.value }));
}

/** Takes the draft away. */
export async function DELETE(request: Request): Promise<Response> {
  const body = await readBody(request, discarding);
  if (!body.ok) return body.response;
  const person = await actingPerson();
  return outcomeAnswer(
    await discardConfigurationDraft({ db: database(), now: now(), person, ...body.value }),
  );
}
