/** Pieces an owner was asked to replace, or that came from it, of one item; `at` an ISO instant. */
export type ReplacementEvent =
  | { kind: 'asked'; at: string; order: string; pieces: number }
  | { kind: 'came'; at: string; pieces: number }
  /** Nothing more is expected on that order. */
  | { kind: 'settled'; at: string; order: string };

export interface Coming {
  order: string;
  pieces: number;
}

/**
 * What of one owner's item is still to come in replacement, by usage order, the oldest first. What comes answers the oldest
 * order that still waits; what comes while nothing is asked for answers none.
 */
export function stillToCome(events: readonly ReplacementEvent[]): Coming[] {
  const asked: Coming[] = [];
  const rank = { asked: 0, came: 1, settled: 2 };
  const inOrder = [...events].sort((a, b) => a.at.localeCompare(b.at) || rank[a.kind] - rank[b.kind]);
  for (const event of inOrder) {
    if (event.kind === 'asked') {
      asked.push({ order: event.order, pieces: event.pieces });
      continue;
    }
    if (event.kind === 'settled') {
      for (const one of asked) if (one.order === event.order) one.pieces = 0;
      continue;
    }
    let came = event.pieces;
    for (const one of asked) {
      const answered = Math.min(one.pieces, came);
      one.pieces -= answered;
      came -= answered;
    }
  }
  return asked.filter(({ pieces }) => pieces > 0);
}
