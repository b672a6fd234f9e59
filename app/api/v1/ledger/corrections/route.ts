import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { correctRecord } from '@/db/operations/ledger/correct-record';
import { correctionRequest } from '@/lib/ledger/correction';

const body = z.strictObject({ ...correctionRequest.shape, proof: proofBody });

/** Corrects what an entry of the ledger says, by an entry of its own; the person proves who they are. */
export const POST = endpoint('POST /api/v1/ledger/corrections', { body: body }, async (access) => {
  const read = await readBody(access.request, body);
  if (!read.ok) return read.response;
  const { proof, ...request } = read.value;
  const proven = await prove({ access, who: 'me', secret: proof.secret, meaning: 'iCorrect' });
  if (!proven.ok) return outcomeAnswer(proven);
  const { db, person } = access;
  return outcomeAnswer(
    await correctRecord({ db, person, now: proven.value.at, attestation: proven.value, request }),
    201,
  );
});
