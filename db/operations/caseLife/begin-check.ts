import { and, eq, isNull } from 'drizzle-orm';
import { mayDo } from '@/lib/caseLife/life';
import type { CaseId, CheckId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { pickWords as words } from '@/lib/wording/case-life';
import type { Database } from '../../client';
import { kitOnRecord, stands } from '../../queries/caseLife/standing';
import type { Person } from '../../queries/people';
import { kitChecks } from '../../schema';

interface BeginCheck {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  workstationId: string | null;
  caseId: CaseId;
  /** Made where the check is begun, so that beginning it twice begins it once. */
  checkId: CheckId;
}

/** Begins the second person's check of a picked kit, or takes up the one this person has open. */
export async function beginCheck(request: BeginCheck): Promise<Outcome<{ checkId: string }, never>> {
  const { db, now, person, workstationId, caseId, checkId } = request;
  if (!may(person, 'checkKit')) return refused('notPermitted', words.mayNot(person.name, 'check kits'));
  return db.tx(async (write) => {
    const kit = await kitOnRecord(write, caseId);
    if (!kit) return refused('notFound', words.noSuchCase);
    if (!mayDo(kit.stage, 'check')) return refused('frozen', words.notNow(kit.booked.reference, kit.stage));
    if (
      kit.life?.pickedBy === person.id ||
      kit.picks.some((pick) => stands(pick) && pick.pickedBy === person.id)
    )
      return refused('notPermitted', words.checkYourOwn(person.name));
    const [open] = await write
      .select()
      .from(kitChecks)
      .where(
        and(
          eq(kitChecks.caseId, caseId),
          eq(kitChecks.personId, person.id),
          isNull(kitChecks.closedAt),
          isNull(kitChecks.abandonedAt),
        ),
      );
    if (open && kit.life?.pickedAt && open.beganAt >= kit.life.pickedAt)
      return { ok: true, value: { checkId: open.id } };
    // begun before the kit was picked as it is now: it says nothing of this one
    if (open) await write.update(kitChecks).set({ abandonedAt: now }).where(eq(kitChecks.id, open.id));
    const [taken] = await write.select().from(kitChecks).where(eq(kitChecks.id, checkId));
    if (taken) return refused('conflict', words.idTaken);
    await write
      .insert(kitChecks)
      .values({ id: checkId, caseId, personId: person.id, workstationId, beganAt: now });
    return { ok: true, value: { checkId } };
  });
}
