import fc from 'fast-check';

/** Something that takes anything from outside, and what must hold of it whatever it is given. */
export interface Target {
  name: string;
  /** What one input is, in the plural. */
  unit: string;
  /** How many inputs the long run gives it, and how many the tests of every day. */
  runs: { long: number; short: number };
  /**
   * Gives it so many inputs, the same for the same seed. Throws on the first that crashes it, takes too long, or is refused
   * without a reason, with that input made as small as it can be made. `began` is told before each. Answers how many were
   * taken and how many refused: where all are refused, what comes after the door was never tried.
   */
  attack(runs: number, seed: number, began?: () => void): Promise<Record<Outcome, number>>;
}

export type Outcome = 'taken' | 'refused';

/** Processor time of one input; far more than any takes, far less than a person waits. */
const SLOW_MS = 2_000;

export function target<T>({
  arbitrary,
  hold,
  ...named
}: Omit<Target, 'attack'> & {
  arbitrary: fc.Arbitrary<T>;
  /** Throws where it does not hold. */
  hold: (input: T) => Outcome | Promise<Outcome>;
}): Target {
  return {
    ...named,
    async attack(runs, seed, began = () => {}) {
      const outcomes: Record<Outcome, number> = { taken: 0, refused: 0 };
      const property = fc.asyncProperty(arbitrary, async (input) => {
        began();
        const first = await timed(() => hold(input));
        // a machine that is busy with other things may be slow by itself: an input that is slow is slow twice
        const again = first.ms > SLOW_MS ? await timed(() => hold(input)) : first;
        if (again.ms > SLOW_MS) throw new Error(`took ${again.ms.toFixed(0)} ms of the processor`);
        outcomes[first.value] += 1;
      });
      await fc.assert(property, { numRuns: runs, seed, endOnFailure: false });
      return outcomes;
    },
  };
}

async function timed<T>(work: () => T | Promise<T>): Promise<{ value: T; ms: number }> {
  const before = process.cpuUsage();
  const value = await work();
  const { user, system } = process.cpuUsage(before);
  return { value, ms: (user + system) / 1_000 };
}

/** Words that a sentence for people never holds: they come of a value that was not there. */
const NO_WORDS = /\bundefined\b|\bNaN\b|\[object |\bfunction\b|=>/;

/** Throws unless it is a sentence somebody could read. */
export function requireSentence(sentence: unknown, of: unknown): void {
  const about = JSON.stringify(of)?.slice(0, 300);
  // what a person gave is quoted as they gave it
  const ours = typeof sentence === 'string' ? sentence.replaceAll(/“[^”]*”/g, '') : '';
  if (typeof sentence !== 'string' || sentence.trim().length < 4)
    throw new Error(`no reason is given: ${JSON.stringify(sentence)} for ${about}`);
  if (NO_WORDS.test(ours)) throw new Error(`no sentence for people: ${sentence} for ${about}`);
}
