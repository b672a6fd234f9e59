import { asc, count, eq } from 'drizzle-orm';
import { type ProcedureId, procedureId } from '@/lib/identity/ids';
import type { Construct } from '@/lib/plans/plan';
import { caseRegion } from '@/lib/theatre/surgicalCase';
import { mayRead, type Reading } from '../../reader';
import { preferenceCards, procedures } from '../../schema';

/** A procedure of the hospital's list. */
export interface ProcedureOnFile {
  id: ProcedureId;
  name: string;
  region: Construct['region'];
  /** Whether new cards may be made for it. */
  inUse: boolean;
  revision: number;
  /** Cards that are for it, retired ones too. */
  cards: number;
}

/** The hospital's own procedures, by name. */
export async function listProcedures(db: Reading): Promise<ProcedureOnFile[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({ one: procedures, cards: count(preferenceCards.id) })
    .from(procedures)
    .leftJoin(preferenceCards, eq(preferenceCards.procedureId, procedures.id))
    .groupBy(procedures.id)
    .orderBy(asc(procedures.name));
  return rows.map(({ one, cards }) => ({
    id: procedureId.parse(one.id),
    name: one.name,
    region: caseRegion.parse(one.region),
    inUse: one.withdrawnAt === null,
    revision: one.revision,
    cards,
  }));
}
