import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { findItemsOnFile } from '@/db/queries/catalogueItem';
import type { Item } from '@/lib/catalogue/item';
import { condense, type Thumb } from '@/lib/documents/drawing/condense';
import { drawItem } from '@/lib/documents/drawing/item';

const asked = z.object({ ids: z.string().describe('Ids of items, with commas between them; at most 120.') });

/** More than a page of the list never asks at once. */
const MOST = 120;

/** About three kilobytes each. */
const MOST_KEPT = 4_000;
const drawn = new Map<string, Thumb>();

/** Small drawings of the items named in `ids`, by id; unknown ids are left out. */
export const GET = endpoint('GET /api/v1/catalogue/thumbs', { query: asked }, async ({ db, request }) => {
  const ids = (new URL(request.url).searchParams.get('ids') ?? '').split(',').filter(Boolean).slice(0, MOST);
  const thumbs: Record<string, Thumb> = {};
  for (const { item, revision } of await findItemsOnFile(db, ids)) thumbs[item.id] = thumbOf(item, revision);
  return jsonAnswer({ thumbs });
});

/** An item of one revision never changes, so neither does its drawing. */
function thumbOf(item: Item, revision: number): Thumb {
  const key = `${item.id}:${revision}:${item.code}`;
  const known = drawn.get(key);
  if (known) return known;
  const thumb = condense(drawItem(item));
  if (drawn.size >= MOST_KEPT) drawn.clear();
  drawn.set(key, thumb);
  return thumb;
}
