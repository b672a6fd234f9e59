import negativeBinomial from '@stdlib/stats-base-dists-negative-binomial-pmf';
import poisson from '@stdlib/stats-base-dists-poisson-pmf';

/**
 * Chances that 0, 1, … `most` units are asked for over a stretch with this mean. Above a Poisson's variance, the negative
 * binomial with the same variance to mean for every stretch, so that stretches add up.
 */
function asked(mean: number, varianceToMean: number, most: number): Float64Array {
  const chances = new Float64Array(most + 1);
  // what is asked for once in a trillion shelves is nothing; so small a number the library cannot take
  if (mean < 1e-12) {
    chances[0] = 1;
    return chances;
  }
  for (let k = 0; k <= most; k += 1)
    chances[k] =
      varianceToMean === 1
        ? poisson(k, mean)
        : negativeBinomial(k, mean / (varianceToMean - 1), 1 / varianceToMean);
  return chances;
}

/** What is left of a shelf after a stretch: from the chances of 0, 1, … units before it, those after it. */
export function afterStretch(left: Float64Array, mean: number, varianceToMean: number): Float64Array {
  const most = left.length - 1;
  const demand = asked(mean, varianceToMean, most);
  const after = new Float64Array(most + 1);
  for (let before = 0; before <= most; before += 1) {
    const chance = left[before] ?? 0;
    if (chance === 0) continue;
    let kept = 0;
    for (let units = 1; units <= before; units += 1) {
      const share = demand[before - units] ?? 0;
      after[units] = (after[units] ?? 0) + chance * share;
      kept += share;
    }
    // everything that asks for at least what is there leaves nothing
    after[0] = (after[0] ?? 0) + chance * Math.max(0, 1 - kept);
  }
  return after;
}
