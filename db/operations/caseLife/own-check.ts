import { eq } from 'drizzle-orm';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { pickWords as words } from '@/lib/wording/case-life';
import type { Queries } from '../../client';
import { type KitOnRecord, kitOnRecord } from '../../queries/caseLife/standing';
import type { Person } from '../../queries/people';
import { kitChecks, people } from '../../schema';
import type { BegunKit } from './at-kit';

interface OwnCheck {
  check: typeof kitChecks.$inferSelect;
  kit: BegunKit;
}

/** The check somebody works on, if it is theirs, open, and of the kit as it is picked now. */
export async function ownOpenCheck(
  write: Queries,
  checkId: string,
  person: Person,
): Promise<Outcome<OwnCheck, never>> {
  const [row] = await write
    .select({ check: kitChecks, name: people.name })
    .from(kitChecks)
    .innerJoin(people, eq(people.id, kitChecks.personId))
    .where(eq(kitChecks.id, checkId));
  if (!row) return refused('notFound', words.noSuchCheck);
  const { check, name } = row;
  if (check.personId !== person.id) return refused('notPermitted', words.notYourCheck(name));
  if (check.closedAt !== null || check.abandonedAt !== null) return refused('frozen', words.checkClosed);
  const kit = await kitOnRecord(write, check.caseId);
  if (!kit) return refused('notFound', words.noSuchCase);
  if (
    !isBegun(kit) ||
    kit.stage !== 'picked' ||
    kit.life.pickedAt === null ||
    check.beganAt < kit.life.pickedAt
  )
    return refused('frozen', words.checkOvertaken);
  return { ok: true, value: { check, kit } };
}

const isBegun = (kit: KitOnRecord): kit is BegunKit => kit.life !== null;
