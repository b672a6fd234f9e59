import type { CaseId, PersonId, PlanId } from '../identity/ids';
import type { Construct } from './plan';

/** One version of a case's plan. A draft may still change; a confirmed or superseded one never does. */
interface VersionBase {
  id: PlanId;
  caseId: CaseId;
  version: number;
  construct: Construct;
  writtenBy: PersonId;
  writtenAt: string;
  /** Grows with every save; a write names the revision it saw. */
  revision: number;
}
export interface DraftPlan extends VersionBase {
  status: 'draft';
}
export interface FrozenPlan extends VersionBase {
  status: 'confirmed' | 'superseded';
  confirmedBy: PersonId;
  confirmedAt: string;
}
export type PlanVersion = DraftPlan | FrozenPlan;
