import type { CaseId, ConfigurationId, SetId, StockId } from '../../identity/ids';
import type { WaysToServe } from '../../kits/waysToServe';
import type { TimeSpread } from '../../turnaround/turnTime';
import type { Urgency } from '../surgicalCase';

/** What planning who gets which set is worked out from, loaded before anything is decided. */
export interface PlanningFacts {
  now: string;
  cases: CaseToServe[];
  sets: SetToGive[];
  /** Every kind of set, with the stages of a turn from the end of a case to the sterile store. */
  configurations: {
    id: ConfigurationId;
    name: string;
    stages: { stage: string; p50Minutes: number; p90Minutes: number }[];
  }[];
  pouches: { stockId: StockId; quantity: number }[];
  promises: FactOfPromise[];
  rule: { planBy: 'p50' | 'p90'; marginMinutes: number };
}

export interface FactOfPromise {
  id: string;
  caseId: CaseId;
  setId: SetId;
  chosenBy: 'person' | 'planning';
  /** From when until when the set is spoken for, as ISO instants; the end itself is free again. */
  fromAt: string;
  untilAt: string;
}

/** A case to come that has not begun. */
export interface CaseToServe {
  id: CaseId;
  reference: string;
  /** Grows with every change; an act names the revision it saw. */
  revision: number;
  theatreId: string;
  startsAt: string;
  endsAt: string;
  /** How long before its start its sets must stand in theatre. */
  leadMinutes: number;
  urgency: Urgency;
  /** How its plan can be met; `null`: it has none yet. */
  ways: WaysToServe | null;
  /** A surgeon has confirmed the plan. */
  confirmed: boolean;
}

export interface SetToGive {
  id: SetId;
  code: string;
  revision: number;
  /** The name of its configuration. */
  configuration: string;
  /** Minutes from now until it can be taken; `null` where nobody can say. */
  readyMinutes: TimeSpread | null;
  /** In the sterile store now. A set whose usual time is over and that nobody has moved on is not. */
  inStore: boolean;
}
