import { lengthCover } from '@/lib/calculations/lengthCover/lengthCover';
import { lengthCoverInput } from '@/lib/calculations/lengthCover/schema';

export interface BenchRow {
  name: string;
  /** Milliseconds. */
  p50: number;
  p95: number;
  /** What p95 must not exceed; `null` where no bound is set. */
  bound: number | null;
}

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
export function bench(): BenchRow[] {
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
  return cases.map(({ name, bound, input }) => {
    const times = Array.from({ length: 25 }, () => timed(input)).slice(5);
    times.sort((a, b) => a - b);
    const at = (share: number) => times[Math.ceil(share * times.length) - 1] ?? Number.NaN;
    return { name: `length-cover: ${name}`, p50: at(0.5), p95: at(0.95), bound };
  });
}

function timed(input: Parameters<typeof lengthCover>[0]): number {
  const start = performance.now();
  const answer = lengthCover(input);
  const took = performance.now() - start;
  if (answer.outcome !== 'answered' || answer.answer.method.kind !== 'exact') throw new Error('not exact');
  return took;
}
