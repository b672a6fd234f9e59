import { lateMinutes } from './due';

/** One loan of a lender as its figures see it. */
export interface LoanOnRecord {
  state: string;
  dueAt: string | null;
  arrivedAt: string | null;
  /** One of its trays went through our washing. */
  processed: boolean;
  /** One of its trays was in theatre. */
  used: boolean;
}

export interface LenderFigures {
  punctuality: {
    /** Loans that arrived and of which it is known when they were due. */
    n: number;
    onTime: number;
    /** In minutes, of all n: what was in time counts as 0. `null` where n is 0. */
    medianLateMinutes: number | null;
    worstLateMinutes: number | null;
    /** Arrived, and when they were due is not established: in no figure above. */
    notEstablished: number;
    /** Due by now and not here: in no figure above, for how late they come is not known yet. */
    overdue: number;
  };
  unused: {
    /** Loans gone back that we had processed. */
    n: number;
    /** Of those, never taken to theatre. */
    unused: number;
  };
}

/**
 * How punctual a lender is, and how much was processed for nothing. Each figure with its n; with n 0 there is no share.
 * Of an even number the median is the mean of the two in the middle.
 */
export function lenderFigures(loans: readonly LoanOnRecord[], now: string): LenderFigures {
  const arrived = loans.filter(({ arrivedAt }) => arrivedAt !== null);
  const lateness = arrived
    .flatMap(({ dueAt, arrivedAt }) => lateMinutes(dueAt, arrivedAt) ?? [])
    .sort((a, b) => a - b);
  const done = loans.filter(({ state, processed }) => state === 'goneBack' && processed);
  return {
    punctuality: {
      n: lateness.length,
      onTime: lateness.filter((minutes) => minutes === 0).length,
      medianLateMinutes: median(lateness),
      worstLateMinutes: lateness.at(-1) ?? null,
      notEstablished: arrived.length - lateness.length,
      overdue: loans.filter(
        ({ state, arrivedAt, dueAt }) =>
          state === 'confirmed' && arrivedAt === null && dueAt !== null && dueAt < now,
      ).length,
    },
    unused: { n: done.length, unused: done.filter(({ used }) => !used).length },
  };
}

function median(sorted: readonly number[]): number | null {
  const middle = sorted.length / 2;
  const [below, above] = [sorted[Math.ceil(middle) - 1], sorted[Math.floor(middle)]];
  return below === undefined || above === undefined ? null : Math.floor((below + above) / 2);
}
