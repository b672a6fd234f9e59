import type { Outcome, Refusal } from '../identity/refusal';
import type { PlanVersion } from './planVersion';

export { refused, refusedFor } from '../identity/refusal';

/** Why a write to a plan was refused, with the plan as it stands. */
export type PlanRefusal = Refusal<PlanVersion>;
export type PlanOutcome<T> = Outcome<T, PlanVersion>;
