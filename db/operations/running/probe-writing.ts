import { plainReason } from '@/lib/running/plainReason';
import type { Database } from '../../client';
import { writeProbe } from '../../schema';

/** Writes one small row and waits until the disk has it. Answers how long it took, or in plain words why it could not. */
export async function probeWriting({
  db,
  now,
}: {
  db: Pick<Database, 'tx'>;
  now: string;
}): Promise<{ problem: string | null; ms: number }> {
  const began = performance.now();
  try {
    await db.tx((write) =>
      write
        .insert(writeProbe)
        .values({ one: 1, writtenAt: now })
        .onConflictDoUpdate({ target: writeProbe.one, set: { writtenAt: now } }),
    );
    return { problem: null, ms: performance.now() - began };
  } catch (error) {
    return { problem: plainReason(error), ms: performance.now() - began };
  }
}
