import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { withPlan } from '@/app/_server/plan-again';
import { proofBody, prove } from '@/app/_server/prove';
import { rejectLoad } from '@/db/operations/loads/reject-load';
import { readLoadRequest, seen } from '../../at-load';

const members = z.strictObject({
  ...seen,
  reason: z.string().max(1000),
  setsGo: z.enum(['onBench', 'held']),
  proof: proofBody,
});

/** Rejects a load, and holds everything since the last accepted one. */
export const POST = endpoint('POST /api/v1/loads/[id]/reject', { body: members }, async (access) => {
  const read = await readLoadRequest(access, members);
  if (!read.ok) return read.response;
  const { reason, setsGo, proof } = read.body;
  const proven = await prove({ access, ...proof, meaning: 'iRejectThisLoad' });
  if (!proven.ok) return outcomeAnswer(proven);
  const outcome = await rejectLoad({
    ...read.asked,
    now: proven.value.at,
    reason,
    setsGo,
    attestation: proven.value,
  });
  return outcomeAnswer(await withPlan(access.db, access.person, 'reject-load', outcome));
});
