import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { noSuch } from '@/app/_server/outcome-answer';
import { findItem } from '@/db/queries/catalogueItem';
import { receivedItem } from '@/db/queries/shelf/receiving';
import { itemId } from '@/lib/identity/ids';

/** What is asked of an item as it is received: its pack, where it lies, and what is easily taken for it. */
export const GET = endpoint('GET /api/v1/deliveries/items/[id]', async ({ db, params }) => {
  const id = itemId.safeParse(params.id);
  const found = id.success ? await findItem(db, id.data) : null;
  if (!found) return noSuch('item');
  return jsonAnswer(await receivedItem(db, found.item));
});
