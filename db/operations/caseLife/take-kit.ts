import type { Outcome } from '@/lib/identity/refusal';
import { appendLedger } from '../../ledger';
import { atKit, changeLife, type KitStepRequest } from './at-kit';

/** Says that the kit has arrived in theatre and is taken over there. */
export async function takeKit(request: KitStepRequest): Promise<Outcome<{ revision: number }, never>> {
  const { now, person } = request;
  const acting = {
    act: 'takeKit',
    verb: 'take kits over',
    step: 'take',
    isRepeat: (life: { takenBy: string | null }) => life.takenBy === person.id,
  } as const;
  return atKit(request, acting, async (write, { booked, life }) => {
    if (!life) throw new Error(`the kit of ${booked.id} is issued and has no life`);
    const revision = await changeLife(write, life, { takenBy: person.id, takenAt: now });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'take-kit',
      subjectKind: 'case',
      subjectId: booked.id,
      detail: { issuedBy: life.issuedBy, revision },
    });
    return { ok: true, value: { revision } };
  });
}
