import { and, asc, desc, eq, gt, inArray, isNull, sql } from 'drizzle-orm';
import type { SetId } from '@/lib/identity/ids';
import { type TurnStep, turnStep } from '@/lib/sets/setState';
import { stepsAfterHolds } from '@/lib/turns/steps';
import { mayRead, type Reading } from '../../reader';
import { cases, items, loads, packs, people, refillJobs, sets, turnSteps, turns } from '../../schema';
import { hiddenFrom } from '../bench/blind';
import { type HeldReason, heldReasons } from './heldReasons';

/** One step a set took. */
export interface StepOnFile {
  seq: number;
  from: TurnStep | null;
  step: TurnStep;
  because: string | null;
  note: string | null;
  by: string | null;
  doneAt: string;
  enteredAt: string;
}

/** Where a set is in its present turn, and what its page offers from there. */
export interface SetTurn {
  turn: { number: number; beganAt: string; steps: StepOnFile[] } | null;
  heldFrom: TurnStep | null;
  reasons: HeldReason[];
  /** Where a lifted hold may let it go. */
  after: TurnStep[];
  withdrawn: { at: string; because: string } | null;
  pack: {
    id: string;
    number: string;
    state: string;
    short: boolean;
    packedAt: string;
    useBy: string | null;
  } | null;
  load: { id: string; number: string; state: string } | null;
  forCase: { id: string; reference: string } | null;
  /** `null` where the reader is to check the set blind: what is short is what others found. */
  refills: { id: string; item: string; quantity: number; foundBy: string; openedAt: string }[] | null;
}

/** A set's present turn; `null` when there is no such set. */
export async function loadSetTurn(db: Reading, id: SetId): Promise<SetTurn | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [row] = await read
    .select({ set: sets, turn: turns, pack: packs, load: loads, forCase: cases })
    .from(sets)
    .leftJoin(turns, eq(turns.id, sets.turnId))
    .leftJoin(packs, eq(packs.id, sets.packId))
    .leftJoin(loads, eq(loads.id, packs.loadId))
    .leftJoin(cases, eq(cases.id, sets.caseId))
    .where(eq(sets.id, id));
  if (!row) return null;
  const { set, turn, pack, load, forCase } = row;
  const [steps, reasons, refills, hidden] = await Promise.all([
    turn === null ? [] : stepsOf(db, [turn.id]),
    set.step === 'held' ? heldReasons(read, set.id) : [],
    read
      .select({ job: refillJobs, item: items.name, foundBy: people.name })
      .from(refillJobs)
      .innerJoin(items, eq(items.id, refillJobs.itemId))
      .innerJoin(people, eq(people.id, refillJobs.foundBy))
      .where(and(eq(refillJobs.setId, id), isNull(refillJobs.fixedAt), isNull(refillJobs.droppedBecause)))
      .orderBy(asc(refillJobs.openedAt)),
    hiddenFrom(db),
  ]);
  const heldFrom = set.heldFrom === null ? null : turnStep.parse(set.heldFrom);
  return {
    turn: turn === null ? null : { number: turn.number, beganAt: turn.beganAt, steps },
    heldFrom,
    reasons,
    after: stepsAfterHolds(
      reasons.map(({ because }) => because),
      heldFrom,
    ),
    withdrawn: set.withdrawnAt === null ? null : { at: set.withdrawnAt, because: set.withdrawnBecause ?? '' },
    pack: pack && {
      id: pack.id,
      number: pack.number,
      state: pack.state,
      short: pack.short !== null,
      packedAt: pack.packedAt,
      useBy: pack.useBy,
    },
    load: load && { id: load.id, number: load.number, state: load.state },
    forCase: forCase && { id: forCase.id, reference: forCase.reference },
    refills: hidden.has(id)
      ? null
      : refills.map(({ job, item, foundBy }) => ({
          id: job.id,
          item,
          quantity: job.quantity,
          foundBy,
          openedAt: job.openedAt,
        })),
  };
}

/** The steps of turns, in the order they were taken. */
export async function stepsOf(
  { read }: Pick<Reading, 'read'>,
  turnIds: readonly string[],
): Promise<(StepOnFile & { turnId: string })[]> {
  const rows = await read
    .select({ row: turnSteps, by: people.name })
    .from(turnSteps)
    .leftJoin(people, eq(people.id, turnSteps.personId))
    .where(inArray(turnSteps.turnId, [...turnIds]))
    .orderBy(asc(turnSteps.seq));
  return rows.map(({ row, by }) => ({
    turnId: row.turnId,
    seq: row.seq,
    from: row.fromStep === null ? null : turnStep.parse(row.fromStep),
    step: turnStep.parse(row.step),
    because: row.because,
    note: row.note,
    by,
    doneAt: row.doneAt,
    enteredAt: row.enteredAt,
  }));
}

/**
 * Cases a set could be sent to: those not over, the soonest first.
 *
 * @param among only these of them
 */
export async function casesToSendTo(
  db: Reading,
  now: string,
  among: readonly string[] | null = null,
): Promise<{ id: string; reference: string; startsAt: string }[]> {
  mayRead(db, 'readHospital');
  return (
    db.read
      .select({ id: cases.id, reference: cases.reference, startsAt: cases.startsAt })
      .from(cases)
      .where(
        and(
          gt(cases.endsAt, now),
          isNull(cases.cancelledAt),
          among === null ? undefined : inArray(cases.id, [...among]),
        ),
      )
      // by when they end they are found, and then put in order (`+`): by the order, every case of the past would be gone through
      .orderBy(sql`+${cases.startsAt}`, desc(cases.reference))
  );
}
