import { eq } from 'drizzle-orm';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { type Attestation, attests } from '@/lib/people/attestation';
import { type TurnStep, turnStep } from '@/lib/sets/setState';
import { SEALED_STEPS, stepsAfterHolds } from '@/lib/turns/steps';
import { turnWords as words } from '@/lib/wording/turns';
import type { Queries } from '../../client';
import { biologicalWaitedFor } from '../../queries/loads/implantsWait';
import { heldReasons } from '../../queries/turns/heldReasons';
import { loads, packs } from '../../schema';
import { atSet, type SetNow, type SetRequest } from './at-set';
import { endPack, UNPACKED } from './end-pack';
import { type SetRow, takeStep } from './take-step';
import { tellPerson } from './tell-person';

interface LiftHold extends SetRequest {
  to: TurnStep;
  reason: string;
  /** That this person proved who they are and said `iLiftThisHold`. */
  attestation: Attestation;
}

/**
 * Lifts the hold of a set, for a reason, by somebody who may: to where every reason it was held for lets it go. Its pack
 * is kept where it goes back to where it was, and ended where it is opened. Nothing here makes it sterile, and implants
 * that wait for the biological result of their load go nowhere closed before it has passed.
 */
export async function liftHold(request: LiftHold): Promise<Outcome<{ revision: number }, SetNow>> {
  const { to, person, now, newId, attestation } = request;
  const reason = request.reason.trim();
  const acting = {
    act: 'liftHold',
    verb: 'lift holds',
    text: { name: 'reason', value: reason, needed: true },
    isRepeat: ({ step, fromStep }: { step: string; fromStep: string | null }) =>
      fromStep === 'held' && step === to,
  } as const;
  if (!attests(attestation, person.id, 'iLiftThisHold', now))
    return refused('notPermitted', words.proveFirst);
  return atSet(request, acting, async (write, { set, doneAt }) => {
    if (!attests(attestation, person.id, 'iLiftThisHold', now))
      return refused('notPermitted', words.proveFirst);
    if (set.step !== 'held') return refused('frozen', words.notHeld(set.code));
    const reasons = await heldReasons(write, set.id);
    const after = stepsAfterHolds(
      reasons.map(({ because }) => because),
      set.heldFrom === null ? null : turnStep.parse(set.heldFrom),
    );
    if (!after.includes(to)) return refused('frozen', words.notAfterThisHold(set.code, to, after));
    const sealed = SEALED_STEPS.has(to);
    if (sealed && !(await packFits(write, set, to)))
      return refused('frozen', words.packDoesNotFit(set.code, to));
    const waitsFor = sealed && set.packId !== null ? await biologicalWaitedFor(write, set.packId) : null;
    if (waitsFor !== null) return refused('frozen', words.waitsForBiological(set.code, waitsFor));
    const { meaning, method, at } = attestation;
    const taken = await takeStep(write, {
      ...request,
      set,
      doneAt,
      to,
      action: 'lift-hold',
      liftsHold: true,
      note: reason,
      change: sealed ? {} : UNPACKED,
      detail: {
        reason,
        held: reasons.map(({ because, note }) => ({ because, note })),
        attested: { meaning, method, at },
      },
    });
    if (!taken.ok) return taken;
    if (!sealed) await endPack(write, set.packId);
    const holders = new Set(reasons.flatMap(({ personId }) => personId ?? []));
    holders.delete(person.id);
    for (const personId of holders)
      await tellPerson(write, {
        personId,
        kind: 'holdLifted',
        detail: { setCode: set.code, to, reason, by: person.name },
        href: `/sets/${set.id}`,
        now,
        newId,
      });
    return taken;
  });
}

/** The pack's own state for each step in which the wrap is closed. */
const PACK_STATE: Partial<Record<TurnStep, readonly string[]>> = {
  packed: ['closed', 'inLoad'],
  awaitingAcceptance: ['awaitingAcceptance'],
  inSterileStore: ['sterile'],
};

/** Whether the set's pack is as the step needs it; sterile only in a load that is accepted. */
async function packFits(write: Queries, set: SetRow, to: TurnStep): Promise<boolean> {
  if (set.packId === null) return false;
  const [row] = await write
    .select({ state: packs.state, load: loads.state })
    .from(packs)
    .leftJoin(loads, eq(loads.id, packs.loadId))
    .where(eq(packs.id, set.packId));
  if (!row || !PACK_STATE[to]?.includes(row.state)) return false;
  return to !== 'inSterileStore' || row.load === 'accepted';
}
