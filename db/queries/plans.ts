import type { StartId } from '@/lib/identity/ids';
import type { Construct } from '@/lib/plans/plan';
import { mayRead, type Reading } from '../reader';
import { listStarts, type StartOnFile } from './cards/starts';

export interface PlanStart {
  id: StartId;
  name: string;
  version: number;
  construct: Construct;
  savedAt: string;
  /** Plates it names that are no longer current, or that the catalogue does not have. */
  platesGone: { name: string; status: 'withdrawn' | 'recalled' | 'unknown' }[];
}

/** One person's saved starts that are in use, by name, each with what has been withdrawn from under it. */
export async function listPlanStarts(db: Reading, personId: string): Promise<PlanStart[]> {
  mayRead(db, 'readHospital');
  return (await listStarts(db))
    .filter(({ owner, retiredAt }) => owner.id === personId && retiredAt === null)
    .map(({ id, name, version, construct, savedAt, plates }) => ({
      id,
      name,
      version,
      construct,
      savedAt,
      platesGone: platesGone(plates),
    }));
}

/** Plates of a start that a plan begun from it would have to do without. */
export function platesGone(plates: StartOnFile['plates']): PlanStart['platesGone'] {
  return plates.flatMap(({ name, status }) => (status === 'current' ? [] : [{ name, status }]));
}
