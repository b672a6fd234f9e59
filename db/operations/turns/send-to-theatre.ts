import { eq } from 'drizzle-orm';
import type { CaseId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { sendProblems } from '@/lib/turns/send';
import { turnWords as words } from '@/lib/wording/turns';
import { sendFacts } from '../../queries/turns/sendFacts';
import { cases } from '../../schema';
import { noteSent } from '../caseLife/note-set';
import { atSet, type SetNow, type SetRequest } from './at-set';
import { takeStep } from './take-step';

interface SendToTheatre extends SetRequest {
  caseId: CaseId;
}

/** Sends a set in the sterile store to theatre for one case; everything that keeps it here is said at once. */
export async function sendToTheatre(request: SendToTheatre): Promise<Outcome<{ revision: number }, SetNow>> {
  const { caseId, now } = request;
  const acting = {
    act: 'sendToTheatre',
    verb: 'send sets to theatre',
    isRepeat: ({ step }: { step: string }) => step === 'inTheatre',
  } as const;
  return atSet(request, acting, async (write, { set, doneAt }) => {
    if (set.withdrawnAt !== null) return refused('frozen', words.withdrawn(set.code));
    const [booked] = await write.select().from(cases).where(eq(cases.id, caseId));
    if (!booked) return refused('notFound', words.noSuchCase);
    const problems = sendProblems(await sendFacts(write, set, booked, now));
    if (problems.length > 0) return { ok: false, refusal: { because: 'frozen', problems, current: null } };
    const sent = await takeStep(write, {
      ...request,
      set,
      doneAt,
      to: 'inTheatre',
      action: 'send-to-theatre',
      change: { caseId },
      detail: { caseId, packId: set.packId },
    });
    if (sent.ok)
      await noteSent(write, {
        setId: set.id,
        caseId,
        packId: set.packId,
        placeId: set.placeId,
        personId: request.person.id,
        doneAt,
        now,
        newId: request.newId,
      });
    return sent;
  });
}
