import { expect, test } from 'vitest';
import { TARGETS } from './targets';

/** A short run of what `npm run test:fuzz` does at length. */
test.each(TARGETS.map((one) => [one.name, one] as const))(
  '%s: whatever comes is read, or refused with its reason',
  async (_, one) => {
    const { taken, refused } = await one.attack(one.runs.short, 20260114);
    expect(taken + refused).toBe(one.runs.short);
    // neither the door alone was tried nor what is behind it alone
    expect(taken).toBeGreaterThan(one.runs.short / 20);
    expect(refused).toBeGreaterThan(one.runs.short / 20);
  },
);
