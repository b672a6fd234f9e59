import { item } from '@/lib/catalogue/item';
import { checkCatalogue } from '@/lib/fit/catalogue-check';
import { questionOf, TABLE_AXES, THINGS } from '@/lib/fit/designs';
import { createFitEngine } from '@/lib/fit/engine';
import { DEFAULT_FIT_SETTINGS, type Relation } from '@/lib/fit/rule';
import { fitTable } from '@/lib/fit/table';
import { catalogueEntries } from '@/seed/catalogue/catalogue';
import { starterRules } from '@/seed/rules';

const ROUNDS = 15;

interface BenchRow {
  name: string;
  /** Milliseconds. */
  p50: number;
  p95: number;
  /** What p95 must not exceed; `null` where no bound is set. */
  bound: number | null;
}

function timed(name: string, bound: number | null, work: () => void): BenchRow {
  work();
  const times = Array.from({ length: ROUNDS }, () => {
    const before = performance.now();
    work();
    return performance.now() - before;
  }).sort((a, b) => a - b);
  const at = (share: number) =>
    times[Math.min(times.length - 1, Math.ceil(share * times.length) - 1)] ?? Number.NaN;
  return { name, p50: at(0.5), p95: at(0.95), bound };
}

/** The fit tables of the whole demo catalogue, all relations. Our own bound: 1 s. */
export function bench(): BenchRow[] {
  const catalogue = catalogueEntries().map((entry) => item.parse(entry));
  const engine = createFitEngine({ rules: starterRules, exceptions: [], settings: DEFAULT_FIT_SETTINGS });
  const relations = Object.keys(TABLE_AXES) as Relation[];
  const [screw] = THINGS.screws(catalogue);
  const [hole] = THINGS.holes(catalogue);
  if (!screw || !hole) throw new Error('the demo has screws and holes');
  const question = questionOf('seats', hole, screw);
  return [
    timed(`fit table, whole catalogue of ${catalogue.length}, all 13 relations`, 1000, () => {
      for (const relation of relations) fitTable(engine, catalogue, relation);
    }),
    timed('fit table, screw in hole', 1000, () => void fitTable(engine, catalogue, 'seats')),
    timed('catalogue check', 1000, () => void checkCatalogue(engine, catalogue)),
    timed('1,000 questions, screw in hole', null, () => {
      for (let asked = 0; asked < 1000; asked++) engine.ask(question);
    }),
  ];
}
