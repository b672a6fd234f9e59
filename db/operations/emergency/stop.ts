import type { Outcome, Refusal } from '@/lib/identity/refusal';

/** Found in the middle of writing that it must not be done: everything written of it is taken back. */
export class Stop extends Error {
  constructor(readonly refusal: Refusal<never>) {
    super(refusal.problems[0]?.message ?? refusal.because);
  }
}

/** Ends the write that is under way with a refusal. */
export function stop({ refusal }: { refusal: Refusal<never> }): never {
  throw new Stop(refusal);
}

/** A write whose refusals in the middle come back as refusals. */
export async function stopping<T>(write: Promise<T>): Promise<Outcome<T, never>> {
  try {
    return { ok: true, value: await write };
  } catch (error) {
    if (error instanceof Stop) return { ok: false, refusal: error.refusal };
    throw error;
  }
}
