import type { NewId, StockId } from '@/lib/identity/ids';
import { changedTo, type Outcome, refused } from '@/lib/identity/refusal';
import { heapWords as words } from '@/lib/wording/stock-acts';
import type { Database, Queries } from '../../client';
import type { Person } from '../../queries/people';
import { heapsCountedBy } from '../../queries/shelf/blindHeaps';
import { type HeapAt, heapAt } from '../../queries/shelf/heapAt';

/** What every act on one heap is asked with; the revision is the one that was seen. */
export interface HeapRequest {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  stockId: StockId;
  baseRevision: number;
}

/** The heap as it stands, inside a write; refused where somebody changed it, or the asker is to count it blind. */
export async function ownHeap(write: Queries, request: HeapRequest): Promise<Outcome<HeapAt, never>> {
  const heap = await heapAt(write, request.stockId, request.now);
  if (!heap) return refused('notFound', words.noSuchHeap);
  if (heap.row.revision !== request.baseRevision) return changedTo(words.changed, heap.row.revision);
  if ((await heapsCountedBy(write, request.person.id)).has(request.stockId))
    return refused('frozen', words.countedNow);
  return { ok: true, value: heap };
}
