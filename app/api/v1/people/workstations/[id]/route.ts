import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer } from '@/app/_server/outcome-answer';
import { withdrawWorkstation } from '@/db/operations/people/withdraw-workstation';
import { workstationId } from '@/lib/identity/ids';

/** Withdraws a workstation, wherever it stands. */
export const POST = endpoint('POST /api/v1/people/workstations/[id]', async ({ db, person, params }) => {
  const id = workstationId.safeParse(params.id);
  if (!id.success) return noSuch('workstation');
  return outcomeAnswer(await withdrawWorkstation({ db, now: now(), person, workstationId: id.data }));
});
