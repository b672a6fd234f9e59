import { and, asc, eq, isNull } from 'drizzle-orm';
import { hashCode } from '@/db/secrets';
import { type WorkstationId, workstationId } from '@/lib/identity/ids';
import type { Database } from '../client';
import { mayRead, type Reading } from '../reader';
import { people, workstations } from '../schema';

export interface Workstation {
  id: WorkstationId;
  name: string;
}

/** The enrolled workstation a browser's token stands for. Asked before anybody is known. */
export async function workstationOfToken(
  { read }: Pick<Database, 'read'>,
  token: string,
): Promise<Workstation | null> {
  const [row] = await read
    .select()
    .from(workstations)
    .where(and(eq(workstations.tokenHash, hashCode(token)), isNull(workstations.withdrawnAt)));
  return row ? { id: workstationId.parse(row.id), name: row.name } : null;
}

export interface WorkstationOnFile extends Workstation {
  enrolledBy: string;
  enrolledAt: string;
  withdrawnAt: string | null;
}

/** Every workstation that was ever enrolled, those in use first. */
export async function listWorkstations(db: Reading): Promise<WorkstationOnFile[]> {
  mayRead(db, 'enrolWorkstation');
  const rows = await db.read
    .select({ workstation: workstations, by: people.name })
    .from(workstations)
    .innerJoin(people, eq(people.id, workstations.enrolledBy))
    .orderBy(asc(workstations.withdrawnAt), asc(workstations.name));
  return rows.map(({ workstation, by }) => ({
    id: workstationId.parse(workstation.id),
    name: workstation.name,
    enrolledBy: by,
    enrolledAt: workstation.enrolledAt,
    withdrawnAt: workstation.withdrawnAt,
  }));
}
