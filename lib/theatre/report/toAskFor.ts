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
  /** Screws of which the racks of the sets would lie below their minimum, and the shelf can't fill them again. */
  lowScrews: LowScrew[];
}

export interface LowScrew {
  itemId: ItemId;
  /** Pieces that the plans of the day state, lengths stated as a mean by the length to be expected. */
  planned: number;
  /** In the sets that the cases get; `null`: not counted in one of them. And the least that should lie in them. */
  inSets: number | null;
  minimum: number;
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
    lowScrews: lowScrews(facts, lines, ofDay, shelf),
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
  { day, sets }: DayReportFacts,
  lines: readonly CaseLine[],
  planned: readonly PlannedItems[],
  shelf: readonly ShelfFacts[],
): LowScrew[] {
  const lineOf = new Map(lines.map((line) => [line.facts.id as string, line]));
  const byCode = new Map(sets.map((set) => [set.code, set]));
  const wanted = new Map<ItemId, { planned: number; references: string[]; codes: Set<string> }>();
  for (const { caseId, implants } of planned)
    for (const { itemId, what, pieces } of implants) {
      const line = lineOf.get(caseId);
      if (what !== 'screw' || !line) continue;
      const one = wanted.get(itemId) ?? { planned: 0, references: [], codes: new Set<string>() };
      one.planned += pieces;
      one.references.push(line.facts.reference);
      for (const { code } of [...line.sets, ...line.facts.promised]) one.codes.add(code);
      wanted.set(itemId, one);
    }
  return [...wanted].flatMap(([itemId, { codes, ...one }]): LowScrew[] => {
    const racks = [...codes].flatMap((code) => byCode.get(code)?.screws.get(itemId) ?? []);
    const minimum = racks.reduce((sum, rack) => sum + rack.minimum, 0);
    const inSets = racks.some(({ found }) => found === null)
      ? null
      : racks.reduce((sum, { found }) => sum + (found ?? 0), 0);
    const { sterile, unsterile } = onShelf(shelf, itemId, day);
    const toFill = one.planned + minimum - (inSets ?? 0);
    return toFill > sterile + unsterile ? [{ itemId, ...one, inSets, minimum, sterile, unsterile }] : [];
  });
}

/** Pieces on the shelves that are neither held nor past use-by on that day. */
function onShelf(shelf: readonly ShelfFacts[], itemId: ItemId, day: PlainDate) {
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
  return { sterile: sum(true), unsterile: sum(false) };
}
