/**
 * A plain integer programme and the port through which it is solved. The core states the programme;
 * the adapter outside `lib` runs it.
 */
export interface IntegerProgramme {
  /** Minimised; one coefficient per variable. */
  objective: number[];
  /** Bounds per variable; `null` above is unbounded. */
  lower: number[];
  upper: (number | null)[];
  /** True where the variable must be whole. */
  integer: boolean[];
  /** `lower ≤ Σ coefficient · variable ≤ upper`; `null` is unbounded on that side. */
  constraints: Constraint[];
  /** A feasible answer known beforehand; `null` for values that the solver is to work out from the rest. */
  startFrom: (number | null)[] | null;
}

export interface Constraint {
  variables: number[];
  coefficients: number[];
  lower: number | null;
  upper: number | null;
}

export type SolverAnswer =
  /** Proven to be the best. */
  | { status: 'optimal'; values: number[]; objective: number; gap: 0 }
  /** The time ran out: the best found, and how far from the bound it may be (0.03 is 3 %). */
  | { status: 'timeLimit'; values: number[]; objective: number; gap: number }
  /** The time ran out before any answer was found. */
  | { status: 'nothingFound' }
  | { status: 'infeasible' };

export interface SolverOptions {
  timeLimitMs: number;
  /**
   * Whether the solver first looks for what it can leave out. To be switched off for a programme that is lean already: long
   * rows over thousands of variables then cost more to look through than to solve.
   */
  presolve?: boolean;
}

/** Solves one programme. Rejects only on a fault of the solver itself, never for a hard instance. */
export type Solver = (programme: IntegerProgramme, options: SolverOptions) => Promise<SolverAnswer>;
