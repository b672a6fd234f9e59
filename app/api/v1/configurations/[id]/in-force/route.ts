import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { putConfigurationInForce } from '@/db/operations/put-configuration-in-force';
import { configurationVersionId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';

const members = z.strictObject({
  versionId: configurationVersionId,
  baseRevision: z.number('the revision you saw').int().positive(),
  from: plainDate,
  trialId: z.string().max(80),
  proof: proofBody,
});

/** Approves a draft, in force at once or from a day to come: by another person, who saw its trial and proves who they are. */
export const POST = endpoint(
  'POST /api/v1/configurations/[id]/in-force',
  { body: members },
  async (access) => {
    const body = await readBody(access.request, members);
    if (!body.ok) return body.response;
    const { proof, ...asked } = body.value;
    const proven = await prove({ access, ...proof, meaning: 'iApprove' });
    if (!proven.ok) return outcomeAnswer(proven);
    const { db, person } = access;
    const at = now();
    const today = wallClock(at).date;
    return outcomeAnswer(
      await putConfigurationInForce({ db, now: at, today, person, ...asked, attestation: proven.value }),
    );
  },
);
