import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { askForLoan } from '@/db/operations/loans/ask-for-loan';
import { loanRequest } from '@/lib/loans/entries';

/** Asks a lender for a loan; the operation parses it, so that every fault comes from one place. */
export const POST = endpoint('POST /api/v1/loans', { body: loanRequest }, async ({ db, person, request }) => {
  const body = await readBody(request, z.looseObject({}));
  if (!body.ok) return body.response;
  return outcomeAnswer(await askForLoan({ db, now: now(), newId, person, entry: body.value }), 201);
});
