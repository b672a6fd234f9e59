import fc from 'fast-check';
import { lengthCover } from '@/lib/calculations/lengthCover/lengthCover';
import { familyCases, lengthChances } from '@/lib/calculations/lengthCover/needs';
import {
  type LengthCoverInput,
  type LengthCoverOutput,
  lengthCoverInput,
} from '@/lib/calculations/lengthCover/schema';

export type CoverCase = Parameters<typeof lengthCoverInput.parse>[0];

/** The answer, where there is one: a test that expects none says so itself. */
export function coverOf(input: unknown): LengthCoverOutput {
  const answer = lengthCover(lengthCoverInput.parse(input));
  if (answer.outcome !== 'answered') throw new Error(`not established: ${JSON.stringify(answer.missing)}`);
  return answer.answer;
}

export const family = (
  name: string,
  stock: Record<number, number>,
  made = Object.keys(stock).map(Number),
) => ({
  family: name,
  lengths: made.map((lengthMm) => ({ lengthMm, stock: stock[lengthMm] ?? 0 })),
});

/** Whether pieces can be given to all needs, by trying every way: independent of any matching or sweep of ours. */
export function canServe(accepted: readonly (readonly number[])[], stock: readonly number[]): boolean {
  const [first, ...rest] = accepted;
  if (!first) return true;
  return first.some(
    (length) =>
      (stock[length] ?? 0) > 0 &&
      canServe(
        rest,
        stock.map((pieces, at) => (at === length ? pieces - 1 : pieces)),
      ),
  );
}

/** The cover by writing out every outcome of every hole (and, with openings in vain, up to `mostExtra` more pieces each). */
export function coverByEnumeration(input: LengthCoverInput, offsetMm = 0, mostExtra = 0): number {
  return familyCases(input).reduce((product, one) => {
    const stock = one.lengthsMm.map(
      (mm) =>
        input.families
          .find(({ family: name }) => name === one.family)
          ?.lengths.find(({ lengthMm }) => lengthMm === mm)?.stock ?? 0,
    );
    const holes = one.groups.flatMap((group) =>
      Array.from({ length: group.size }, () => ({
        group,
        chances: lengthChances(group, one.lengthsMm, offsetMm),
      })),
    );
    const q = input.notImplantedChance;
    const visit = (at: number, chance: number, accepted: number[][]): number => {
      if (chance === 0) return 0;
      const hole = holes[at];
      if (!hole) return canServe(accepted, stock) ? chance : 0;
      let sum = 0;
      for (const [length, p] of hole.chances.entries()) {
        const { first, last } = hole.group.windows[length] ?? { first: 0, last: -1 };
        const window = Array.from({ length: last - first + 1 }, (_, step) => first + step);
        for (let extra = 0; extra <= mostExtra; extra += 1) {
          const copies = Array.from({ length: extra + 1 }, () => window);
          sum += visit(at + 1, chance * p * (1 - q) * q ** extra, [...accepted, ...copies]);
        }
      }
      return sum;
    };
    return product * visit(0, 1, []);
  }, 1);
}

const lengths = [14, 16, 18, 20, 22];

/** Small problems: few holes, one family, every kind of need, rounding and window. */
export const smallCase = fc
  .record({
    stock: fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 5, maxLength: 5 }),
    holes: fc.array(
      fc.record({
        need: fc.oneof(
          fc.record({ kind: fc.constant('exact' as const), lengthMm: fc.constantFrom(...lengths) }),
          fc.record({
            kind: fc.constant('spread' as const),
            meanMm: fc.integer({ min: 14, max: 22 }),
            sdMm: fc.constantFrom(0.8, 1.5, 2.5),
          }),
          fc.constant({
            kind: 'odds' as const,
            odds: [
              { lengthMm: 16, chance: 0.25 },
              { lengthMm: 20, chance: 0.7 },
            ],
          }),
        ),
        rounding: fc.constantFrom('nearest' as const, 'up' as const, 'down' as const),
        acceptLongerMm: fc.constantFrom(0, 0, 2, 4, 5),
        acceptShorterMm: fc.constantFrom(0, 0, 0, 2, 4),
      }),
      { minLength: 1, maxLength: 4 },
    ),
  })
  .map(({ stock, holes }) =>
    lengthCoverInput.parse({
      holes: holes.map((hole, at) => ({ hole: `H${at}`, family: 'f', ...hole })),
      families: [
        { family: 'f', lengths: lengths.map((lengthMm, at) => ({ lengthMm, stock: stock[at] ?? 0 })) },
      ],
      targetCover: null,
    }),
  );
