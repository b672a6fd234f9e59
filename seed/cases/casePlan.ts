import type { Construct } from '@/lib/plans/plan';
import type { Urgency } from '@/lib/theatre/surgicalCase';
import type { DemoTheatre } from '../hospital/building';
import type { DemoPerson } from '../hospital/people';

type WallTime = `${number}:${number}`;

/** A version of a case's plan, oldest first; only the last may be a draft or confirmed. */
export interface PlanVersionPlan {
  status: 'draft' | 'confirmed' | 'superseded';
  construct: Construct;
  /** Hours before now at which it was written; a confirmed one was confirmed ten minutes later. */
  hoursAgo: number;
  writtenBy?: DemoPerson;
}

export interface CasePlan {
  reference: string;
  /** What it is in the demo for; not stored, since a case carries no free text. */
  story: string;
  theatre: DemoTheatre;
  /** Days from today, and wall-clock times; or minutes from now. */
  when: { days: number; from: WallTime; to: WallTime } | { inMinutes: number; lasting: number };
  surgeon: DemoPerson;
  region: Construct['region'];
  limb: 'left' | 'right';
  urgency: Urgency;
  plans: PlanVersionPlan[];
  /** Codes of sets promised to it. */
  promised?: string[];
}
