import { and, asc, eq, ne, notInArray } from 'drizzle-orm';
import type { Database } from '@/db/client';
import { recordMoves } from '@/db/operations/pieces/record-moves';
import { listPeople, type Person } from '@/db/queries/people';
import { configurationLines, items, pieceMoves, setContents, sets, stock } from '@/db/schema';
import type { NewId } from '@/lib/identity/ids';
import { addDays, type PlainDate } from '@/lib/quantities/plainDate';
import { demoDatabase } from '../../setup/database';

/** A Wednesday morning in the demo hospital. */
export const NOW = '2026-01-14T09:00:00.000Z';
export const TODAY = '2026-01-14' as PlainDate;

export interface Restocking {
  db: Database;
  newId: NewId;
  keeper: Person;
  manager: Person;
  technician: Person;
  /** A racked screw of Carrowby, whose lead is five days; nothing is on record of it, and none is on the shelf. */
  screw: { id: string; code: string; packOf: number; setId: string; lineId: string };
}

let made = 0;

export async function restocking(): Promise<Restocking> {
  const db = await demoDatabase();
  const people = await listPeople(db);
  const one = (id: string) => people.find((person) => person.id === id) as Person;
  const [screw] = await db.read
    .select({
      id: items.id,
      code: items.code,
      packOf: items.packMultiple,
      setId: sets.id,
      lineId: configurationLines.id,
    })
    .from(items)
    .innerJoin(configurationLines, eq(configurationLines.itemId, items.id))
    .innerJoin(sets, eq(sets.versionId, configurationLines.versionId))
    .innerJoin(
      setContents,
      and(eq(setContents.setId, sets.id), eq(setContents.lineId, configurationLines.id)),
    )
    .where(
      and(
        eq(items.kind, 'screw'),
        eq(items.makerId, 'maker_carrowby'),
        // of what the demo used, or has on the shelf, there is a record of its own
        notInArray(
          items.id,
          db.read.select({ id: pieceMoves.itemId }).from(pieceMoves).where(ne(pieceMoves.act, 'opening')),
        ),
        notInArray(items.id, db.read.select({ id: stock.itemId }).from(stock)),
      ),
    )
    .orderBy(asc(items.code), asc(sets.code))
    .limit(1);
  if (!screw) throw new Error('the demo has racked screws');
  return {
    db,
    newId: (prefix) => {
      made += 1;
      return `${prefix}_restock-${made}`;
    },
    keeper: one('person_dilys-harrow'),
    manager: one('person_gwen-sallis'),
    technician: one('person_wren-adeyemi'),
    screw,
  };
}

/** What went on the days before: each day so many pieces were put into the slot, and dropped out of it. */
export async function dropped(
  { db, screw, keeper }: Restocking,
  uses: readonly { daysAgo: number; pieces: number }[],
): Promise<void> {
  const slot = { setId: screw.setId, lineId: screw.lineId };
  await db.tx((write) =>
    recordMoves(
      write,
      [...uses]
        .sort((a, b) => b.daysAgo - a.daysAgo)
        .flatMap(({ daysAgo, pieces }) => {
          const at = `${addDays(TODAY, -daysAgo)}T12:00:00.000Z`;
          const move = {
            itemId: screw.id,
            lot: null,
            useBy: null,
            quantity: pieces,
            personId: keeper.id,
            doneAt: at,
            enteredAt: at,
          };
          return [
            { ...move, act: 'refilled' as const, to: slot },
            { ...move, act: 'wasted' as const, from: slot, reason: 'dropped' },
          ];
        }),
    ),
  );
}

/** Two a week for two years. */
export const TWO_A_WEEK = Array.from({ length: 208 }, (_, at) => ({
  daysAgo: 728 - Math.floor(at * 3.5),
  pieces: 1,
}));

export const messagesOf = (outcome: { ok: boolean; refusal?: { problems: { message: string }[] } }) =>
  outcome.refusal?.problems.map(({ message }) => message).join(' ') ?? '';
export const pathsOf = (outcome: { ok: boolean; refusal?: { problems: { path: (string | number)[] }[] } }) =>
  outcome.refusal?.problems.map(({ path }) => path.join('.')) ?? [];
