import { type BenchEntry, benchAct } from '@/lib/bench/act';
import type { benchEntries } from '../schema';

type EntryRow = typeof benchEntries.$inferSelect;

/** An entry as it was recorded, parsed. */
export function entryFromRow(row: EntryRow): BenchEntry {
  return {
    id: row.id,
    act: benchAct.parse(row.act),
    doneAt: row.doneAt,
    secondPersonId: row.secondPersonId,
  };
}
