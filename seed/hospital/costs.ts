/**
 * What things cost at the demo hospital, invented, in pence; keeping and pouching as in the worked example of the set review.
 * The hospital has stated them, so that its reviews and reports are worked out.
 */
export const COSTS = {
  keepPencePerPiece: 40,
  pouchPence: 84,
  fetchMinutes: 3,
  theatrePencePerMinute: 2_000,
  trayPence: 3_500,
} as const;
