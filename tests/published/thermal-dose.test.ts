import { describe, expect, it } from 'vitest';
import { PUBLISHED_BANDS } from '@/lib/calculations/thermalDose/published';
import { thermalDoseInput } from '@/lib/calculations/thermalDose/schema';
import { thermalDose } from '@/lib/calculations/thermalDose/thermalDose';
import published from '../fixtures/published-thermal.json';

const { thermal } = published;

/** A temperature held for some time, logged every second. */
function held(celsius: number, seconds: number, more: Record<string, unknown> = {}) {
  const readings = Array.from({ length: seconds + 1 }, (_, second) => ({ second, celsius }));
  const answer = thermalDose(thermalDoseInput.parse({ readings, ...more }));
  if (answer.outcome !== 'answered') throw new Error('nothing is missing from this log');
  return answer.answer;
}

// ISO 15883-1, Annex B (A0, z = 10, above 65 °C): 80 °C for 600 s = 90 °C for 60 s = 70 °C for 6,000 s = A0 600
describe('A0 is the published one', () => {
  it.each(thermal.a0)('$c °C for $seconds s gives A0 $a0', ({ c, seconds, a0 }) => {
    for (const rule of ['trapezoid', 'left'])
      expect(Math.round(held(c, seconds, { rule }).a0Seconds)).toBe(a0);
  });
});

// F0 with the reference temperature stated (z = 10); recomputed from the published formula
describe('F0 is the published one, at either reference', () => {
  it.each(thermal.f0)('$c °C for $minutes min at reference $ref gives F0 $f0', ({ c, minutes, ref, f0 }) => {
    expect(held(c, minutes * 60, { f0ReferenceC: ref }).f0Minutes).toBeCloseTo(f0, 2);
  });

  it('the reference is 121.1 °C where none is stated', () => {
    expect(held(121, 900).f0ReferenceC).toBe(121.1);
  });
});

// EN 285 / ISO 17665 bands, from memory; 132 °C for 4 min: CDC Guideline for Disinfection and Sterilization, Table 7
describe('the holding bands are the published ones', () => {
  it.each([
    { low: 134, high: 137, minutes: 3 },
    { low: 126, high: 129, minutes: 10 },
    { low: 121, high: 124, minutes: 15 },
    { low: 132, high: null, minutes: 4 },
  ])('$low–$high °C for $minutes min', ({ low, high, minutes }) => {
    const found = PUBLISHED_BANDS.find(({ lowC, highC }) => lowC === low && highC === high);
    if (!found) throw new Error('the band is offered');
    expect(found.holdSeconds).toBe(minutes * 60);
    expect(found.fromMemory).toBe(high !== null);
    const { lowC, highC, holdSeconds } = found;
    const band = { lowC, highC, holdSeconds };
    expect(held(low, minutes * 60, { band }).holding?.outcome).toBe('held');
    expect(held(low, minutes * 60 - 1, { band }).holding?.outcome).toBe('notHeld');
    expect(held(low - 0.1, minutes * 60, { band }).holding?.outcome).toBe('notHeld');
  });
});
