import type { ItemId } from '../../identity/ids';
import { isPastUseBy, type PlainDate } from '../../quantities/plainDate';
import type { DayReportFacts, PlannedItems, ShelfFacts } from './facts';
import type { CaseLine } from './lines';

/** What must be asked for today, for a day to come. */
export interface ToAskFor {
  /** Cases that no plan is stated for. */
  notPlanned: CaseLine[];
  /** Cases with a draft that waits for the surgeon, whether or not an older version is confirmed. */
  notConfirmed: { line: CaseLine; newerDraft: boolean }[];
  /** Sets in the sterile store that a case counts on and that are past use-by on its day. */
  setsPastUseBy: { id: string; code: string; useBy: PlainDate; references: string[] }[];
  /** Pouches and sterile-packed pieces that would serve in a plan of the day, past use-by on it. */
  packsPastUseBy: (ShelfFacts & { useBy: PlainDate; references: string[] })[];
  /** Screws of which the shelf has fewer than the plans of the day take. */
  lowScrews: LowScrew[];
}

export interface LowScrew {
  itemId: ItemId;
  /** Pieces that the plans of the day state, lengths stated as a mean by the length to be expected. */
  planned: number;
  /** In date on the day, not held: sterile by itself, and to be put into racks. */
  sterile: number;
  unsterile: number;
  references: string[];
}

export function toAskFor(
  facts: DayReportFacts,
  lines: readonly CaseLine[],
  planned: readonly PlannedItems[],
  shelf: readonly ShelfFacts[],
): ToAskFor {
  const referenceOf = new Map(lines.map(({ facts: { id, reference } }) => [id as string, reference]));
  const ofDay = planned.filter(({ caseId }) => referenceOf.has(caseId));
  const open = lines.filter(({ bucket }) => bucket !== 'over' && bucket !== 'begun');
  return {
    notPlanned: open.filter(
      ({ facts: { plan } }) => plan.confirmedVersion === null && plan.draftVersion === null,
    ),
    notConfirmed: open.flatMap((line) => {
      const { confirmedVersion, draftVersion } = line.facts.plan;
      return draftVersion === null ? [] : [{ line, newerDraft: confirmedVersion !== null }];
    }),
    setsPastUseBy: setsPastUseBy(facts, open),
    packsPastUseBy: shelf
      .flatMap((heap) => {
        const { useBy } = heap;
        if (heap.form === 'unsterile' || heap.quantity === 0 || useBy === null) return [];
        if (!isPastUseBy(useBy, facts.day)) return [];
        const references = ofDay
          .filter(({ serves }) => serves.has(heap.itemId))
          .map(({ caseId }) => referenceOf.get(caseId) as string);
        return references.length === 0 ? [] : [{ ...heap, useBy, references }];
      })
      .sort((a, b) => a.useBy.localeCompare(b.useBy)),
    lowScrews: lowScrews(facts.day, ofDay, shelf, referenceOf),
  };
}

function setsPastUseBy({ sets, day }: DayReportFacts, lines: readonly CaseLine[]): ToAskFor['setsPastUseBy'] {
  return sets.flatMap(({ id, code, step, useBy }) => {
    if (step !== 'inSterileStore' || useBy === null || !isPastUseBy(useBy, day)) return [];
    const references = lines
      .filter(({ facts, sets: gets }) => [...facts.promised, ...gets].some((set) => set.code === code))
      .map(({ facts }) => facts.reference);
    return references.length === 0 ? [] : [{ id, code, useBy, references }];
  });
}

function lowScrews(
  day: PlainDate,
  planned: readonly PlannedItems[],
  shelf: readonly ShelfFacts[],
  referenceOf: ReadonlyMap<string, string>,
): LowScrew[] {
  const wanted = new Map<ItemId, { planned: number; references: string[] }>();
  for (const { caseId, implants } of planned)
    for (const { itemId, what, pieces } of implants) {
      if (what !== 'screw') continue;
      const one = wanted.get(itemId) ?? { planned: 0, references: [] };
      one.planned += pieces;
      one.references.push(referenceOf.get(caseId) as string);
      wanted.set(itemId, one);
    }
  return [...wanted].flatMap(([itemId, one]): LowScrew[] => {
    const good = shelf.filter(
      (heap) =>
        heap.itemId === itemId &&
        heap.heldBecause === null &&
        (heap.useBy === null || !isPastUseBy(heap.useBy, day)),
    );
    const sum = (sterile: boolean) =>
      good
        .filter(({ form }) => (form !== 'unsterile') === sterile)
        .reduce((pieces, { quantity }) => pieces + quantity, 0);
    const [sterile, unsterile] = [sum(true), sum(false)];
    return sterile + unsterile < one.planned ? [{ itemId, ...one, sterile, unsterile }] : [];
  });
}
