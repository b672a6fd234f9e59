import { listWords } from './numbers';

type Need =
  | { kind: 'exact'; lengthMm: number }
  | { kind: 'spread'; meanMm: number; sdMm: number }
  | { kind: 'odds'; odds: readonly { lengthMm: number; chance: number }[] };

type Method =
  | { kind: 'exact'; nodes: number; convergence: number }
  | { kind: 'simulation'; trials: number; seed: number; standardError: number };

/** What the length cover says of its input, its method and its working. */
export const lengthCoverWords = {
  oneLength: (family: string) =>
    `A spread needs at least two lengths of “${family}”, so that the step between them is known: list every length made.`,
  notMade: (family: string, mm: number, made: readonly number[]) =>
    `“${family}” is not made in ${mm} mm (made: ${listWords([...made].sort((a, b) => a - b))}): correct the length, or add it to those made.`,
  twice: (mm: number) => `${mm} mm is given twice: add the two chances up.`,
  aboveOne: (sum: number) => `The chances add up to ${Number(sum.toFixed(6))}: they must not exceed 1.`,
  lengthOf: (hole: string) => `length needed in ${hole}`,
  piecesOf: (family: string, mm: number) => `pieces of ${family}, ${mm} mm`,
  holesOf: (family: string) => `Holes for ${family}`,
  group({ size, need }: { size: number; need: Need }): string {
    const holes = size === 1 ? 'one hole' : `${size} holes alike`;
    switch (need.kind) {
      case 'exact':
        return `${holes}: ${need.lengthMm} mm`;
      case 'spread':
        return `${holes}: ${need.meanMm} ± ${need.sdMm} mm`;
      case 'odds':
        return `${holes}: ${need.odds.map(({ lengthMm, chance }) => `${lengthMm} mm ${chance}`).join(', ')}`;
    }
  },
  sharedOffset: 'Shared offset, standard deviation',
  sharedExpression: (method: Method) =>
    method.kind === 'exact'
      ? `∫ φ(z) P(all at hand | offset z) dz at ${method.nodes} nodes, estimated error ${scientific(method.convergence)}`
      : 'drawn once per trial',
  beyondRange: 'A length that is not made',
  cover: 'Cover',
  methodOf(method: Method): string {
    switch (method.kind) {
      case 'exact':
        return 'exact: sum over all outcomes, pieces given to the need that is due first';
      case 'simulation':
        return `simulation: ${method.trials} trials, seed ${method.seed}, standard error ${(method.standardError * 100).toFixed(2)} percentage points`;
    }
  },
};

function scientific(value: number): string {
  return value === 0 ? '0' : value.toExponential(1).replace('e', ' × 10^');
}
