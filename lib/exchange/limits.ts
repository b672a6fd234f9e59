/**
 * The longest file that is read, its most rows under the headings, and its most columns and cells. `changes`: the most things
 * that are added or changed at once, for while they are, everybody else’s writes wait.
 */
export const EXCHANGE_LIMITS = {
  bytes: 4_000_000,
  rows: 10_000,
  columns: 200,
  cells: 600_000,
  changes: 2_000,
} as const;
