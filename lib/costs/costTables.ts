import { COST_PARTS } from '../calculations/caseCost/caseCost';
import type { FigureTable } from '../documents/figureTable';
import { monthWords, wasteCodeWords, costsWords as words } from '../wording/costs';
import { REGION_WORDS } from '../wording/plans';
import type { CostedCase } from './costedCase';
import { type CostGroup, costGroup, costGroups, costsBySet, type SetCost, wasteByReason } from './groups';
import { keptOf } from './keptOf';

export const COST_TABLES = ['months', 'reasons', 'procedures', 'sets', 'cases'] as const;
export type CostTable = (typeof COST_TABLES)[number];

/** What the hospital calls the operation; where no card began the case, its region. */
export function procedureOf({ procedure, region }: Pick<CostedCase, 'procedure' | 'region'>): string {
  return procedure ?? words.noProcedure(REGION_WORDS[region as keyof typeof REGION_WORDS] ?? region);
}

/** Figures of a report as its charts and tables have them, each worked out once of the same cases. */
export const costFigures = {
  all: (cases: readonly CostedCase[]): CostGroup => keptOf(cases, 'all', () => costGroup('all', cases)),
  /** In the order of the months. */
  months: (cases: readonly CostedCase[]): readonly CostGroup[] =>
    keptOf(cases, 'months', () => costGroups(cases, ({ on }) => on.slice(0, 7))),
  /** Those with the most cases first. */
  procedures: (cases: readonly CostedCase[]): readonly CostGroup[] =>
    keptOf(cases, 'procedures', () => costGroups(cases, procedureOf).sort((a, b) => b.cases - a.cases)),
  sets: (cases: readonly CostedCase[]): readonly SetCost[] => keptOf(cases, 'sets', () => costsBySet(cases)),
  waste: (cases: readonly CostedCase[]): ReturnType<typeof wasteByReason> =>
    keptOf(cases, 'waste', () => wasteByReason(cases)),
};

const PART_COLUMNS = COST_PARTS.map((part) => ({ header: words.parts[part], kind: 'pence' as const }));

/**
 * The figures of the cost report as tables, for the charts and for files. None names a person: whose cases cost what is shown
 * to that surgeon alone.
 */
export function costTable(
  which: CostTable,
  cases: readonly CostedCase[],
  nameOf: (configurationId: string) => string,
): FigureTable {
  const head = { name: `costs-${which}`, caption: words.tables[which] };
  switch (which) {
    case 'months':
      return {
        ...head,
        columns: [
          { header: 'Month', kind: 'text' },
          { header: 'Cases', kind: 'number' },
          { header: 'Of known cost', kind: 'number' },
          ...PART_COLUMNS,
          { header: 'Share of waste', kind: 'share' },
        ],
        rows: costFigures
          .months(cases)
          .map((group) => [
            monthWords(group.key),
            group.cases,
            group.whole,
            ...COST_PARTS.map((part) => group.parts[part]),
            group.wasteShare,
          ]),
      };
    case 'reasons':
      return {
        ...head,
        columns: [
          { header: 'Reason', kind: 'text' },
          { header: 'Pieces', kind: 'number' },
          { header: 'Wasted', kind: 'pence' },
          { header: 'Pieces without a price', kind: 'number' },
        ],
        rows: costFigures
          .waste(cases)
          .map(({ code, pieces, pence, unknown }) => [wasteCodeWords(code), pieces, pence, unknown]),
      };
    case 'procedures':
      return {
        ...head,
        columns: [
          { header: 'Procedure', kind: 'text' },
          { header: 'Cases', kind: 'number' },
          { header: 'Of known cost', kind: 'number' },
          { header: 'A case, on average', kind: 'pence' },
          { header: 'A quarter cost less than', kind: 'pence' },
          { header: 'Half cost less than', kind: 'pence' },
          { header: 'A quarter cost more than', kind: 'pence' },
          { header: 'Wasted', kind: 'pence' },
          { header: 'Share of waste', kind: 'share' },
        ],
        rows: costFigures
          .procedures(cases)
          .map((group) => [
            group.key,
            group.cases,
            group.whole,
            group.meanPence,
            group.lowerPence,
            group.medianPence,
            group.upperPence,
            group.parts.wasted,
            group.wasteShare,
          ]),
      };
    case 'sets':
      return {
        ...head,
        columns: [
          { header: 'Set configuration', kind: 'text' },
          { header: 'Turns', kind: 'number' },
          { header: 'Implanted from it', kind: 'pence' },
          { header: 'Wasted from it', kind: 'pence' },
          { header: 'Wasted a turn', kind: 'pence' },
          { header: 'Pieces without a price', kind: 'number' },
        ],
        rows: costFigures
          .sets(cases)
          .map(({ configurationId, turns, implantedPence, wastedPence, unknown }) => [
            nameOf(configurationId),
            turns,
            implantedPence,
            wastedPence,
            turns === 0 ? null : wastedPence / turns,
            unknown,
          ]),
      };
    case 'cases':
      return {
        ...head,
        columns: [
          { header: 'Case', kind: 'text' },
          { header: 'Day', kind: 'text' },
          { header: 'Procedure', kind: 'text' },
          ...PART_COLUMNS,
          { header: 'Cost', kind: 'pence' },
          { header: 'Every price known', kind: 'text' },
          { header: 'Share of waste', kind: 'share' },
        ],
        rows: [...cases]
          .reverse()
          .map((one) => [
            one.reference,
            one.on,
            procedureOf(one),
            ...COST_PARTS.map((part) => one.cost[part].pence),
            one.cost.totalPence,
            one.whole ? 'yes' : 'no: at least this',
            one.cost.wasteShare,
          ]),
      };
  }
}
