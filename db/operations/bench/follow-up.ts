import { and, eq } from 'drizzle-orm';
import type { Difference } from '@/lib/bench/compare';
import type { CountState } from '@/lib/bench/state';
import type { NewId } from '@/lib/identity/ids';
import type { ConfigurationLine } from '@/lib/sets/configuration';
import type { Queries } from '../../client';
import type { openDisputes } from '../../queries/bench/turnCounts';
import type { Person } from '../../queries/people';
import { asidePieces, type benchCounts, disputedLines, type sets } from '../../schema';
import { keepRefillJobs } from '../short/keep-refill-jobs';

interface FollowUp {
  count: typeof benchCounts.$inferSelect;
  set: typeof sets.$inferSelect;
  lines: readonly ConfigurationLine[];
  state: CountState;
  differences: readonly Difference[];
  /** Open before this count. */
  disputes: Awaited<ReturnType<typeof openDisputes>>;
  /** What the set holds now. */
  held: ReadonlyMap<string, number>;
  person: Person;
  now: string;
  newId: NewId;
}

/** What follows from a closed count: disputes opened or settled, unfit pieces on their way, refills asked for or done. */
export async function followUp(write: Queries, closing: FollowUp): Promise<void> {
  await writeDisputes(write, closing);
  await writeAside(write, closing);
  const { set, lines, held, count, person, now, newId } = closing;
  await keepRefillJobs(write, {
    set,
    turnId: count.turnId,
    lines: lines.map((line) => ({ ...line, found: held.get(line.id) ?? null })),
    person,
    now,
    newId,
  });
}

async function writeDisputes(write: Queries, closing: FollowUp): Promise<void> {
  const { count, set, differences, disputes, now } = closing;
  if (count.purpose === 'settle') {
    for (const { firstCountId, secondCountId, lineId } of disputes)
      await write
        .update(disputedLines)
        .set({ settledByCountId: count.id, settledAt: now })
        .where(
          and(
            eq(disputedLines.firstCountId, firstCountId),
            eq(disputedLines.secondCountId, secondCountId),
            eq(disputedLines.lineId, lineId),
          ),
        );
    return;
  }
  if (differences.length === 0) return;
  await write.insert(disputedLines).values(
    differences.map(({ lineId, firstCountId, first, second }) => ({
      firstCountId,
      secondCountId: count.id,
      lineId,
      setId: set.id,
      turnId: count.turnId,
      firstPieces: first,
      secondPieces: second,
      openedAt: now,
    })),
  );
}

async function writeAside(
  write: Queries,
  { set, lines, state, person, now, newId }: FollowUp,
): Promise<void> {
  const itemOf = new Map<string, string>(lines.map(({ id, itemId }) => [id, itemId]));
  const rows = [...state.lines].flatMap(([lineId, line]) =>
    line.aside.map(({ condition, route, pieces }) => ({
      id: newId('aside'),
      itemId: itemOf.get(lineId) ?? '',
      setId: set.id,
      lineId,
      quantity: pieces,
      condition,
      route,
      foundBy: person.id,
      foundAt: now,
    })),
  );
  if (rows.length > 0) await write.insert(asidePieces).values(rows);
}
