import type { Queries } from '@/db/client';
import { fitExceptions, fitRules } from '@/db/schema';
import { starterExceptions, starterRules } from './index';

/** Puts the rules every hospital starts with into a database that has none yet, inside the caller's transaction. */
export async function insertStarterRules(write: Queries): Promise<void> {
  await write.insert(fitRules).values(starterRules);
  if (starterExceptions.length > 0) await write.insert(fitExceptions).values(starterExceptions);
}
