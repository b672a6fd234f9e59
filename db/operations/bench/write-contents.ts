import { eq, inArray, sql } from 'drizzle-orm';
import type { Difference, HeldBefore } from '@/lib/bench/compare';
import {
  asideOf,
  type CountState,
  type LineState,
  mainCondition,
  refilledOf,
  takenHomeOf,
} from '@/lib/bench/state';
import type { ConfigurationLine } from '@/lib/sets/configuration';
import type { Queries } from '../../client';
import { openDisputes, statedLines } from '../../queries/bench/turnCounts';
import { type benchCounts, countLines, counts, setContents, setForeignPieces, type sets } from '../../schema';
import { moveByCount } from '../pieces/count-moves';

interface Closing {
  count: typeof benchCounts.$inferSelect;
  set: typeof sets.$inferSelect;
  lines: readonly ConfigurationLine[];
  state: CountState;
  differences: readonly Difference[];
  now: string;
}

/** What each line holds, and whose count of this turn said so. A figure in dispute has not become what it holds. */
export async function heldBefore(
  write: Queries,
  set: typeof sets.$inferSelect,
): Promise<Map<string, HeldBefore>> {
  const [rows, stated, disputes] = await Promise.all([
    write.select().from(setContents).where(eq(setContents.setId, set.id)),
    statedLines(write, set),
    openDisputes(write, set.id),
  ]);
  const second = new Set(disputes.map(({ secondCountId, lineId }) => `${secondCountId} ${lineId}`));
  const by = new Map(
    stated
      .filter(({ countId, lineId }) => !second.has(`${countId} ${lineId}`))
      .map(({ lineId, countId, personId }) => [lineId, { countId, personId }]),
  );
  return new Map(
    rows.map(({ lineId, found }) => {
      const whose = by.get(lineId);
      return [lineId, { found, countedBy: whose?.personId ?? null, countId: whose?.countId ?? null }];
    }),
  );
}

/**
 * The count itself, and what the set holds after it; answers what it holds by line. Where two counts differ, and on
 * lines that were not counted, only what was moved changes what is held: pieces put in, put aside, taken home.
 */
export async function writeContents(write: Queries, closing: Closing): Promise<Map<string, number>> {
  const { count, set, lines, state, differences, now } = closing;
  const expectedOf = new Map<string, number>(lines.map(({ id, expected }) => [id, expected]));
  await write.insert(counts).values({
    id: count.id,
    setId: set.id,
    versionId: count.versionId,
    countedBy: count.personId,
    countedAt: now,
    baseRevision: count.baseRevision,
  });
  const stated = [...state.lines].flatMap(([lineId, line]) =>
    line.found === null
      ? []
      : [
          {
            countId: count.id,
            lineId,
            expected: expectedOf.get(lineId) ?? 0,
            found: line.found,
            unsound: asideOf(line),
            condition: mainCondition(line),
          },
        ],
  );
  if (stated.length > 0) await write.insert(countLines).values(stated);
  const contents = await write.select().from(setContents).where(eq(setContents.setId, set.id));
  const heldOf = new Map(contents.map((row) => [row.lineId, row]));
  const differing = new Set(differences.map(({ lineId }) => lineId));
  const rows = [...state.lines].flatMap(([lineId, line]) => {
    const was = heldOf.get(lineId);
    const after =
      line.found !== null && !differing.has(lineId) ? line.found : afterMoves(was?.found ?? null, line);
    if (after === null) return [];
    const aside = asideOf(line);
    // a second count of the turn adds to what the first one put aside
    const before = was && (count.purpose !== 'count' || differing.has(lineId)) ? was : null;
    return [
      {
        setId: set.id,
        lineId,
        found: after,
        unsound: (before?.unsound ?? 0) + aside,
        condition: aside === 0 && before ? before.condition : mainCondition(line),
      },
    ];
  });
  if (rows.length > 0)
    await write
      .insert(setContents)
      .values(rows)
      .onConflictDoUpdate({
        target: [setContents.setId, setContents.lineId],
        set: {
          found: sql`excluded.found`,
          unsound: sql`excluded.unsound`,
          condition: sql`excluded.condition`,
        },
      });
  const heldAfter = new Map(rows.map(({ lineId, found }) => [lineId, found]));
  const itemOf = new Map<string, string>(lines.map(({ id, itemId }) => [id, itemId]));
  await moveByCount(write, {
    setId: set.id,
    countId: count.id,
    lines: [...state.lines].map(([lineId, line]) => ({
      lineId,
      itemId: itemOf.get(lineId) ?? '',
      held: heldAfter.get(lineId) ?? null,
      aside: line.aside,
      takenHome: takenHomeOf(line),
    })),
    personId: count.personId,
    now,
  });
  await writeForeign(write, set.id, count.id, state);
  const held = new Map(contents.map(({ lineId, found }) => [lineId, found]));
  for (const { lineId, found } of rows) held.set(lineId, found);
  return held;
}

/** What a line holds after pieces were moved that nobody counted anew; nothing is known where nothing was. */
function afterMoves(held: number | null, line: LineState): number | null {
  return held === null ? null : Math.max(0, held + refilledOf(line) - asideOf(line) - takenHomeOf(line));
}

/**
 * Foreign pieces by item: those known before and those found now are the same pieces where they are of one item, so the
 * larger number stays, less what was taken home.
 */
async function writeForeign(
  write: Queries,
  setId: string,
  countId: string,
  state: CountState,
): Promise<void> {
  if (state.foreign.size === 0) return;
  const named = [...state.foreign.keys()];
  const before = await write.select().from(setForeignPieces).where(eq(setForeignPieces.setId, setId));
  const own = before.filter(({ itemId }) => named.includes(itemId));
  if (own.length > 0)
    await write.delete(setForeignPieces).where(
      inArray(
        setForeignPieces.id,
        own.map(({ id }) => id),
      ),
    );
  const rows = [...state.foreign].flatMap(([itemId, now], at) => {
    const known = own.filter((row) => row.itemId === itemId);
    const there = known.reduce((sum, { quantity }) => sum + quantity, 0);
    const taken = now.takenHome.reduce((sum, { pieces }) => sum + pieces, 0);
    const quantity = Math.max(there, now.found) - taken;
    const note = now.note ?? known[0]?.note ?? null;
    return quantity > 0 ? [{ id: `foreign_${countId.slice(6)}-${at}`, setId, itemId, quantity, note }] : [];
  });
  if (rows.length > 0) await write.insert(setForeignPieces).values(rows);
}
