import { expect, test } from 'vitest';
import { CannotTry } from '../suite';
import { cutPower } from './suite';

/** A few of the thousand of `npm run test:faults -- power`. */
test('the power fails fifteen times while the program writes: FULL loses nothing acknowledged, NORMAL does', async (context) => {
  try {
    const found = await cutPower({ cuts: 15, writes: 25, seed: 3, say: () => {} });
    expect(found.faults).toEqual([]);
    expect(found).toMatchObject({ tried: 15, acknowledged: 25, lost: 0 });
  } catch (error) {
    if (error instanceof CannotTry) return context.skip(error.message);
    throw error;
  }
});
