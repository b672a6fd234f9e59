import type { Item } from '@/lib/catalogue/item';
import type { ItemId, LineId } from '@/lib/identity/ids';
import type { VersionContent } from '@/lib/sets/compareVersions';
import type { ConfigurationLine } from '@/lib/sets/configuration';

/** A line of one piece in a slot of its own unless said otherwise. */
export function lineOf(item: string, change: Partial<ConfigurationLine> = {}): ConfigurationLine {
  return {
    id: `line_${item}` as LineId,
    itemId: `item_${item}` as ItemId,
    layer: 1,
    row: 1,
    slot: 1,
    rackItemId: null,
    expected: 1,
    minimum: 1,
    mustHaveClass: 1,
    substitutes: [],
    ...change,
  };
}

export function versionOf(lines: ConfigurationLine[], change: Partial<VersionContent> = {}): VersionContent {
  return {
    layers: [{ layer: 1, name: 'Instruments' }],
    lines,
    promises: [],
    basketItemId: null,
    containerItemId: null,
    ...change,
  };
}

/** A catalogue of general instruments and one rack of 2 × 3, by name. */
export function catalogueOf(names: string[], withdrawn: string[] = []): Map<ItemId, Item> {
  const items = names.map((name) => ({
    id: `item_${name}`,
    kind: 'generalInstrument',
    name,
    status: withdrawn.includes(name) ? 'withdrawn' : 'current',
    massGrams: 10,
  }));
  const rack = {
    id: 'item_rack',
    kind: 'rack',
    name: 'rack',
    status: 'current',
    rows: 2,
    columns: 3,
    massGrams: 90,
  };
  return new Map([...items, rack].map((item) => [item.id as ItemId, item as unknown as Item]));
}
