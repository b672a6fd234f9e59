import { lengthCover } from '@/lib/calculations/lengthCover/lengthCover';
import { lengthCoverInput } from '@/lib/calculations/lengthCover/schema';
import { type BenchRow, besideOf, percentiles } from './row';

const LENGTHS = [12, 14, 16, 18, 20, 22, 24, 26, 28, 30];
const STOCK = [2, 3, 3, 4, 4, 4, 3, 3, 2, 2];

/** Twelve holes and ten lengths; `different`: no two holes alike, the hardest for the exact method. */
function plate(
  different: boolean,
  more: { acceptLongerMm?: number; sharedSdMm?: number; targetCover?: number },
) {
  const { acceptLongerMm = 0, sharedSdMm = null, targetCover = null } = more;
  return lengthCoverInput.parse({
    holes: Array.from({ length: 12 }, (_, at) => ({
      hole: `S${at + 1}`,
      family: 'cortical 3.5',
      need: {
        kind: 'spread',
        meanMm: different ? 18 + at * 0.37 : 20,
        sdMm: different ? 1.8 + at * 0.05 : 2,
      },
      acceptLongerMm,
    })),
    families: [
      { family: 'cortical 3.5', lengths: LENGTHS.map((lengthMm, at) => ({ lengthMm, stock: STOCK[at] })) },
    ],
    sharedSdMm,
    targetCover,
  });
}

/** Length cover of twelve holes over ten lengths, exact; our own bound: 50 ms. */
export async function bench(): Promise<BenchRow[]> {
  const cases = [
    { name: '12 holes alike', bound: 50, input: plate(false, {}) },
    {
      name: '12 holes alike, 2 mm longer, shared offset',
      bound: 50,
      input: plate(false, { acceptLongerMm: 2, sharedSdMm: 1.5 }),
    },
    { name: '12 holes all different', bound: 50, input: plate(true, {}) },
    { name: '12 holes all different, 2 mm longer', bound: 50, input: plate(true, { acceptLongerMm: 2 }) },
    { name: '12 holes all different, shared offset', bound: null, input: plate(true, { sharedSdMm: 1.5 }) },
    {
      name: '12 holes alike, with the smallest top-up to 95 %',
      bound: null,
      input: plate(false, { targetCover: 0.95 }),
    },
  ];
  const plain = await besideOf(sampled);
  return cases.map(({ name, bound, input }) => {
    const { p50, p95 } = percentiles(Array.from({ length: 25 }, () => timed(input)).slice(5));
    const beside = `${DRAWS.toLocaleString('en-GB')} draws, which tell it to one in a hundred`;
    return { name: `length-cover: ${name}`, p50, p95, bound, ratio: p50 / plain, beside };
  });
}

function timed(input: Parameters<typeof lengthCover>[0]): number {
  const start = performance.now();
  const answer = lengthCover(input);
  const took = performance.now() - start;
  if (answer.outcome !== 'answered' || answer.answer.method.kind !== 'exact') throw new Error('not exact');
  return took;
}

const DRAWS = 10_000;

/** The plain way to the same chance: draw the needs of twelve holes, take the shortest that is long enough, count. */
function sampled(): number {
  let covered = 0;
  for (let draw = 0; draw < DRAWS; draw += 1) {
    const left = [...STOCK];
    const served = Array.from({ length: 12 }, () => 20 + 2 * normal())
      .sort((a, b) => b - a)
      .every((need) => {
        const at = LENGTHS.findIndex((length, of) => length >= need && (left[of] ?? 0) > 0);
        if (at >= 0) left[at] = (left[at] ?? 0) - 1;
        return at >= 0;
      });
    if (served) covered += 1;
  }
  return covered / DRAWS;
}

/** Box and Muller. */
const normal = () => Math.sqrt(-2 * Math.log(1 - Math.random())) * Math.cos(2 * Math.PI * Math.random());
