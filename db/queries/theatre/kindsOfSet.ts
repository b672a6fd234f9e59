import { isNull } from 'drizzle-orm';
import { configurationId } from '@/lib/identity/ids';
import type { KindOfSet } from '@/lib/theatre/planning/loanForShort';
import { mayRead, type Reading } from '../../reader';
import { configurations } from '../../schema';
import { keptVersions } from '../keptVersions';

/** Every kind of set in use, with what one of it should hold. */
export async function kindsOfSet(db: Reading): Promise<KindOfSet[]> {
  mayRead(db, 'readHospital');
  const [rows, versions] = await Promise.all([
    db.read
      .select({ id: configurations.id, name: configurations.name })
      .from(configurations)
      .where(isNull(configurations.withdrawnAt)),
    keptVersions(db),
  ]);
  const nameOf = new Map(rows.map(({ id, name }) => [id, name]));
  return [...versions.values()].flatMap((version) => {
    const name = nameOf.get(version.configurationId);
    if (version.status !== 'inForce' || name === undefined) return [];
    const id = configurationId.parse(version.configurationId);
    return [{ id, name, holds: new Set(version.lines.map(({ itemId }) => itemId)) }];
  });
}
