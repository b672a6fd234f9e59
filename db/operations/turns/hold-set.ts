import { and, eq, gt } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import type { HeldBecause } from '@/lib/sets/setState';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { cases, setPromises, sets, turnSteps } from '../../schema';
import { atSet, type SetNow, type SetRequest } from './at-set';
import { type SetRow, takeStep } from './take-step';
import { tellPerson } from './tell-person';

interface HoldSet extends SetRequest {
  because: HeldBecause;
  note: string;
}

/** Holds a set, at whatever step it is, with the reason and what was seen. */
export async function holdSet(request: HoldSet): Promise<Outcome<{ revision: number }, SetNow>> {
  const { because, note } = request;
  const acting = {
    act: 'holdSet',
    verb: 'hold sets',
    text: { name: 'note', value: note, needed: true },
    isRepeat: (last: { step: string; because: string | null; note: string | null }) =>
      last.step === 'held' && last.because === because && last.note === note.trim(),
  } as const;
  return atSet(request, acting, (write, { set, doneAt }) =>
    holdInside(write, { ...request, set, doneAt, action: 'hold-set' }),
  );
}

interface HoldInside {
  set: SetRow;
  because: HeldBecause;
  note?: string | null | undefined;
  /** The ledger's verb-noun. */
  action: string;
  person: Person;
  now: string;
  newId: NewId;
  doneAt?: string;
  workstationId?: string | null | undefined;
  detail?: Record<string, unknown>;
}

/**
 * Holds a set inside another write. A set that is held already is held for this reason too: lifting one hold must not
 * let it go past the other. The surgeons it is promised to are told.
 */
export async function holdInside(
  write: Queries,
  request: HoldInside,
): Promise<Outcome<{ revision: number }, never>> {
  const { set, because, person, now, newId } = request;
  const note = request.note?.trim() || null;
  const held =
    set.step === 'held'
      ? await addReason(write, { ...request, note })
      : await takeStep(write, {
          ...request,
          note,
          to: 'held',
          change: { heldBecause: because },
          detail: { ...request.detail, ...(note === null ? {} : { note }) },
        });
  if (!held.ok) return held;
  const promised = await write
    .select({ surgeonId: cases.surgeonId, reference: cases.reference })
    .from(setPromises)
    .innerJoin(cases, eq(cases.id, setPromises.caseId))
    .where(and(eq(setPromises.setId, set.id), gt(cases.endsAt, now)));
  for (const { surgeonId, reference } of promised)
    await tellPerson(write, {
      personId: surgeonId,
      kind: 'promisedSetHeld',
      detail: { setCode: set.code, because, caseReference: reference, by: person.name },
      href: `/sets/${set.id}`,
      now,
      newId,
    });
  return { ok: true, value: { revision: held.value.revision } };
}

/** A further reason is a step from held to held: the set stays where it is, and both reasons are on record. */
async function addReason(
  write: Queries,
  request: HoldInside & { note: string | null },
): Promise<Outcome<{ revision: number }, never>> {
  const { set, because, note, person, now, action } = request;
  const doneAt = request.doneAt ?? now;
  if (set.turnId === null) throw new Error(`${set.id} is held and in no turn`);
  const revision = set.revision + 1;
  await write
    .update(sets)
    .set({ revision })
    .where(and(eq(sets.id, set.id), eq(sets.revision, set.revision)));
  await write.insert(turnSteps).values({
    setId: set.id,
    turnId: set.turnId,
    fromStep: 'held',
    step: 'held',
    because,
    note,
    personId: person.id,
    workstationId: request.workstationId ?? null,
    placeId: set.placeId,
    doneAt,
    enteredAt: now,
  });
  await appendLedger(write, {
    doneAt,
    enteredAt: now,
    personId: person.id,
    action,
    subjectKind: 'set',
    subjectId: set.id,
    detail: { from: 'held', to: 'held', because, revision, ...request.detail, ...(note ? { note } : {}) },
  });
  return { ok: true, value: { revision } };
}
