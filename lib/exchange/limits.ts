/** The longest file that is read, its most rows under the headings, and its most columns. */
export const EXCHANGE_LIMITS = { bytes: 4_000_000, rows: 10_000, columns: 200, cells: 600_000 } as const;
