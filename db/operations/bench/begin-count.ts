import { and, eq } from 'drizzle-orm';
import type { CountPurpose } from '@/lib/bench/closing';
import { type BenchStanding, purposesOpen } from '@/lib/bench/packable';
import type { CountId, SetId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { type Act, may } from '@/lib/people/permissions';
import { canBeCounted } from '@/lib/sets/count';
import { turnStep } from '@/lib/sets/setState';
import { PURPOSE_WORDS, benchWords as words } from '@/lib/wording/bench';
import type { Database, Queries } from '../../client';
import { benchStandingOf } from '../../queries/bench/standing';
import { isOpen } from '../../queries/bench/turnCounts';
import type { Person } from '../../queries/people';
import { benchCounts, sets } from '../../schema';

interface BeginCount {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  workstationId: string | null;
  /** Made by the screen, so that beginning twice begins once. */
  countId: CountId;
  setId: SetId;
  purpose: CountPurpose;
}

export interface BegunCount {
  countId: string;
  purpose: CountPurpose;
}

const ACT_FOR: Record<CountPurpose, Act> = { count: 'countSet', check: 'checkCount', settle: 'countSet' };

/**
 * Begins one person's count of an open set, or takes up the one they have open already. Others may have theirs open
 * beside it: both are kept, neither sees the other's.
 */
export async function beginCount(request: BeginCount): Promise<Outcome<BegunCount>> {
  const { db, now, person, workstationId, countId, setId, purpose } = request;
  if (!may(person, ACT_FOR[purpose]))
    return refused('notPermitted', words.notPermitted(person.name, PURPOSE_WORDS[purpose].verb));
  return db.tx(async (write) => {
    const taken = await takenUp(write, request);
    if (taken) return taken;
    const [set] = await write.select().from(sets).where(eq(sets.id, setId));
    const standing = await benchStandingOf(write, setId);
    if (!set || !standing) return refused('notFound', words.noSuchSet);
    if (set.withdrawnAt !== null) return refused('frozen', words.withdrawn(set.code));
    if (!canBeCounted(turnStep.parse(set.step))) return refused('frozen', words.sealed(set.code));
    if (set.turnId === null) return refused('frozen', words.noTurn(set.code));
    const why = whyNot(standing, purpose, person);
    if (why) return refused('frozen', why);
    await write.insert(benchCounts).values({
      id: countId,
      setId,
      turnId: set.turnId,
      versionId: set.versionId,
      purpose,
      personId: person.id,
      workstationId,
      baseRevision: set.revision,
      beganAt: now,
    });
    return { ok: true, value: { countId, purpose } };
  });
}

/** The count of this id, or the one this person has open on the set. */
async function takenUp(
  write: Queries,
  { countId, setId, person, purpose }: BeginCount,
): Promise<Outcome<BegunCount> | null> {
  const [same] = await write.select().from(benchCounts).where(eq(benchCounts.id, countId));
  if (same)
    return same.setId === setId && same.personId === person.id
      ? { ok: true, value: { countId, purpose: same.purpose as CountPurpose } }
      : refused('conflict', words.idTaken);
  const [open] = await write
    .select()
    .from(benchCounts)
    .where(and(eq(benchCounts.setId, setId), eq(benchCounts.personId, person.id), isOpen));
  if (!open) return null;
  return open.purpose === purpose
    ? { ok: true, value: { countId: open.id, purpose } }
    : refused('frozen', words.otherOpen);
}

function whyNot(standing: BenchStanding, purpose: CountPurpose, person: Person): string | null {
  if (purposesOpen(standing, person.id).some((one) => one.purpose === purpose)) return null;
  if (purpose === 'check')
    return standing.countedBy.some(({ personId }) => personId === person.id)
      ? words.countedAlready(person.name)
      : words.nothingToCheck;
  const [open] = standing.openCounts;
  return standing.disputes.length > 0 && open ? words.othersOpen(open.person) : words.nothingInDispute;
}
