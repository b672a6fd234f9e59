import type { CaseId, SetId, StockId } from '../../identity/ids';
import type { WaysToServe } from '../../kits/waysToServe';
import type { TimeSpread } from '../../turnaround/turnTime';
import type { Urgency } from '../surgicalCase';

/** What planning who gets which set is worked out from, loaded before anything is decided. */
export interface PlanningFacts {
  now: string;
  cases: CaseToServe[];
  sets: SetToGive[];
  pouches: { stockId: StockId; quantity: number }[];
  promises: { id: string; caseId: CaseId; setId: SetId; chosenBy: 'person' | 'planning' }[];
  rule: { planBy: 'p50' | 'p90'; marginMinutes: number };
}

/** A case to come that has not begun. */
export interface CaseToServe {
  id: CaseId;
  reference: string;
  theatreId: string;
  startsAt: string;
  endsAt: string;
  /** How long before its start its sets must stand in theatre. */
  leadMinutes: number;
  urgency: Urgency;
  /** How its plan can be met; `null`: it has none yet. */
  ways: WaysToServe | null;
}

export interface SetToGive {
  id: SetId;
  code: string;
  configurationId: string;
  /** Minutes from now until it can be taken; `null` where nobody can say. */
  readyMinutes: TimeSpread | null;
  /** Minutes from the end of a case until it stands in the sterile store again. */
  turnMinutes: TimeSpread;
}
