/** Figures others have published on how much of a set is used; shown beside our own, never decided by. */
export const PUBLISHED_USE = {
  /** Share of the instruments of a set that a case uses, from the lowest specialty to the highest. */
  shareUsed: {
    lowest: 0.13,
    highest: 0.219,
    source: 'Stockert & Langerman, J Am Coll Surg 2014;219:646',
  },
  /** What it costs to have one instrument in a set once more, at least; United States dollars. */
  leastDollarsPerInstrument: { dollars: 0.51, source: 'Stockert & Langerman, J Am Coll Surg 2014;219:646' },
  /** A pouch costs less than a place in the set below a use rate of 0.34 ÷ 0.81 to 0.47 ÷ 0.84. */
  pouchBelow: {
    lowest: 0.34 / 0.81,
    highest: 0.47 / 0.84,
    source: 'Mhlaba et al., J Hosp Admin 2015',
  },
} as const;
