import { eq } from 'drizzle-orm';
import type { Queries } from '@/db/client';
import { takeStep } from '@/db/operations/turns/take-step';
import { loads, packs, sets } from '@/db/schema';
import type { CaseId, NewId, SetId } from '@/lib/identity/ids';
import type { TurnStep } from '@/lib/sets/setState';
import { insertLoad, insertPack, PEOPLE, USE_BY_OF_PACKS } from './smallHospital';

/** What packing and loads write, without their own rules: a way for a test to bring a set to a closed step. */
export type Closing = 'pack' | 'startLoad' | 'endLoad' | 'acceptLoad';

const CLOSED: Record<Closing, { from: TurnStep; to: TurnStep }> = {
  pack: { from: 'onBench', to: 'packed' },
  startLoad: { from: 'packed', to: 'inSteriliser' },
  endLoad: { from: 'inSteriliser', to: 'awaitingAcceptance' },
  acceptLoad: { from: 'awaitingAcceptance', to: 'inSterileStore' },
};

/** Takes a set one closed step on; answers whether it was where that is possible. */
export async function closeOn(
  write: Queries,
  {
    of,
    how,
    now,
    newId,
    forCase = null,
    useBy = USE_BY_OF_PACKS,
  }: {
    of: SetId;
    how: Closing;
    now: string;
    newId: NewId;
    forCase?: CaseId | null;
    useBy?: string | null;
  },
): Promise<boolean> {
  const [set] = await write.select().from(sets).where(eq(sets.id, of));
  const { from, to } = CLOSED[how];
  if (!set?.turnId || set.step !== from || set.withdrawnAt !== null) return false;
  let packId = set.packId;
  let change = {};
  if (how === 'pack') {
    packId = newId('pack');
    await insertPack(write, { id: packId, of, turnId: set.turnId, at: now, forCase });
    change = { packId };
  } else if (packId !== null && how === 'startLoad') {
    const id = newId('load');
    await insertLoad(write, id, now);
    await write.update(packs).set({ state: 'inLoad', loadId: id }).where(eq(packs.id, packId));
  } else if (packId !== null && how === 'endLoad') {
    await write.update(packs).set({ state: 'awaitingAcceptance' }).where(eq(packs.id, packId));
  } else if (packId !== null) {
    const [pack] = await write.select().from(packs).where(eq(packs.id, packId));
    const decided = { state: 'accepted', decidedBy: PEOPLE.decontaminationLead.id, decidedAt: now };
    await write
      .update(loads)
      .set(decided)
      .where(eq(loads.id, pack?.loadId ?? ''));
    await write.update(packs).set({ state: 'sterile', useBy }).where(eq(packs.id, packId));
    change = { useBy, readyAt: now };
  }
  const taken = await takeStep(write, {
    set,
    to,
    action: `test-${how}`,
    person: PEOPLE.technician,
    now,
    newId,
    change,
  });
  if (!taken.ok) throw new Error(taken.refusal.problems.map(({ message }) => message).join(' '));
  return true;
}
