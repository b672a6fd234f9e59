import { item } from '@/lib/catalogue/item';
import { checkCatalogue } from '@/lib/fit/catalogue-check';
import { questionOf, TABLE_AXES, THINGS } from '@/lib/fit/designs';
import { createFitEngine } from '@/lib/fit/engine';
import { DEFAULT_FIT_SETTINGS, type Relation } from '@/lib/fit/rule';
import { fitTable } from '@/lib/fit/table';
import { catalogueEntries } from '@/seed/catalogue/catalogue';
import { starterRules } from '@/seed/rules';
import { type BenchRow, percentiles } from './row';

const ROUNDS = 15;

function timed(name: string, bound: number | null, work: () => void, beside: () => void): BenchRow {
  const measure = (one: () => void) => {
    one();
    return percentiles(
      Array.from({ length: ROUNDS }, () => {
        const before = performance.now();
        one();
        return performance.now() - before;
      }),
    );
  };
  const { p50, p95 } = measure(work);
  return { name, p50, p95, bound, ratio: p50 / measure(beside).p50, beside: 'the same things copied' };
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
  // the least there is to do with things: to go over all of them once
  const copied = (what: unknown) => () => void structuredClone(what);
  const designs = copied(catalogue);
  return [
    timed(
      `fit table, whole catalogue of ${catalogue.length}, all 13 relations`,
      1000,
      () => {
        for (const relation of relations) fitTable(engine, catalogue, relation);
      },
      designs,
    ),
    timed('fit table, screw in hole', 1000, () => void fitTable(engine, catalogue, 'seats'), designs),
    timed('catalogue check', 1000, () => void checkCatalogue(engine, catalogue), designs),
    timed(
      '1,000 questions, screw in hole',
      null,
      () => {
        for (let asked = 0; asked < 1000; asked++) engine.ask(question);
      },
      copied(Array.from({ length: 1000 }, () => question)),
    ),
  ];
}
