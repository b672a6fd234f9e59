import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { actOnFit, fitStep } from '@/app/_server/fit/act-on-fit';
import { noSuch, readBody } from '@/app/_server/outcome-answer';
import { resultAnswer } from '@/app/_server/result-answer';
import { exceptionId } from '@/lib/identity/ids';

const members = z.strictObject({ asked: fitStep });

/** Approves, discards or keeps an exception from the fit rules, asks for its withdrawal, or agrees to that. */
export const POST = endpoint('POST /api/v1/fit/exceptions/[id]/acts', { body: members }, async (access) => {
  const id = exceptionId.safeParse(access.params.id);
  if (!id.success) return noSuch('exception');
  const body = await readBody(access.request, members);
  if (!body.ok) return body.response;
  return resultAnswer(await actOnFit(access, 'exception', id.data, body.value.asked));
});
