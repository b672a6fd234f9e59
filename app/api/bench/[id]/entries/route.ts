import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { enteredBy, sessionMark } from '@/app/_server/entered-by';
import { jsonAnswer } from '@/app/_server/json-answer';
import { noSuch, readBody } from '@/app/_server/outcome-answer';
import { recordEntry } from '@/db/operations/bench/record-entry';
import type { Delivered } from '@/lib/bench/outbox';
import { countId } from '@/lib/identity/ids';
import { benchWords as words } from '@/lib/wording/bench';

const sent = z.looseObject({ id: z.string().max(80), doneAt: z.string().max(40) });
const members = z.strictObject({
  entries: z
    .array(z.strictObject({ entry: sent, session: sessionMark }))
    .min(1)
    .max(50),
});

/** Makes entries durable, in order, and answers for each: the answer to one sent before is what it was then. */
export const POST = endpoint('POST /api/bench/[id]/entries', async ({ db, request, params }) => {
  const id = countId.safeParse(params.id);
  if (!id.success) return noSuch('count');
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  const delivered: Delivered[] = [];
  for (const { entry, session } of body.value.entries) {
    const by = await enteredBy({ db }, session, entry.doneAt);
    if (!by) {
      const sentence = words.unknownSession;
      delivered.push({ id: entry.id, ok: false, because: 'notPermitted', sentence });
      continue;
    }
    const done = await recordEntry({ db, now: now(), ...by, countId: id.data, entry });
    delivered.push(
      done.ok
        ? { id: entry.id, ok: true, enteredAt: done.value.enteredAt }
        : {
            id: entry.id,
            ok: false,
            because: done.refusal.because,
            sentence: done.refusal.problems.map(({ message }) => message).join(' '),
          },
    );
  }
  return jsonAnswer({ delivered });
});
