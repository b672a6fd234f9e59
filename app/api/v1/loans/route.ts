import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { askForLoan } from '@/db/operations/loans/ask-for-loan';
import { loanBoard } from '@/db/queries/loans/loanBoard';
import { loanRequest } from '@/lib/loans/entries';

/** Asks a lender for a loan; the operation parses it, so that every fault comes from one place. */
export const POST = endpoint('POST /api/v1/loans', { body: loanRequest }, async ({ db, person, request }) => {
  const body = await readBody(request, z.looseObject({}));
  if (!body.ok) return body.response;
  return outcomeAnswer(await askForLoan({ db, now: now(), newId, person, entry: body.value }), 201);
});

/** Loans, the newest first, each with what has to be done next. */
export const GET = listOf('GET /api/v1/loans', {
  rows: ({ db }) => loanBoard(db, now()),
  keyOf: ({ number, id }) => [number, id],
  newestFirst: true,
});
