import { describe, expect, it } from 'vitest';
import { loadCatalogue } from '@/db/queries/catalogue';
import { checkItem } from '@/lib/catalogue/check';
import { draftFromItem } from '@/lib/catalogue/form/draft';
import { readDraft } from '@/lib/catalogue/form/read';
import type { Item } from '@/lib/catalogue/item';
import { drawItem } from '@/lib/documents/drawing/item';
import { demoDatabase } from '../../setup/database';

describe('the demo’s catalogue', () => {
  it('has items that are sound in themselves, go through the form unchanged, and can be drawn', async () => {
    const items = await loadCatalogue(await demoDatabase());
    expect(items.length).toBeGreaterThan(350);
    for (const item of items) {
      expect(
        checkItem(item).map(({ message }) => message),
        item.code,
      ).toEqual([]);
      const read = readDraft(item.kind, draftFromItem(item), { id: item.id, status: item.status });
      expect(read.ok ? read.value : read.problems, item.code).toEqual(item);
      expect(faultOf(item), item.code).toBeNull();
    }
  });
});

/** What is wrong with an item's drawing: a size that is no number, a sheet without extent, a hole left out. */
function faultOf(item: Item): string | null {
  const scene = drawItem(item, { dimensions: true, showIds: true });
  const text = JSON.stringify(scene, (_key, value) =>
    typeof value === 'number' && !Number.isFinite(value) ? 'no number' : value,
  );
  if (text.includes('no number')) return 'a size that is no number';
  if (scene.widthUm <= 0 || scene.heightUm <= 0) return 'no extent';
  if (item.kind === 'plate' && scene.holes.length !== item.holes.length) return 'a hole left out';
  return null;
}
