import { expect, it } from 'vitest';
import { DEFAULT_SPREADS, defaultSpreadsFor } from '@/lib/plans/defaultSpreads';

it('offers the published distal radius spread with its source, and nothing for regions without one', () => {
  // J Orthop Surg Res 2015, doi 10.1186/s13018-015-0283-8: 21.7 ± 2.6 mm, range 16 to 26
  expect(defaultSpreadsFor('distalRadius')).toEqual([
    expect.objectContaining({
      meanMm: 21.7,
      sdMm: 2.6,
      rangeMm: [16, 26],
      source: expect.stringContaining('10.1186/s13018-015-0283-8'),
    }),
  ]);
  expect(defaultSpreadsFor('femurShaft')).toEqual([]);
  for (const spread of DEFAULT_SPREADS) expect(spread.source).toMatch(/doi/);
});
