import type { Hole } from '../catalogue/hole';
import type {
  Countersink,
  Coupling,
  DepthGauge,
  DrillBit,
  DrillingPosition,
  DrillSleeve,
  Driver,
  GuideWire,
  Handle,
  Item,
  Plate,
  Screw,
  SleeveEnd,
  Tap,
  TorqueLimiter,
} from '../catalogue/item';
import type { Finding } from './finding';

/** How a screw is to be used; absent in a question that is not about a plan. */
export interface ScrewUse {
  purpose: 'neutral' | 'offset' | 'lag' | 'locked';
  cortices: 1 | 2;
}

/** A sleeve takes part by one of its ends. */
export interface SleeveByEnd {
  sleeve: DrillSleeve;
  end: SleeveEnd;
  endIndex: number;
}

/** An item with a shank that goes into a handle or a limiter. */
export type Shanked = Extract<Item, { coupling: Coupling | null }>;

/** One thing asked of the rules. Each relation has its own participants. */
export type Question =
  | { relation: 'seats'; screw: Screw; hole: Hole; plate: Plate | null; use: ScrewUse | null }
  | {
      relation: 'guides';
      by: SleeveByEnd;
      /** What it is to sit on. */
      seat:
        | { on: 'hole'; hole: Hole; plate: Plate | null }
        | { on: 'bone' }
        | { on: 'glidingHole'; diameterUm: number | null };
      position: DrillingPosition | null;
    }
  | { relation: 'passes'; tool: DrillBit | GuideWire; by: SleeveByEnd }
  | { relation: 'pilots'; bit: DrillBit; screw: Screw }
  | { relation: 'glides'; bit: DrillBit; screw: Screw }
  | { relation: 'taps'; tap: Tap; screw: Screw }
  | { relation: 'countersinks'; countersink: Countersink; screw: Screw }
  | { relation: 'measures'; gauge: DepthGauge; screw: Screw; use: ScrewUse | null }
  | { relation: 'turns'; driver: Driver; screw: Screw }
  | { relation: 'joins'; shank: Shanked; socket: Handle | TorqueLimiter }
  | { relation: 'limits'; limiter: TorqueLimiter; screw: Screw }
  | { relation: 'wearsWith'; first: Item; second: Item }
  | { relation: 'sides'; plate: Plate; limb: 'left' | 'right' };

export type Outcome = 'fits' | 'doesNotFit' | 'notEstablished';

/** The answer to one question, with every reason for it. */
export interface Verdict {
  relation: Question['relation'];
  outcome: Outcome;
  /** All rules that governed the question, met or not, in the rules' own stable order. */
  findings: Finding[];
}
