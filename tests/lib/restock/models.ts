import fc from 'fast-check';
import { countsOf, type DemandModel } from '@/lib/restock/demandModel';

const mean = fc.double({ min: 0.05, max: 60, noNaN: true });

const sizes = fc
  .array(fc.record({ pieces: fc.integer({ min: 1, max: 9 }), cases: fc.integer({ min: 1, max: 20 }) }), {
    minLength: 1,
    maxLength: 4,
  })
  .map((all) => {
    const whole = all.reduce((sum, { cases }) => sum + cases, 0);
    return all.map(({ pieces, cases }) => ({ pieces, share: cases / whole }));
  });

/** Demand of any of the three models, from a twentieth of a piece to some hundreds. */
export const demandModels: fc.Arbitrary<DemandModel> = fc.oneof(
  mean.map((value): DemandModel => ({ kind: 'poisson', mean: value })),
  fc
    .tuple(mean, fc.double({ min: 1.05, max: 5, noNaN: true }))
    .map(([value, times]) => countsOf(value, value * times)),
  fc
    .tuple(fc.double({ min: 0.05, max: 30, noNaN: true }), sizes)
    .map(([cases, each]): DemandModel => ({ kind: 'compoundPoisson', cases, sizes: each })),
);
