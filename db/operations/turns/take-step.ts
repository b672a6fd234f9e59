import { and, desc, eq } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { type TurnStep, turnStep } from '@/lib/sets/setState';
import { beginsTurn, mayFollow } from '@/lib/turns/steps';
import { turnWords as words } from '@/lib/wording/turns';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { sets, turnSteps, turns } from '../../schema';
import { noteBack } from '../caseLife/note-set';
import { loanBar } from '../loans/loan-bar';

export type SetRow = typeof sets.$inferSelect;

interface TakeStep {
  set: SetRow;
  to: TurnStep;
  /** The ledger's verb-noun. */
  action: string;
  person: Person;
  now: string;
  newId: NewId;
  /** When it happened, where that is earlier than now. */
  doneAt?: string;
  because?: string | null;
  note?: string | null;
  workstationId?: string | null | undefined;
  /** Only lifting a hold takes a set out of it: many steps may follow, but no other act may take them. */
  liftsHold?: boolean;
  /** What else changes on the set with this step. */
  change?: Partial<
    Pick<SetRow, 'placeId' | 'readyAt' | 'useBy' | 'packId' | 'caseId' | 'heldBecause' | 'heldFrom'>
  >;
  /** What the ledger says besides. */
  detail?: Record<string, unknown>;
}

export interface StepTaken {
  revision: number;
  turnId: string;
}

/**
 * The one way a set goes from step to step, inside the caller's transaction: only where the steps allow it, from the
 * revision the caller read, with the step kept, the turn begun where one begins, and the ledger written.
 */
export async function takeStep(write: Queries, request: TakeStep): Promise<Outcome<StepTaken, never>> {
  const { set, to, action, person, now, newId, change = {} } = request;
  const from = turnStep.parse(set.step);
  // what is out of service may still come under a recall: it is held like any other
  if (set.withdrawnAt !== null && to !== 'held') return refused('frozen', words.withdrawn(set.code));
  if (from === 'held' && request.liftsHold !== true) return refused('frozen', words.stillHeld(set.code));
  if (!mayFollow(from, to)) return refused('frozen', words.illegal(set.code, from, to));
  if (set.owner === 'loan' && to !== 'held' && to !== 'comingBack') {
    const barred = await loanBar(write, set, to);
    if (barred !== null) return refused('frozen', barred);
  }
  const heldFrom = set.heldFrom === null ? null : turnStep.parse(set.heldFrom);
  const turnId =
    set.turnId === null || beginsTurn(from, to, heldFrom)
      ? await beginTurn(write, set.id, request.doneAt ?? now, newId)
      : set.turnId;
  const revision = set.revision + 1;
  const leavesTheatre = to !== 'inTheatre' && to !== 'held';
  const changed = await write
    .update(sets)
    .set({
      step: to,
      stepSince: request.doneAt ?? now,
      turnId,
      heldBecause: to === 'held' ? set.heldBecause : null,
      heldFrom: to === 'held' ? from : null,
      ...(leavesTheatre ? { caseId: null } : {}),
      ...change,
      revision,
    })
    .where(and(eq(sets.id, set.id), eq(sets.revision, set.revision)))
    .returning({ id: sets.id });
  if (changed.length !== 1) return refused('conflict', words.changed(set.code));
  await write.insert(turnSteps).values({
    setId: set.id,
    turnId,
    fromStep: from,
    step: to,
    because: request.because ?? null,
    note: request.note ?? null,
    personId: person.id,
    workstationId: request.workstationId ?? null,
    placeId: change.placeId === undefined ? set.placeId : change.placeId,
    doneAt: request.doneAt ?? now,
    enteredAt: now,
  });
  if (leavesTheatre && set.caseId !== null)
    await noteBack(write, {
      setId: set.id,
      caseId: set.caseId,
      personId: person.id,
      doneAt: request.doneAt ?? now,
      now,
      newId,
    });
  await appendLedger(write, {
    doneAt: request.doneAt ?? now,
    enteredAt: now,
    personId: person.id,
    action,
    subjectKind: 'set',
    subjectId: set.id,
    detail: {
      from,
      to,
      turnId,
      revision,
      ...(request.because ? { because: request.because } : {}),
      ...request.detail,
    },
  });
  return { ok: true, value: { revision, turnId } };
}

async function beginTurn(write: Queries, setId: string, at: string, newId: NewId): Promise<string> {
  const [last] = await write
    .select({ number: turns.number })
    .from(turns)
    .where(eq(turns.setId, setId))
    .orderBy(desc(turns.number))
    .limit(1);
  const id = newId('turn');
  await write.insert(turns).values({ id, setId, number: (last?.number ?? 0) + 1, beganAt: at });
  return id;
}
