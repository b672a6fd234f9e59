import { and, eq, isNull } from 'drizzle-orm';
import { z } from 'zod';
import { hashCode } from '@/db/secrets';
import { type NewId, type WorkstationId, workstationId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { peopleWords } from '@/lib/wording/people';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { sessions, workstations } from '../../schema';

interface EnrolWorkstation {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  newToken: () => string;
  person: Person;
  sessionId: string;
  name: string;
}

const workstationName = z.string().trim().min(1).max(60);

/** Makes the browser at hand a workstation, on which badges and PINs are taken. Its token goes out once, into a cookie. */
export async function enrolWorkstation(
  request: EnrolWorkstation,
): Promise<Outcome<{ id: WorkstationId; token: string }, never>> {
  const { db, now, newId, newToken, person } = request;
  if (!may(person, 'enrolWorkstation')) return refused('notPermitted', peopleWords.mayNotEnrol(person.name));
  const name = workstationName.safeParse(request.name);
  if (!name.success)
    return refusedFor([{ path: ['name'], code: 'length', message: peopleWords.workstationNameLength }]);
  return db.tx(async (write) => {
    const [taken] = await write.select().from(workstations).where(eq(workstations.name, name.data));
    if (taken) {
      const message = peopleWords.workstationNameTaken(name.data);
      return refusedFor([{ path: ['name'], code: 'name-taken', message }]);
    }
    const id = workstationId.parse(newId('workstation'));
    const token = newToken();
    await write
      .insert(workstations)
      .values({ id, name: name.data, tokenHash: hashCode(token), enrolledBy: person.id, enrolledAt: now });
    // the session at hand is at this workstation from now on
    await write
      .update(sessions)
      .set({ workstationId: id })
      .where(and(eq(sessions.id, request.sessionId), isNull(sessions.endedAt)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'enrol-workstation',
      subjectKind: 'workstation',
      subjectId: id,
      detail: { name: name.data },
    });
    return { ok: true, value: { id, token } };
  });
}
