import type { Item } from '../catalogue/item';
import { type Design, designsOf, questionOf, restrictedPlates, TABLE_AXES, THINGS } from './designs';
import type { FitEngine } from './engine';
import type { Verdict } from './question';
import type { Relation } from './rule';

/** Every row of a catalogue against every column, one relation. */
export interface FitTable {
  relation: Relation;
  rows: Design[];
  columns: Design[];
  /** By row, then column: the verdict for the first of each, which holds for all of both. */
  verdicts: Verdict[][];
}

/** How many pairs of catalogue entries one cell stands for. */
export const pairsIn = (row: Design, column: Design): number => row.things.length * column.things.length;

/**
 * The fit table of one relation over `catalogue` (hand in the current items only, if only those matter).
 * Things that no rule can tell apart share a row or a column, so the table stays readable and is exact.
 */
export function fitTable(engine: FitEngine, catalogue: readonly Item[], relation: Relation): FitTable {
  const axes = TABLE_AXES[relation];
  const plates = restrictedPlates(catalogue);
  const rows = designsOf(engine, relation, THINGS[axes.rows](catalogue), plates);
  const columns = designsOf(engine, relation, THINGS[axes.columns](catalogue), plates);
  const verdicts = rows.map((row) =>
    columns.map((column) => engine.ask(questionOf(relation, row.things[0], column.things[0]))),
  );
  return relation === 'measures'
    ? withoutLengths(rows, columns, verdicts)
    : { relation, rows, columns, verdicts };
}

/**
 * Gauges tell lengths apart, which would give every screw a row. Screws of one family that get the same answers from
 * the same rules share one; its sentences then speak of the first of them.
 */
function withoutLengths(rows: Design[], columns: Design[], verdicts: Verdict[][]): FitTable {
  const merged = new Map<string, { row: Design; verdicts: Verdict[] }>();
  rows.forEach((row, index) => {
    const own = verdicts[index] ?? [];
    const [first] = row.things;
    const family = first.is === 'screw' ? first.screw.screwFamily : row.key;
    const key = JSON.stringify([family, own.map(answers)]);
    const before = merged.get(key);
    if (before) before.row.things.push(...row.things);
    else merged.set(key, { row: { key, things: [...row.things] }, verdicts: own });
  });
  const groups = [...merged.values()];
  return {
    relation: 'measures',
    rows: groups.map(({ row }) => row),
    columns,
    verdicts: groups.map((one) => one.verdicts),
  };
}

const answers = ({ outcome, findings }: Verdict) => [
  outcome,
  findings.map(({ from, answer }) => [from, answer]),
];
