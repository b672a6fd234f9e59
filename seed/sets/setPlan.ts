import type { HeldBecause, PieceCondition, TurnStep } from '@/lib/sets/setState';
import type { DemoPlace } from '../hospital/building';
import type { DemoPerson } from '../hospital/people';

/** What is there of one line, where it is not simply all of it. */
export interface Found {
  found: number;
  unsound?: number;
  condition?: PieceCondition;
}

/** One physical set as it is when the demo is loaded. */
export interface SetPlan {
  code: string;
  configuration: string;
  /** Which version it was last made up to; the one in force unless told. */
  version?: number;
  step: TurnStep;
  /** Hours ago it came to that step. */
  hoursInStep: number;
  heldBecause?: HeldBecause;
  /** Days from today and wall-clock time at which it will be in the sterile store. */
  ready?: [days: number, time: `${number}:${number}`];
  /** Minutes from now, where it is close to ready. */
  readyInMinutes?: number;
  useByDays?: number;
  place: DemoPlace | null;
  owner?: 'loan';
  ownerNote?: string;
  /** By item code; all other lines are whole and sound. */
  short?: Record<string, Found>;
  foreign?: { code: string; quantity: number; note: string | null }[];
  countedBy?: DemoPerson;
  /** A second person's count that found something else. */
  secondCount?: { by: DemoPerson; short: Record<string, Found> };
  /** What let it be packed short in class 1 or 2, after it waited for that decision. */
  sentShort?: {
    /** Items whose pouches travel with it, by code. */
    standIns?: string[];
    /** Reference of the one case it goes for. */
    forCase?: string;
    /** Those who stood for it, in the order in which the table of short sets names them. */
    by: DemoPerson[];
    reason: string;
  };
  /** Never counted since it came, so nothing is known to be in it: a loan just arrived. */
  neverCounted?: true;
}
