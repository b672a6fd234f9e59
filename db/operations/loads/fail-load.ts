import { eq, sql } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import { type FailureOf, touchedBy } from '@/lib/loads/touched';
import { loadWords as words } from '@/lib/wording/loads';
import type { Queries } from '../../client';
import { type PackInDoubt, packsInLoads } from '../../queries/loads/fates';
import { loadsInLine } from '../../queries/loads/loadsInLine';
import type { Person } from '../../queries/people';
import { packs, packsInDoubt, stock } from '../../schema';
import { endPack, UNPACKED } from '../turns/end-pack';
import { holdInside } from '../turns/hold-set';
import { takeStep } from '../turns/take-step';
import { changeLoad, type LoadRow } from './at-load';

interface FailLoad {
  load: LoadRow;
  /** Where the sets of this load go; those of other loads in doubt are held. */
  setsGo: 'onBench' | 'held';
  reason: string;
  person: Person;
  now: string;
  newId: NewId;
  detail?: Record<string, unknown>;
}

/**
 * Rejects a load inside another write, and holds everything since the last accepted one on that steriliser. What went
 * out before is put on record as it was then.
 */
export async function failLoad(
  write: Queries,
  request: FailLoad,
): Promise<{ revision: number; held: number }> {
  const { load, reason, person, now } = request;
  const line = await loadsInLine(write, load.steriliserId);
  const failed = line.find(({ id }) => id === load.id);
  const of: FailureOf = failed?.indicators.some(
    ({ kind, result }) => kind === 'biological' && result === 'failed',
  )
    ? 'biological'
    : 'other';
  const touched = touchedBy(line, load.id, of);
  const inDoubt = await packsInLoads(
    write,
    touched.loads.map(({ id }) => id),
  );
  const failure = { of, sinceLoadId: touched.since?.id ?? null, untilLoadId: touched.until?.id ?? null };
  const changed = await changeLoad(
    write,
    load,
    { state: 'rejected', decidedBy: person.id, decidedAt: now, reason, failure },
    {
      action: 'reject-load',
      person,
      now,
      detail: {
        ...request.detail,
        reason,
        failure,
        loadsInDoubt: touched.loads.map(({ number }) => number),
        packs: inDoubt.map(({ number, fate }) => ({ number, fate })),
      },
    },
  );
  let held = 0;
  for (const pack of inDoubt) {
    await write
      .insert(packsInDoubt)
      .values({ failedLoadId: load.id, packId: pack.packId, loadId: pack.loadId, fateThen: pack.fate });
    const own = pack.loadId === load.id;
    held += await (pack.kind === 'set' ? settleSet : settlePouch)(write, pack, own, {
      ...request,
      note: words.held(load.number, touched.since?.number ?? null),
    });
  }
  return { ...changed, held };
}

type Settling = FailLoad & { note: string };

/** Answers how many are held by it: one or none. */
async function settleSet(
  write: Queries,
  pack: PackInDoubt,
  own: boolean,
  request: Settling,
): Promise<number> {
  const { load, setsGo, note, person, now, newId } = request;
  const { set } = pack;
  if (set === null || set.packId !== pack.packId || (pack.fate !== 'here' && pack.fate !== 'heldAlready'))
    return 0;
  const detail = { loadId: pack.loadId, failedLoad: load.number };
  if (own && setsGo === 'onBench' && set.step === 'awaitingAcceptance') {
    const taken = await takeStep(write, {
      set,
      to: 'onBench',
      action: 'reject-load',
      note,
      person,
      now,
      newId,
      detail,
      change: UNPACKED,
    });
    if (!taken.ok) throw new Error(taken.refusal.problems[0]?.message ?? 'the step is open');
    await endPack(write, pack.packId);
    return 0;
  }
  const done = await isUndone(write, pack.packId);
  if (!done) {
    const because = own ? 'indicatorOrCycleFailed' : 'loadUnknown';
    const held = await holdInside(write, {
      set,
      because,
      note,
      action: 'reject-load',
      person,
      now,
      newId,
      detail,
    });
    if (!held.ok) throw new Error(held.refusal.problems[0]?.message ?? 'a set can be held at any step');
  }
  // a pack of the failed load never becomes sterile again; one of another load waits to be known
  if (own && !done) await undo(write, pack.packId);
  return done ? 0 : 1;
}

async function settlePouch(
  write: Queries,
  pack: PackInDoubt,
  own: boolean,
  _request: Settling,
): Promise<number> {
  if (pack.fate !== 'here' && pack.fate !== 'heldAlready') return 0;
  if (pack.stock !== null)
    await write
      .update(stock)
      .set({
        heldBecause: own ? 'indicatorOrCycleFailed' : (pack.stock.heldBecause ?? 'loadUnknown'),
        revision: sql`${stock.revision} + 1`,
      })
      .where(eq(stock.id, pack.stock.id));
  if (own) await undo(write, pack.packId);
  return 1;
}

async function isUndone(write: Queries, packId: string): Promise<boolean> {
  const [row] = await write.select({ state: packs.state }).from(packs).where(eq(packs.id, packId));
  return row?.state === 'undone';
}

async function undo(write: Queries, packId: string): Promise<void> {
  await write
    .update(packs)
    .set({ state: 'undone', revision: sql`${packs.revision} + 1` })
    .where(eq(packs.id, packId));
}
