import type { SetTurnaroundOutput } from '../../calculations/setTurnaround/output';
import type { CaseId, ItemId, SetId } from '../../identity/ids';
import type { PlainDate } from '../../quantities/plainDate';
import type { TurnStep } from '../../sets/setState';
import type { Stop } from '../../sets/standing';
import type { StockForm } from '../../stock/stock';
import type { NextAct } from '../../turns/queue';
import type { PlanningFacts } from '../planning/facts';

/** A case of the day as it is booked, with its promises. */
export interface DayCaseFacts {
  id: CaseId;
  reference: string;
  theatreId: string;
  theatre: string;
  startsAt: string;
  endsAt: string;
  caseDate: PlainDate;
  surgeon: string;
  cancelled: object | null;
  plan: { confirmedVersion: number | null; draftVersion: number | null };
  promised: { setId: string; code: string; inUse: boolean; outOfService: boolean }[];
}

/** A set in service as far as a report speaks of it. */
export interface DaySetFacts {
  id: SetId;
  code: string;
  configuration: string;
  step: TurnStep;
  since: string;
  heldBecause: string | null;
  useBy: PlainDate | null;
  /** What is done next with it; `null` in the sterile store. */
  act: NextAct | null;
  load: { id: string; number: string } | null;
  /** A count of it that somebody has begun and not closed. */
  count: { by: string; beganAt: string } | null;
  /** What its shortage stops. */
  stops: readonly Stop[];
  /** Screws in it by item: what was found, `null` where a line is not counted, and the least there should be. */
  screws: ReadonlyMap<ItemId, { found: number | null; minimum: number }>;
  /** A must-have is below its minimum and nothing stands in for it. */
  mustHaveShort: boolean;
}

/** What the plans of a day take and may take, for what must be asked for the day before. */
export interface PlannedItems {
  caseId: CaseId;
  /** Pieces that stay in the patient: the item first in mind, and how many of it. */
  implants: { itemId: ItemId; what: 'plate' | 'screw' | 'washer' | 'wire'; pieces: number }[];
  /** Everything that would serve somewhere in the plan. */
  serves: ReadonlySet<ItemId>;
}

/** A heap on a shelf. */
export interface ShelfFacts {
  itemId: ItemId;
  form: StockForm;
  quantity: number;
  lot: string | null;
  useBy: PlainDate | null;
  place: string;
  heldBecause: string | null;
}

export interface DayReportFacts {
  now: string;
  day: PlainDate;
  cases: readonly DayCaseFacts[];
  planning: PlanningFacts;
  answer: SetTurnaroundOutput | null;
  sets: readonly DaySetFacts[];
}
