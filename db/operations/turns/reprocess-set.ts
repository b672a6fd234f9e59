import { eq } from 'drizzle-orm';
import type { Outcome } from '@/lib/identity/refusal';
import { sets } from '../../schema';
import { atSet, type SetNow, type SetRequest } from './at-set';
import { endPack, UNPACKED } from './end-pack';
import { takeStep } from './take-step';

interface ReprocessSet extends SetRequest {
  reason: string;
}

/** Sends a packed or sterile set round again: its wrap is opened on the bench, and it goes to washing. */
export async function reprocessSet(request: ReprocessSet): Promise<Outcome<{ revision: number }, SetNow>> {
  const reason = request.reason.trim();
  const acting = {
    act: 'washSet',
    verb: 'reprocess sets',
    text: { name: 'reason', value: reason, needed: true },
    isRepeat: () => false,
  } as const;
  return atSet(request, acting, async (write, { set, doneAt }) => {
    const step = { ...request, doneAt, action: 'reprocess-set', note: reason, detail: { reason } };
    if (set.step === 'onBench') return takeStep(write, { ...step, set, to: 'washing' });
    const opened = await takeStep(write, { ...step, set, to: 'onBench', change: UNPACKED });
    if (!opened.ok) return opened;
    await endPack(write, set.packId);
    const [open] = await write.select().from(sets).where(eq(sets.id, set.id));
    if (!open) throw new Error(`${set.id} vanished inside a write`);
    const washing = await takeStep(write, { ...step, set: open, to: 'washing' });
    if (!washing.ok) throw new Error('a set on the bench can always be washed');
    return washing;
  });
}
