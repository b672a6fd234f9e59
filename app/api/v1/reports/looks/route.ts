import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { markDaySeen } from '@/db/operations/theatre/mark-day-seen';
import { plainDate } from '@/lib/quantities/plainDate';
import { dayView, seenDay } from '@/lib/theatre/report/seen';

const members = z.strictObject({
  view: dayView,
  day: plainDate,
  shownAt: z.iso.datetime({ precision: 3 }),
  ledgerSeq: z.number().int().nonnegative(),
  seen: seenDay,
});

/** Keeps that its sender has seen a day as it was shown to them. */
export const POST = endpoint(
  'POST /api/v1/reports/looks',
  { body: members },
  async ({ db, person, request }) => {
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(await markDaySeen({ db, now: now(), person, ...body.value }));
  },
);
