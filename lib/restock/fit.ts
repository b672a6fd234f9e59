import { chiSquareBeyond } from './chiSquare';
import { type DemandModel, type DemandModelKind, meanOf } from './demandModel';
import { type Counts, countsIn } from './distribution';

/** Fewest that a cell of the test must expect (Cochran 1954). */
const LEAST_EXPECTED = 5;

export interface ModelFit {
  kind: DemandModelKind;
  /** Akaike's criterion, lower is better: 2 × values taken from the record − 2 × log-likelihood. */
  aic: number;
  /** Pearson's test of the counts of the periods; `null` where the record is too short for one. */
  test: { chiSquare: number; degrees: number; p: number } | null;
}

/** How well a model of one period explains the periods of a record. */
export function fitOf(model: DemandModel, periods: readonly number[]): ModelFit {
  const counts = countsIn(model);
  const logLikelihood = periods.reduce((all, pieces) => all + Math.log(counts.at(pieces)), 0);
  return {
    kind: model.kind,
    aic: 2 * fitted(model) - 2 * logLikelihood,
    test: testOf(counts, periods, model),
  };
}

/** Values taken from the record: a mean; a mean and a variance; a rate and the shares of the sizes but one. */
function fitted(model: DemandModel): number {
  switch (model.kind) {
    case 'poisson':
      return 1;
    case 'negativeBinomial':
      return 2;
    case 'compoundPoisson':
      return model.sizes.length;
  }
}

interface Cell {
  expected: number;
  seen: number;
}

function testOf(counts: Counts, periods: readonly number[], model: DemandModel): ModelFit['test'] {
  const cells = cellsOf(counts, periods, meanOf(model));
  const degrees = cells.length - 1 - fitted(model);
  if (degrees < 1) return null;
  const chiSquare = cells.reduce((all, { expected, seen }) => all + (seen - expected) ** 2 / expected, 0);
  return { chiSquare, degrees, p: chiSquareBeyond(chiSquare, degrees) };
}

/** Counts from none up, joined to the next while too few are expected; the last one is open upwards. */
function cellsOf(counts: Counts, periods: readonly number[], mean: number): Cell[] {
  const cells: Cell[] = [];
  let from = 0;
  const beyond = (pieces: number) => periods.length * (1 - counts.upTo(pieces - 1));
  const most = Math.ceil(mean) + Math.max(...periods, 1);
  for (let upTo = 0; upTo <= most; upTo += 1) {
    const expected = periods.length * (counts.upTo(upTo) - counts.upTo(from - 1));
    if (expected < LEAST_EXPECTED || beyond(upTo + 1) < LEAST_EXPECTED) continue;
    cells.push({ expected, seen: periods.filter((pieces) => pieces >= from && pieces <= upTo).length });
    from = upTo + 1;
  }
  cells.push({ expected: beyond(from), seen: periods.filter((pieces) => pieces >= from).length });
  return cells;
}
