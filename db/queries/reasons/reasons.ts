import { asc, desc } from 'drizzle-orm';
import { type Reason, reasonKind } from '@/lib/reasons/reason';
import type { Queries } from '../../client';
import { mayRead, type Reading } from '../../reader';
import { reasonCodes } from '../../schema';

/** Every reason of the hospital's own, retired ones too, by kind and in its own order. Inside or outside a write. */
export async function reasonsOf(read: Queries): Promise<(Reason & { revision: number })[]> {
  const rows = await read
    .select()
    .from(reasonCodes)
    .orderBy(desc(reasonCodes.kind), asc(reasonCodes.position), asc(reasonCodes.id));
  return rows.map(({ id, kind, code, words, retiredAt, revision }) => ({
    id,
    kind: reasonKind.parse(kind),
    code,
    words,
    inUse: retiredAt === null,
    revision,
  }));
}

/** The same for a screen. */
export async function listReasons(db: Reading): Promise<(Reason & { revision: number })[]> {
  mayRead(db, 'readHospital');
  return reasonsOf(db.read);
}
