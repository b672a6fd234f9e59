import type { FamilyCase } from './needs';
import type { Sweep } from './sweep';

// chances below this change the cover by less than 1e-9 even with forty holes and forty lengths
const NEGLIGIBLE = 1e-13;

/**
 * Weights of all that may have happened so far, state after state: `at[state * holeStates + decided]`, where `decided`
 * counts the holes whose length is known, group by group (a number with one digit per group). States are outermost, so
 * that the inner loops run along the array.
 */
interface Weights {
  at: Float64Array;
  holeStates: number;
  states: number;
}

/**
 * Probability that the pieces suffice for one family: sums over every way the holes can turn out.
 *
 * @param chances per group, the chance of each length
 * @param notImplanted chance that an opened screw is not implanted, so that the same hole needs another
 */
export function runSweep(
  family: FamilyCase,
  sweep: Sweep,
  chances: readonly (readonly number[])[],
  notImplanted: number,
): number {
  const strides: number[] = [];
  let holeStates = 1;
  for (const { size } of family.groups) {
    strides.push(holeStates);
    holeStates *= size + 1;
  }
  const weights: Weights = { at: new Float64Array(holeStates), holeStates, states: 1 };
  weights.at[0] = 1;
  for (const step of sweep.steps) {
    if (step.kind === 'move') {
      move(weights, step.to, step.states);
      continue;
    }
    widen(weights, step.states);
    for (const [group, { size, windows }] of family.groups.entries()) {
      let chance = 0;
      for (const [length, { first, last }] of windows.entries()) {
        if (first === step.release && last === step.due) chance += chances[group]?.[length] ?? 0;
      }
      if (chance < NEGLIGIBLE) continue;
      const stride = strides[group] ?? 1;
      if (size === 1 && notImplanted === 0) arriveAlone(weights, step.once, stride, chance);
      else arriveAlike(weights, step.once, { stride, size, chance, notImplanted });
    }
  }
  let sum = 0;
  for (let state = 0; state < weights.states; state += 1)
    sum += weights.at[(state + 1) * holeStates - 1] as number;
  return Math.min(1, sum);
}

function move(weights: Weights, to: Int32Array, states: number): void {
  const { at: from, holeStates } = weights;
  const result = new Float64Array(holeStates * states);
  for (let state = 0; state < to.length; state += 1) {
    const target = to[state] as number;
    if (target < 0) continue;
    const shift = (target - state) * holeStates;
    const end = (state + 1) * holeStates;
    for (let place = state * holeStates; place < end; place += 1) {
      result[place + shift] = (result[place + shift] as number) + (from[place] as number);
    }
  }
  weights.at = result;
  weights.states = states;
}

/** Room for the states that arrivals can reach; those there already come first, in their order. */
function widen(weights: Weights, states: number): void {
  if (states === weights.states) return;
  const result = new Float64Array(weights.holeStates * states);
  result.set(weights.at);
  weights.at = result;
  weights.states = states;
}

/** One hole of its own kind: it either needs this length, or is decided at another. */
function arriveAlone(
  { at, holeStates, states }: Weights,
  once: Int32Array,
  stride: number,
  chance: number,
): void {
  for (let state = 0; state < states; state += 1) {
    const target = once[state] as number;
    if (target < 0) continue;
    const shift = (target - state) * holeStates + stride;
    const end = (state + 1) * holeStates;
    for (let block = state * holeStates; block < end; block += 2 * stride) {
      for (let place = block; place < block + stride; place += 1) {
        at[place + shift] = (at[place + shift] as number) + chance * (at[place] as number);
      }
    }
  }
}

/** Several holes alike, or screws that may be opened in vain: `holes` arrive and ask for that many pieces or more. */
function arriveAlike(
  weights: Weights,
  once: Int32Array,
  group: { stride: number; size: number; chance: number; notImplanted: number },
): void {
  const { size, chance, notImplanted } = group;
  // from the top, so that what has just arrived is not counted again
  for (let decided = size - 1; decided >= 0; decided -= 1) {
    const open = size - decided;
    let ways = 1;
    for (let holes = 1; holes <= open; holes += 1) {
      ways *= ((open - holes + 1) / holes) * chance;
      if (ways < NEGLIGIBLE) break;
      for (let state = 0; state < weights.states; state += 1) {
        let target = state;
        for (let piece = 0; piece < holes && target >= 0; piece += 1) target = once[target] as number;
        // pieces opened until so many are implanted: negative binomial
        let odds = ways * (1 - notImplanted) ** holes;
        for (let pieces = holes; target >= 0 && odds > NEGLIGIBLE; pieces += 1) {
          addAlike(weights, { state, target, decided, holes, odds }, group);
          if (notImplanted === 0) break;
          odds *= (pieces / (pieces - holes + 1)) * notImplanted;
          target = once[target] as number;
        }
      }
    }
  }
}

function addAlike(
  { at, holeStates }: Weights,
  step: { state: number; target: number; decided: number; holes: number; odds: number },
  { stride, size }: { stride: number; size: number },
): void {
  const { state, target, decided, holes, odds } = step;
  const shift = (target - state) * holeStates + holes * stride;
  const end = (state + 1) * holeStates;
  for (let block = state * holeStates + decided * stride; block < end; block += stride * (size + 1)) {
    for (let place = block; place < block + stride; place += 1) {
      at[place + shift] = (at[place + shift] as number) + odds * (at[place] as number);
    }
  }
}
