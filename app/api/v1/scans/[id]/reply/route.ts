import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { replyToScan, scanReply } from '@/db/operations/scans/reply-to-scan';

/** Keeps what a person said when asked: another one, or the same again. */
export const POST = endpoint(
  'POST /api/v1/scans/[id]/reply',
  { body: scanReply },
  async ({ db, person, request, params }) => {
    const body = await readBody(request, scanReply);
    if (!body.ok) return body.response;
    return outcomeAnswer(
      await replyToScan({ db, now: now(), person, scan: params.id ?? '', reply: body.value }),
    );
  },
);
