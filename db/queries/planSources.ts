import { and, asc, eq, ne } from 'drizzle-orm';
import { type Construct, construct } from '@/lib/plans/plan';
import { mayRead, type Reading } from '../reader';
import { cases, plans } from '../schema';
import { listPlanStarts } from './plans';

/** Where a promised construct can be copied from. */
export interface PlanSource {
  key: string;
  label: string;
  construct: Construct;
}

/** One person's saved starts, then the confirmed plans of cases. A plan's note is the case's and is left behind. */
export async function listPlanSources(db: Reading, personId: string): Promise<PlanSource[]> {
  mayRead(db, 'readHospital');
  const [starts, rows] = await Promise.all([
    listPlanStarts(db, personId),
    db.read
      .select({ id: plans.id, version: plans.version, body: plans.body, reference: cases.reference })
      .from(plans)
      .innerJoin(cases, eq(cases.id, plans.caseId))
      .where(and(ne(plans.status, 'draft'), ne(plans.status, 'superseded')))
      .orderBy(asc(cases.reference)),
  ]);
  return [
    ...starts.map(({ id, name, construct: body }) => ({
      key: id as string,
      label: `Saved start: ${name}`,
      construct: { ...body, note: null },
    })),
    ...rows.map(({ id, version, body, reference }) => ({
      key: id,
      label: `Case ${reference}, version ${version}`,
      construct: { ...construct.parse(body), note: null },
    })),
  ];
}
