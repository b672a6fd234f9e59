import { and, eq, gt, isNull } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import { may } from '@/lib/people/permissions';
import type { ShortAsk } from '@/lib/sets/short/ask';
import { ACT_OF_APPROVER } from '@/lib/sets/short/checkDecision';
import type { Queries } from '../../client';
import { type Person, personFromRow } from '../../queries/people';
import { cases, people, setPromises, type sets } from '../../schema';
import { tellPerson } from '../turns/tell-person';

interface TellApprovers {
  set: Pick<typeof sets.$inferSelect, 'id' | 'code'>;
  ask: ShortAsk;
  /** Who asked. */
  person: Person;
  now: string;
  newId: NewId;
}

/**
 * Tells everybody who may stand for a short set that it waits for them, inside the caller's transaction: whoever has the
 * role, but of surgeons only those of the cases to come that the set is promised to. Whoever asked knows it already.
 */
export async function tellApprovers(write: Queries, request: TellApprovers): Promise<void> {
  const { set, ask, person, now, newId } = request;
  const [rows, promised] = await Promise.all([
    write.select().from(people).where(isNull(people.leftAt)),
    write
      .select({ surgeonId: cases.surgeonId })
      .from(setPromises)
      .innerJoin(cases, eq(cases.id, setPromises.caseId))
      .where(and(eq(setPromises.setId, set.id), gt(cases.endsAt, now))),
  ]);
  const surgeons = new Set(promised.map(({ surgeonId }) => surgeonId));
  const told = rows
    .map(personFromRow)
    .filter(
      ({ id, role }) =>
        id !== person.id &&
        ask.approvers.some(
          (approver) =>
            may({ role }, ACT_OF_APPROVER[approver]) && (approver !== 'operatingSurgeon' || surgeons.has(id)),
        ),
    );
  for (const { id } of told)
    await tellPerson(write, {
      personId: id,
      kind: 'shortDecisionAsked',
      detail: { setCode: set.code, oneCase: ask.oneCase, by: person.name },
      href: `/sets/${set.id}/short`,
      now,
      newId,
    });
}
