import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { knowEmptySlots } from '@/db/operations/pieces/begin-journal';
import { configurationLines, pieceMoves, setContents, stock } from '@/db/schema';
import { groupBy } from '@/lib/lists/groupBy';
import { catalogueEntries } from '../catalogue/catalogue';
import type { ItemEntry } from '../catalogue/entry';
import { type HospitalClock, localDate } from '../hospitalClock';
import { recalledLotRows } from '../recall/recalledLot';
import { insertUseRecords } from '../usage/insertUseRecords';
import { recordsOfPast } from '../usage/useRecords';
import type { History } from './history';
import { HISTORY_DAYS } from './pastCases';
import type { Row } from './pastRows';
import { insertHeapRows, refillRows, singleRows } from './pastShelf';
import { momentsOf, type SlotNow, storyOfSet, type UseStory } from './pastUse';

const MINUTE = 60_000;
const DAY = 86_400_000;
const KEEPERS = ['person_dilys-harrow', 'person_kofi-brandreth'] as const;
const iso = (ms: number) => new Date(ms).toISOString();

/**
 * Two years in the journal of pieces, ending with what lies in every slot and on every shelf now. Needs all else of the
 * demo: what is there decides what was.
 */
export async function insertPastPieces(
  write: Queries,
  clock: HospitalClock,
  history: History,
): Promise<void> {
  const { chance } = history;
  const items = new Map<string, ItemEntry>(catalogueEntries().map((entry) => [entry.id, entry]));
  const { slots, stories } = await storiesOf(write, clock, history, items);
  const moves = stories.flatMap(({ slotMoves }) => slotMoves).sort((a, b) => a.at - b.at);
  // a day before the first case, so that it is before it at whatever time of day the demo is loaded
  const began = clock.now.getTime() - (HISTORY_DAYS + 1) * DAY;
  const rows: Row[] = [];
  for (const story of stories)
    for (const { setId, lineId, itemId, quantity } of story.began)
      rows.push({
        at: began,
        act: 'opening',
        itemId,
        quantity,
        toSetId: setId,
        toLineId: lineId,
        personId: null,
      });
  for (const slot of slots)
    rows.push({
      at: clock.now.getTime(),
      act: 'opening',
      itemId: slot.itemId,
      quantity: slot.found,
      toSetId: slot.setId,
      toLineId: slot.lineId,
      personId: null,
    });
  const singles = stories.flatMap((story) => story.singles).sort((a, b) => a.at - b.at);
  await insertHeapRows(write, refillRows(rows, moves, items, chance));
  await singleRows(write, rows, singles, items, history);
  const told = await recalledLotRows(write, rows, history, clock.now.getTime());
  await heapsNow(write, rows, clock, history, told);
  const records = recordsOfPast(rows, history.cases, chance);
  await writeRows(write, rows, items);
  await insertUseRecords(write, records);
  await knowEmptySlots(write);
}

/** What was taken from and put into the sets that were used; slots of all others begin as they are. */
async function storiesOf(
  write: Queries,
  clock: HospitalClock,
  { sets, work, cases, turns, chance }: History,
  items: ReadonlyMap<string, ItemEntry>,
): Promise<{ slots: SlotNow[]; stories: UseStory[] }> {
  const now = clock.now.getTime();
  const teller = { items, screws: screwsByFamily(items), chance };
  const lineOf = new Map((await write.select().from(configurationLines)).map((line) => [line.id, line]));
  const held = (await write.select().from(setContents)).flatMap(({ setId, lineId, found }): SlotNow[] => {
    const line = lineOf.get(lineId);
    return line ? [{ setId, lineId, itemId: line.itemId, expected: line.expected, found }] : [];
  });
  const bySet = groupBy(held, ({ setId }) => setId);
  const stories: UseStory[] = [];
  for (const set of sets) {
    const lines = work.get(set.versionId)?.lines ?? [];
    if (!cases.some((one) => one.set.setId === set.setId)) continue;
    const counts = set.told.flatMap(({ steps }) =>
      steps
        .filter(({ step, at }) => step === 'onBench' && at < now - 20 * MINUTE)
        .map(({ at }) => at + 15 * MINUTE),
    );
    const slots = bySet.get(set.setId) ?? [];
    bySet.delete(set.setId);
    stories.push(storyOfSet(teller, lines, slots, momentsOf(set.setId, cases, turns, counts)));
  }
  return { slots: [...bySet.values()].flat(), stories };
}

function screwsByFamily(items: ReadonlyMap<string, ItemEntry>) {
  const families = new Map<string, { itemId: string; mm: number }[]>();
  for (const entry of items.values()) {
    if (entry.kind !== 'screw' || entry.lengthUm === null) continue;
    const made = families.get(entry.screwFamily) ?? [];
    families.set(entry.screwFamily, [...made, { itemId: entry.id, mm: entry.lengthUm / 1_000 }]);
  }
  return families;
}

/** What lies on the shelf now came not long ago; pouches were sterilised here. How one heap came is told elsewhere. */
async function heapsNow(
  write: Queries,
  rows: Row[],
  clock: HospitalClock,
  { chance }: History,
  told: string,
): Promise<void> {
  const heaps = await write.select().from(stock);
  for (const heap of heaps.filter(({ quantity }) => quantity > 0)) {
    const at = clock.now.getTime() - chance.whole(8, 75) * DAY;
    const personId = chance.of(KEEPERS);
    if (heap.id === told) continue;
    rows.push({
      at,
      act: heap.form === 'pouch' ? 'shelved' : 'received',
      itemId: heap.itemId,
      quantity: heap.quantity,
      lot: heap.lot,
      useBy: heap.useBy,
      owner: heap.owner,
      toStockId: heap.id,
      personId,
    });
  }
}

async function writeRows(write: Queries, rows: Row[], items: ReadonlyMap<string, ItemEntry>): Promise<void> {
  rows.sort((a, b) => a.at - b.at);
  const days = new Map<number, string>();
  const dayOf = (at: number) => {
    // the clocks are never more than an hour apart: half an hour is fine enough to tell the day
    const key = Math.floor(at / (30 * MINUTE));
    const known = days.get(key) ?? localDate(new Date(at));
    days.set(key, known);
    return known;
  };
  await insertMany(
    write,
    pieceMoves,
    rows.flatMap(({ at, owner = 'ours', ...row }) => {
      if (row.quantity <= 0) return [];
      const unitPence = items.get(row.itemId)?.unitCostPence ?? null;
      return [{ ...row, owner, unitPence, doneOn: dayOf(at), doneAt: iso(at), enteredAt: iso(at) }];
    }),
  );
}
