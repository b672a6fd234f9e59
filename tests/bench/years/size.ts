/** How large the hospital is. Ten years of it: 1.5 million turns, 12 million ledger entries, 200,000 cases. */
export interface Size {
  years: number;
  items: number;
  sets: number;
  linesPerSet: number;
  casesPerYear: number;
  setsPerCase: number;
}

export const TEN_YEARS: Size = {
  years: 10,
  items: 2_000,
  sets: 3_000,
  linesPerSet: 80,
  casesPerYear: 20_000,
  setsPerCase: 7.5,
};

/** The day after the record ends. */
export const YEARS_END = Date.parse('2026-01-14T06:00:00Z');
