import { and, eq } from 'drizzle-orm';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { loanWords } from '@/lib/wording/loan-acts';
import { turnWords as words } from '@/lib/wording/turns';
import { appendLedger } from '../../ledger';
import { sets } from '../../schema';
import { wentBack } from '../loans/loan-bar';
import { atSet, type SetNow, type SetRequest } from './at-set';
import { endPack, UNPACKED } from './end-pack';
import { takeStep } from './take-step';

interface BringBackSet extends Omit<SetRequest, 'doneAt'> {
  reason: string;
}

/**
 * Brings a set back into service. A sterile one is opened on the bench: nobody held or recalled it while it was out of
 * service, so its sterility is not taken on trust.
 */
export async function bringBackSet(request: BringBackSet): Promise<Outcome<{ revision: number }, SetNow>> {
  const { person, now } = request;
  const reason = request.reason.trim();
  const acting = {
    act: 'withdrawSet',
    verb: 'bring sets back into service',
    text: { name: 'reason', value: reason, needed: true },
    isRepeat: () => false,
  } as const;
  return atSet(request, acting, async (write, { set }) => {
    if (set.withdrawnAt === null) return refused('frozen', words.inService(set.code));
    if (await wentBack(write, set.id)) return refused('frozen', loanWords.loanGoneBack(set.code));
    const revision = set.revision + 1;
    await write
      .update(sets)
      .set({ withdrawnAt: null, withdrawnBecause: null, revision })
      .where(and(eq(sets.id, set.id), eq(sets.revision, set.revision)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'bring-back-set',
      subjectKind: 'set',
      subjectId: set.id,
      detail: { reason, was: set.withdrawnBecause, revision },
    });
    if (set.step !== 'inSterileStore') return { ok: true, value: { revision } };
    const back = { ...set, withdrawnAt: null, withdrawnBecause: null, revision };
    const opened = await takeStep(write, {
      ...request,
      set: back,
      to: 'onBench',
      action: 'open-set',
      note: reason,
      change: UNPACKED,
    });
    if (!opened.ok) throw new Error('a set in the sterile store can always be opened');
    await endPack(write, set.packId);
    return opened;
  });
}
