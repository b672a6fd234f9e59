/**
 * The shared offset is integrated by the trapezoidal rule over the standard normal density, on [−6, 6] standard
 * deviations (what is left out is below 2 × 10⁻⁹). For a smooth integrand this rule converges faster than any power of
 * the step; halving it re-uses every node and shows how far the figure still moves.
 */
const REACH = 6;
const COARSEST_STEP = 1;
const MOST_HALVINGS = 6;
const CONVERGED = 1e-6;
/** What lies beyond the reach adds no more than this. */
const LEFT_OUT = 2e-9;
const SMOOTH = 1 / 3;

export interface Node {
  /** Shared offset, in standard deviations. */
  z: number;
  weight: number;
}

/** Nodes and weights at step `2^−halvings`; the weights add up to 1. */
export function offsetNodes(halvings: number): Node[] {
  const step = COARSEST_STEP / 2 ** halvings;
  const count = Math.round(REACH / step);
  const nodes = Array.from({ length: 2 * count + 1 }, (_, at) => {
    const z = (at - count) * step;
    return { z, weight: Math.exp((-z * z) / 2) };
  });
  const total = nodes.reduce((sum, { weight }) => sum + weight, 0);
  return nodes.map(({ z, weight }) => ({ z, weight: weight / total }));
}

/**
 * Halves the step until the error is estimated to be no more than 10⁻⁶.
 *
 * Where every hole's own spread is at least a third of the shared one, the integrand is a smooth bell whose error shrinks
 * to its fourth power with each halving; the square of the last movement is then a careful estimate. Elsewhere the last
 * movement itself is taken.
 *
 * @param smoothness smallest own spread ÷ shared spread
 * @returns the nodes to go on with, and the estimated error of the figure
 */
export function convergedNodes(
  figureAt: (z: number) => number,
  smoothness: number,
): { nodes: Node[]; convergence: number } {
  const known = new Map<number, number>();
  const figure = (nodes: readonly Node[]) =>
    nodes.reduce((sum, { z, weight }) => {
      const value = known.get(z) ?? figureAt(z);
      known.set(z, value);
      return sum + weight * value;
    }, 0);
  let nodes = offsetNodes(0);
  let before = figure(nodes);
  let convergence = Number.POSITIVE_INFINITY;
  for (let halvings = 1; halvings <= MOST_HALVINGS && convergence > CONVERGED; halvings += 1) {
    nodes = offsetNodes(halvings);
    const now = figure(nodes);
    const movement = Math.abs(now - before);
    convergence = smoothness >= SMOOTH ? Math.min(movement, movement ** 2) : movement;
    before = now;
  }
  return { nodes, convergence: Math.max(convergence, LEFT_OUT) };
}
