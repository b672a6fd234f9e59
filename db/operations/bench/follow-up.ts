import { and, eq, isNull } from 'drizzle-orm';
import type { Difference } from '@/lib/bench/compare';
import type { CountState } from '@/lib/bench/state';
import type { NewId } from '@/lib/identity/ids';
import type { ConfigurationLine } from '@/lib/sets/configuration';
import type { Queries } from '../../client';
import type { openDisputes } from '../../queries/bench/turnCounts';
import type { Person } from '../../queries/people';
import { asidePieces, type benchCounts, disputedLines, items, refillJobs, type sets } from '../../schema';
import { tellPerson } from '../turns/tell-person';

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
  await writeRefillJobs(write, closing);
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

/** One open job a line: as large as what is short now, and done once nothing is. Then the finder is told. */
async function writeRefillJobs(write: Queries, closing: FollowUp): Promise<void> {
  const { count, set, lines, held, person, now, newId } = closing;
  const open = await write
    .select({ job: refillJobs, itemName: items.name })
    .from(refillJobs)
    .innerJoin(items, eq(items.id, refillJobs.itemId))
    .where(and(eq(refillJobs.setId, set.id), isNull(refillJobs.fixedAt), isNull(refillJobs.droppedBecause)));
  const jobOf = new Map(open.map((row) => [row.job.lineId, row]));
  for (const line of lines) {
    const found = held.get(line.id);
    if (found === undefined) continue;
    const short = line.expected - found;
    const known = jobOf.get(line.id);
    if (known && short <= 0) await fixJob(write, known, closing);
    else if (known && short !== known.job.quantity)
      await write.update(refillJobs).set({ quantity: short }).where(eq(refillJobs.id, known.job.id));
    else if (!known && short > 0)
      await write.insert(refillJobs).values({
        id: newId('refill'),
        setId: set.id,
        lineId: line.id,
        itemId: line.itemId,
        quantity: short,
        foundBy: person.id,
        openedAt: now,
        turnId: count.turnId,
      });
  }
}

async function fixJob(
  write: Queries,
  { job, itemName }: { job: typeof refillJobs.$inferSelect; itemName: string },
  { set, person, now, newId }: FollowUp,
): Promise<void> {
  await write.update(refillJobs).set({ fixedBy: person.id, fixedAt: now }).where(eq(refillJobs.id, job.id));
  if (job.foundBy === person.id) return;
  await tellPerson(write, {
    personId: job.foundBy,
    kind: 'shortageFixed',
    detail: { setCode: set.code, itemName, quantity: job.quantity, by: person.name },
    href: `/sets/${set.id}`,
    now,
    newId,
  });
}
