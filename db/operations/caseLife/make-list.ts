import type { WantedLine } from '@/lib/caseLife/list';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { pickWords as words } from '@/lib/wording/case-life';
import { appendLedger } from '../../ledger';
import { caseLives } from '../../schema';
import { atKit, BACK_TO_PICKING, changeLife, confirmedVersion, type KitStepRequest } from './at-kit';

interface MakeList extends KitStepRequest {
  /** What there is to fetch, worked out before the write from the plan of this version. */
  list: readonly WantedLine[];
  planVersion: number;
}

/**
 * Keeps what there is to fetch for a case, so that everybody picks by the same list. Made anew it leaves what is picked
 * where it is: what it no longer asks for is then to be put back, and the kit is checked again.
 */
export async function makeList(request: MakeList): Promise<Outcome<{ revision: number }, never>> {
  const { now, person, list, planVersion } = request;
  const acting = {
    act: 'pickKit',
    verb: 'work out what is to be picked',
    step: 'makeList',
    isRepeat: (life: { listMadeBy: string | null; planVersion: number; pickedAt: string | null }) =>
      life.listMadeBy === person.id && life.planVersion === planVersion && life.pickedAt === null,
  } as const;
  return atKit(request, acting, async (write, { booked, life }) => {
    const version = await confirmedVersion(write, booked.id);
    if (version === null) return refused('frozen', words.noPlan(booked.reference));
    if (version !== planVersion)
      return refused('conflict', words.planChanged(booked.reference, planVersion, version));
    const made = { planVersion, list, listMadeBy: person.id, listMadeAt: now };
    let revision = 1;
    if (life) revision = await changeLife(write, life, { ...made, ...BACK_TO_PICKING });
    else await write.insert(caseLives).values({ caseId: booked.id, ...made, revision });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'make-pick-list',
      subjectKind: 'case',
      subjectId: booked.id,
      detail: { planVersion, list, again: life !== null, revision },
    });
    return { ok: true, value: { revision } };
  });
}
