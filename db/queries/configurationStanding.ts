import type { Item } from '@/lib/catalogue/item';
import type { ItemId } from '@/lib/identity/ids';
import type { ConfigurationVersion } from '@/lib/sets/configuration';
import { type SetStanding, standingOf } from '@/lib/sets/standing';
import { mayRead, type Reading } from '../reader';
import { keptCatalogue } from './caseKit';
import { loadFitEngine } from './fitRules';
import { loadSetSettings } from './sets';

/** How a whole set of a version would stand: what it allows to be built, and its mass against the limits. */
export async function loadWholeStanding(
  db: Reading,
  version: ConfigurationVersion,
): Promise<{ standing: SetStanding; items: ReadonlyMap<ItemId, Item> }> {
  mayRead(db, 'readHospital');
  const [catalogue, engine, settings] = await Promise.all([
    keptCatalogue(db),
    loadFitEngine(db),
    loadSetSettings(db),
  ]);
  const items = new Map(catalogue.map((item) => [item.id, item]));
  const lines = version.lines.map((line) => ({
    ...line,
    found: line.expected,
    unsound: 0,
    condition: 'sound' as const,
  }));
  const standing = standingOf(
    {
      lines,
      boxes: [version.basketItemId, version.containerItemId],
      foreign: [],
      promises: version.promises,
      cases: [],
    },
    { catalogue, engine, items, settings, packs: new Map() },
  );
  return { standing, items };
}
