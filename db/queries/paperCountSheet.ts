import { eq } from 'drizzle-orm';
import type { Item } from '@/lib/catalogue/item';
import type { CountSheetOf } from '@/lib/documents/countSheet';
import type { ItemId } from '@/lib/identity/ids';
import { packShort } from '@/lib/packs/pack';
import { versionFromRows } from '../mappers/configuration';
import { mayRead, type Reading } from '../reader';
import { configurationVersions, packs, sets } from '../schema';
import { keptCatalogue } from './caseKit';
import { findSet, loadSetSettings } from './sets';
import { openQuestionsOf } from './theatreCounts/questions';

/** Everything a count sheet shows, but who prints it and when; `null` when there is no such set. */
export async function loadCountSheet(
  db: Reading,
  id: string,
): Promise<Omit<CountSheetOf, 'printing'> | null> {
  mayRead(db, 'readHospital');
  const set = await findSet(db, id);
  if (!set) return null;
  const [[row], catalogue, settings, [pack], questions] = await Promise.all([
    db.read.select().from(configurationVersions).where(eq(configurationVersions.id, set.version.id)),
    keptCatalogue(db),
    loadSetSettings(db),
    db.read
      .select({ short: packs.short })
      .from(sets)
      .innerJoin(packs, eq(packs.id, sets.packId))
      .where(eq(sets.id, id)),
    openQuestionsOf(db, [set.id]),
  ]);
  if (!row) throw new Error(`set ${set.code} follows a version that is not on file`);
  const items = new Map<ItemId, Item>(catalogue.map((item) => [item.id, item]));
  return {
    set,
    version: versionFromRows(row, []),
    items,
    settings,
    sentShort: pack?.short ? packShort.parse(pack.short) : null,
    questions,
  };
}
