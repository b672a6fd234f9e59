import { eq, inArray, sql } from 'drizzle-orm';
import type { NewId, PlaceId } from '@/lib/identity/ids';
import type { ImplantException } from '@/lib/loads/load';
import { addDays, type PlainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import type { Queries } from '../../client';
import type { LoadedPack } from '../../queries/loads/packsOfLoad';
import type { Person } from '../../queries/people';
import { readSetting } from '../../queries/settings';
import { packs, packsInDoubt, sets, stock } from '../../schema';
import { recordMoves } from '../pieces/record-moves';
import { holdInside } from '../turns/hold-set';
import { takeStep } from '../turns/take-step';
import type { LoadRow } from './at-load';

interface StorePacks {
  load: LoadRow;
  /** Sound ones only. */
  packs: readonly LoadedPack[];
  excepted: ImplantException | null;
  /** Whether implants of this load still wait for the biological result. */
  waiting: boolean;
  setsPlaceId: PlaceId | null;
  pouchesPlaceId: PlaceId | null;
  person: Person;
  now: string;
  newId: NewId;
}

/**
 * Puts the packs of an accepted load into store, with use-by as the hospital has it. What is held for another reason stays
 * held; implants that are not part of the exception are held until their result is known.
 */
export async function storePacks(write: Queries, request: StorePacks): Promise<void> {
  const { excepted, waiting, now } = request;
  const { policy, useByDays } = await readSetting(write, 'sterility');
  const useBy = policy === 'useBy' ? addDays(wallClock(now).date, useByDays) : null;
  const doubted = await doubtedAmong(write, request.packs);
  for (const pack of request.packs) {
    const forCase = excepted?.packIds.includes(pack.id) ?? false;
    await write
      .update(packs)
      .set({
        state: 'sterile',
        useBy,
        ...(forCase && excepted ? { forCaseId: excepted.caseId } : {}),
        revision: sql`${packs.revision} + 1`,
      })
      .where(eq(packs.id, pack.id));
    const waits = waiting && pack.implants !== 'no' && !forCase;
    if (pack.kind === 'set') await storeSet(write, pack, useBy, waits, request);
    else await storePouch(write, pack, useBy, waits || doubted.has(pack.id), request);
  }
}

async function doubtedAmong(write: Queries, all: readonly LoadedPack[]): Promise<Set<string>> {
  const ids = all.map(({ id }) => id);
  const rows = await write.select().from(packsInDoubt).where(inArray(packsInDoubt.packId, ids));
  return new Set(rows.map(({ packId }) => packId));
}

async function storeSet(
  write: Queries,
  pack: LoadedPack,
  useBy: PlainDate | null,
  waits: boolean,
  request: StorePacks,
): Promise<void> {
  const { load, setsPlaceId, person, now, newId } = request;
  const [set] = await write
    .select()
    .from(sets)
    .where(eq(sets.id, pack.setId ?? ''));
  if (set?.packId !== pack.id) return;
  const detail = { loadId: load.id, loadNumber: load.number, packId: pack.id, useBy };
  if (set.step === 'awaitingAcceptance') {
    const change = { placeId: setsPlaceId, readyAt: now, useBy };
    const taken = await takeStep(write, {
      set,
      to: 'inSterileStore',
      action: 'accept-load',
      person,
      now,
      newId,
      detail,
      change,
    });
    if (!taken.ok) throw new Error(taken.refusal.problems[0]?.message ?? 'the step is open');
  } else if (set.step === 'held' && set.heldFrom === 'awaitingAcceptance') {
    // its load is accepted, its hold is not lifted by that: where it may go once it is lifted is the store
    await write
      .update(sets)
      .set({ heldFrom: 'inSterileStore', useBy, placeId: setsPlaceId, revision: set.revision + 1 })
      .where(eq(sets.id, set.id));
  }
  if (!waits) return;
  const [stored] = await write.select().from(sets).where(eq(sets.id, set.id));
  if (!stored) throw new Error(`${set.id} was there a moment ago`);
  const note = `Holds implants; the biological result of load ${load.number} is not known.`;
  const held = await holdInside(write, {
    set: stored,
    because: 'loadUnknown',
    note,
    action: 'accept-load',
    person,
    now,
    newId,
    detail,
  });
  if (!held.ok) throw new Error(held.refusal.problems[0]?.message ?? 'a set can be held at any step');
}

async function storePouch(
  write: Queries,
  pack: LoadedPack,
  useBy: PlainDate | null,
  held: boolean,
  { pouchesPlaceId, newId, person, now }: StorePacks,
): Promise<void> {
  if (pack.itemId === null || pouchesPlaceId === null)
    throw new Error('a pouch holds an item and goes to a place');
  const id = newId('stock');
  await write.insert(stock).values({
    id,
    itemId: pack.itemId,
    form: 'pouch',
    lot: pack.lot,
    useBy,
    quantity: 1,
    owner: 'ours',
    placeId: pouchesPlaceId,
    heldBecause: held ? 'loadUnknown' : null,
    revision: 1,
  });
  await recordMoves(write, [
    {
      act: 'shelved',
      itemId: pack.itemId,
      lot: pack.lot,
      useBy,
      quantity: 1,
      to: { stockId: id },
      packId: pack.id,
      personId: person.id,
      doneAt: now,
      enteredAt: now,
    },
  ]);
  await write
    .update(packs)
    .set({ stockId: id, revision: sql`${packs.revision} + 1` })
    .where(eq(packs.id, pack.id));
}
