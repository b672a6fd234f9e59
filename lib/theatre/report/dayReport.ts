import type { DayReportFacts, DaySetFacts, PlannedItems, ShelfFacts } from './facts';
import { type FirstStep, firstSteps } from './firstSteps';
import { type Bucket, bucketCounts, type CaseLine, caseLines } from './lines';
import { type ToAskFor, toAskFor } from './toAskFor';
import {
  type LackingSet,
  lackingSets,
  type TurnedBetween,
  turnedBetween,
  type WantedSet,
  wantedSets,
} from './wantedSets';

/** A day of the theatre list as its report tells it: findings, no words yet. */
export interface DayReport {
  day: DayReportFacts['day'];
  now: string;
  counts: Record<Bucket, number>;
  /** By theatre, then time. */
  lines: CaseLine[];
  steps: FirstStep[];
  /** Still on their way, by when they are needed. */
  onTheWay: WantedSet[];
  lacking: LackingSet[];
  turned: TurnedBetween[];
  /** `null` in the report of the morning. */
  ask: ToAskFor | null;
}

/**
 * The report of a day.
 *
 * @param tomorrow what the plans take and what is on the shelves, for the report of the day before; `null` in the morning
 */
export function dayReport(
  facts: DayReportFacts,
  tomorrow: { planned: readonly PlannedItems[]; shelf: readonly ShelfFacts[] } | null,
): DayReport {
  const lines = caseLines(facts);
  const open = lines.filter(({ bucket }) => bucket !== 'over' && bucket !== 'begun');
  const wanted = wantedSets(facts, open).sort(
    (a, b) => (a.needByAt ?? '9').localeCompare(b.needByAt ?? '9') || a.set.code.localeCompare(b.set.code),
  );
  const turned = turnedBetween(facts, open);
  return {
    day: facts.day,
    now: facts.now,
    counts: bucketCounts(lines),
    lines,
    steps: firstSteps(facts, lines, wanted, turned).filter(
      // the day before, they are among what is asked for
      ({ kind }) => tomorrow === null || (kind !== 'plan' && kind !== 'confirmPlan'),
    ),
    onTheWay: wanted.filter(({ set }) => moves(set)),
    lacking: lackingSets(facts, open),
    turned,
    ask: tomorrow && toAskFor(facts, lines, tomorrow.planned, tomorrow.shelf),
  };
}

/** Held, it is on no way. */
const moves = ({ step }: DaySetFacts): boolean => step !== 'held';
