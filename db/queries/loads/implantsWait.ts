import { eq } from 'drizzle-orm';
import { biologicalPassed } from '@/lib/loads/acceptance';
import { implantException } from '@/lib/loads/load';
import type { Queries } from '../../client';
import { loads, packs } from '../../schema';
import { readSetting } from '../settings';
import { indicatorsOf } from './acceptanceFacts';
import { packsOfLoad } from './packsOfLoad';

/**
 * The number of the accepted load whose biological result a pack still waits for; `null` where it waits for none: the site
 * asks for none, it holds no implants, the exception named it, or the result has passed. What it holds not being
 * established waits as implants do. Inside or outside a write.
 */
export async function biologicalWaitedFor(read: Queries, packId: string): Promise<string | null> {
  const { implantsAwaitBiological } = await readSetting(read, 'loads');
  if (!implantsAwaitBiological) return null;
  const [row] = await read
    .select({ load: loads })
    .from(packs)
    .innerJoin(loads, eq(loads.id, packs.loadId))
    .where(eq(packs.id, packId));
  if (row?.load.state !== 'accepted') return null;
  const indicators = await indicatorsOf(read, row.load.id);
  if (biologicalPassed(indicators)) return null;
  const exception = implantException.nullable().parse(row.load.exception);
  const pending = indicators.some(({ kind, result }) => kind === 'biological' && result === 'pending');
  // accepted without waiting, by a policy of that time: no result will come
  if (exception === null && !pending) return null;
  if (exception?.packIds.some((id) => id === packId)) return null;
  const pack = (await packsOfLoad(read, row.load.id)).find(({ id }) => id === packId);
  return pack?.implants === 'no' ? null : row.load.number;
}
