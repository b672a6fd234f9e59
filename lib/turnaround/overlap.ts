/** A stretch of time that has something; half open. */
export interface Stretch {
  fromMs: number;
  toMs: number;
}

export interface Overlap {
  /** How many stretches share one instant, at the most: as many copies as are needed, and enough. */
  most: number;
  /** The first stretch of time where that is so; `null` where there is nothing. */
  where: Stretch | null;
  /** Which of the stretches share it, by their place in the list. */
  which: number[];
}

/**
 * The largest overlap. Stretches can be given to that many copies and no fewer: each in the order of its beginning takes
 * a copy that is free (interval colouring).
 */
export function largestOverlap(stretches: readonly Stretch[]): Overlap {
  const ends = stretches
    .filter(({ fromMs, toMs }) => fromMs < toMs)
    .flatMap(({ fromMs, toMs }) => [
      { at: fromMs, step: 1 },
      { at: toMs, step: -1 },
    ])
    // what ends makes room before what begins at the same instant
    .sort((a, b) => a.at - b.at || a.step - b.step);
  let now = 0;
  let most = 0;
  let where: Stretch | null = null;
  ends.forEach(({ at, step }, place) => {
    now += step;
    if (now <= most) return;
    most = now;
    where = { fromMs: at, toMs: ends[place + 1]?.at ?? at };
  });
  const from = (where as Stretch | null)?.fromMs;
  const which = stretches.flatMap(({ fromMs, toMs }, one) =>
    from !== undefined && fromMs <= from && from < toMs ? [one] : [],
  );
  return { most, where, which };
}
