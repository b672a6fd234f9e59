import { expect, test } from 'vitest';
import { completenessInput } from '@/lib/calculations/completeness/completeness';
import { PUBLISHED } from '@/lib/calculations/plateRemarks/published';
import published from '../fixtures/published-planning.json';

// Gautier & Sommer, Injury 2003;34 Suppl 2:B63; Stoffel et al., Injury 2003;34 Suppl 2:B11: both from memory
const { 'plate-planning': planning, 'mass-limits': mass } = published;

test('span ratio and screw density are the published ones, and say that they are from memory', () => {
  const ends = (range: { from: number; to: number } | undefined) => range && [range.from, range.to];
  expect(ends(PUBLISHED.spanRatio.bridging)).toEqual(planning.spanRatio.comminuted);
  expect(ends(PUBLISHED.spanRatio.compression)).toEqual(planning.spanRatio.simple);
  expect(ends(PUBLISHED.density.bridging)).toEqual(planning.screwDensityBridging);
  for (const ranges of Object.values(PUBLISHED)) {
    for (const range of Object.values(ranges)) expect(range.fromMemory).toBe(true);
  }
});

// ANSI/AAMI ST77 4.3.5 (25 lb with container); New Zealand crate weight project (7 kg); 10 kg European practice, from memory
test('the mass limits offered at first are the published ones', () => {
  const line = { line: 'a', item: 'a', mustHaveClass: 3, expected: 1, minimum: 0, found: 1, massGrams: 1 };
  const { massLimitsGrams } = completenessInput.parse({ lines: [line], containerGrams: null });
  expect(massLimitsGrams).toEqual(
    [mass.kg.nz, mass.kg.european, mass.kg.st77].map((kg) => Math.round(kg * 1000)),
  );
});
