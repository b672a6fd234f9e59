import { and, asc, count, desc, eq, gte, inArray, lt } from 'drizzle-orm';
import type { SetId } from '@/lib/identity/ids';
import { mayRead, type Reading } from '../../reader';
import {
  asidePieces,
  counts,
  items,
  ledger,
  loads,
  packs,
  people,
  refillJobs,
  shortDecisions,
  turns,
} from '../../schema';
import { hiddenFrom } from '../bench/blind';
import { type StepOnFile, stepsOf } from './setTurn';

/** One thing that happened to a set. Every event says when it was done; those entered later also say when. */
export type SetEvent = { at: string; enteredAt: string | null; by: string | null } & (
  | { kind: 'step'; step: StepOnFile }
  | { kind: 'count' }
  | {
      kind: 'pack';
      number: string;
      barrier: string;
      short: boolean;
      load: { id: string; number: string; state: string } | null;
    }
  | { kind: 'decision'; how: string; reason: string }
  | { kind: 'aside'; item: string; quantity: number; condition: string }
  | { kind: 'refillAsked' | 'refillFixed'; item: string; quantity: number }
  /** Whatever else the ledger holds about the set itself. */
  | { kind: 'entry'; action: string; detail: Record<string, unknown> }
);

interface TurnHistory {
  id: string;
  number: number;
  beganAt: string;
  /** Oldest first. */
  events: SetEvent[];
}

/** Turns on one page of a set's history. */
export const TURNS_A_PAGE = 10;

/** Ledger entries about a set that no other event of its history stands for. */
const OTHER_ACTIONS = ['move-set', 'withdraw-set', 'bring-back-set', 'refit-set'];

/**
 * A page of a set's turns, the newest turn first, each with everything that happened in it.
 *
 * @param page from 1, of `TURNS_A_PAGE`; or the turns before a number, so many of them
 */
export async function loadSetHistory(
  db: Reading,
  id: SetId,
  page: number | { before: number | null; limit: number },
): Promise<{ turns: TurnHistory[]; total: number }> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const { before, limit, offset } =
    typeof page === 'number'
      ? { before: null, limit: TURNS_A_PAGE, offset: (page - 1) * TURNS_A_PAGE }
      : { ...page, offset: 0 };
  const [[all], rows] = await Promise.all([
    read.select({ n: count() }).from(turns).where(eq(turns.setId, id)),
    read
      .select()
      .from(turns)
      .where(and(eq(turns.setId, id), before === null ? undefined : lt(turns.number, before)))
      .orderBy(desc(turns.number))
      .limit(limit)
      .offset(offset),
  ]);
  const oldest = rows.at(-1);
  const newest = rows[0];
  if (!oldest || !newest) return { turns: [], total: all?.n ?? 0 };
  const [next] = await read
    .select({ beganAt: turns.beganAt })
    .from(turns)
    .where(and(eq(turns.setId, id), eq(turns.number, newest.number + 1)));
  const until = next?.beganAt ?? '9999';
  const events = (
    await eventsBetween(
      db,
      id,
      oldest.beganAt,
      until,
      rows.map((row) => row.id),
    )
  ).sort(
    (a, b) =>
      Date.parse(a.at) - Date.parse(b.at) ||
      (a.kind === 'step' && b.kind === 'step' ? a.step.seq - b.step.seq : 0),
  );
  const shown = rows.map((row, index): TurnHistory => {
    const ended = rows[index - 1]?.beganAt ?? until;
    return {
      id: row.id,
      number: row.number,
      beganAt: row.beganAt,
      events: events.filter((event) =>
        event.turnId === null ? event.at >= row.beganAt && event.at < ended : event.turnId === row.id,
      ),
    };
  });
  return { turns: shown, total: all?.n ?? 0 };
}

type Placed = SetEvent & { turnId: string | null };

async function eventsBetween(
  db: Reading,
  id: SetId,
  from: string,
  until: string,
  turnIds: string[],
): Promise<Placed[]> {
  const { read } = db;
  // what was put aside and what is short says what others found
  const blind = (await hiddenFrom(db)).has(id);
  const [steps, counted, packed, decided, aside, refills, entries] = await Promise.all([
    stepsOf({ read }, turnIds),
    read
      .select({ at: counts.countedAt, by: people.name })
      .from(counts)
      .innerJoin(people, eq(people.id, counts.countedBy))
      .where(and(eq(counts.setId, id), gte(counts.countedAt, from), lt(counts.countedAt, until))),
    read
      .select({ pack: packs, load: loads, by: people.name })
      .from(packs)
      .innerJoin(people, eq(people.id, packs.packedBy))
      .leftJoin(loads, eq(loads.id, packs.loadId))
      .where(and(eq(packs.setId, id), inArray(packs.turnId, turnIds))),
    read
      .select()
      .from(shortDecisions)
      .where(and(eq(shortDecisions.setId, id), inArray(shortDecisions.turnId, turnIds))),
    read
      .select({ piece: asidePieces, item: items.name, by: people.name })
      .from(asidePieces)
      .innerJoin(items, eq(items.id, asidePieces.itemId))
      .innerJoin(people, eq(people.id, asidePieces.foundBy))
      .where(and(eq(asidePieces.setId, id), gte(asidePieces.foundAt, from), lt(asidePieces.foundAt, until))),
    read
      .select({ job: refillJobs, item: items.name, by: people.name })
      .from(refillJobs)
      .innerJoin(items, eq(items.id, refillJobs.itemId))
      .innerJoin(people, eq(people.id, refillJobs.foundBy))
      .where(eq(refillJobs.setId, id)),
    read
      .select({ entry: ledger, by: people.name })
      .from(ledger)
      .leftJoin(people, eq(people.id, ledger.personId))
      .where(
        and(
          eq(ledger.subjectKind, 'set'),
          eq(ledger.subjectId, id),
          inArray(ledger.action, OTHER_ACTIONS),
          gte(ledger.doneAt, from),
          lt(ledger.doneAt, until),
        ),
      )
      .orderBy(asc(ledger.seq)),
  ]);
  const now = { enteredAt: null };
  return [
    ...steps.map(({ turnId, ...step }) => ({
      kind: 'step' as const,
      turnId,
      step,
      at: step.doneAt,
      by: step.by,
      enteredAt: late(step.doneAt, step.enteredAt),
    })),
    ...counted.map(({ at, by }) => ({ kind: 'count' as const, turnId: null, at, by, ...now })),
    ...packed.map(({ pack, load, by }) => ({
      kind: 'pack' as const,
      turnId: pack.turnId,
      at: pack.packedAt,
      by,
      ...now,
      number: pack.number,
      barrier: pack.barrier,
      short: pack.short !== null,
      load: load && { id: load.id, number: load.number, state: load.state },
    })),
    ...decided.map((row) => ({
      kind: 'decision' as const,
      turnId: row.turnId,
      at: row.decidedAt,
      by: null,
      ...now,
      how: row.kind,
      reason: row.reason,
    })),
    ...(blind ? [] : aside).map(({ piece, item, by }) => ({
      kind: 'aside' as const,
      turnId: null,
      at: piece.foundAt,
      by,
      ...now,
      item,
      quantity: piece.quantity,
      condition: piece.condition,
    })),
    ...(blind ? [] : refills).flatMap(({ job, item, by }) => [
      {
        kind: 'refillAsked' as const,
        turnId: null,
        at: job.openedAt,
        by,
        ...now,
        item,
        quantity: job.quantity,
      },
      ...(job.fixedAt === null
        ? []
        : [
            {
              kind: 'refillFixed' as const,
              turnId: null,
              at: job.fixedAt,
              by: null,
              ...now,
              item,
              quantity: job.quantity,
            },
          ]),
    ]),
    ...entries.map(({ entry, by }) => ({
      kind: 'entry' as const,
      turnId: null,
      at: entry.doneAt,
      by,
      enteredAt: late(entry.doneAt, entry.enteredAt),
      action: entry.action,
      detail: entry.detail as Record<string, unknown>,
    })),
  ];
}

/** When it was entered, where that was not when it was done. */
const late = (doneAt: string, enteredAt: string) => (doneAt === enteredAt ? null : enteredAt);
