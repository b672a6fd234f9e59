import { eq, inArray } from 'drizzle-orm';
import type { WantedLine } from '@/lib/caseLife/list';
import type { MatchedLine } from '@/lib/caseLife/match';
import { packProblems } from '@/lib/caseLife/packProblems';
import { setPickProblems } from '@/lib/caseLife/setProblems';
import type { Reading } from '../../reader';
import { items, places, sets, stock } from '../../schema';
import { packFactsOf, setPickFactsOf } from './pickFacts';
import type { KitOnRecord, PickRow } from './standing';
import { thingOnRecord } from './thing';

/** A thing that lies with the kit. */
export interface PickedThing {
  pickId: string;
  name: string;
  quantity: number;
  by: string;
  at: string;
  /** Where it came from, and goes back to. */
  place: string | null;
  /** It left the store by itself, before the kit. */
  out: boolean;
  /** Why it may not go to the case any more, though it was picked; empty where it may. */
  problems: string[];
}

/** One line of the list as it stands. */
export interface KitLine {
  key: string;
  kind: WantedLine['kind'];
  /** `SFS-01`, or what the item is called. */
  name: string;
  /** What kind of set it is, or the item's code and lot. */
  detail: string;
  role: 'open' | 'hold';
  wanted: number;
  picked: PickedThing[];
  pickedPieces: number;
  place: { name: string; metres: number } | null;
  useBy: string | null;
  readyAt: string | null;
  /** What keeps it from being picked now; empty where nothing does. */
  problems: string[];
  /** Copies that serve as well, with their places, those that may be picked. */
  alike: { setId: string; code: string; place: string | null }[];
}

/** Why something picked may not go any more: what issuing would say of it. */
export async function problemsOfPick(
  { read }: Pick<Reading, 'read'>,
  kit: KitOnRecord,
  pick: PickRow,
  now: string,
): Promise<string[]> {
  if (pick.setId !== null) {
    const [set] = await read.select().from(sets).where(eq(sets.id, pick.setId));
    if (!set) return [];
    const facts = await setPickFactsOf(read, { set, booked: kit.booked, rival: null, packId: null, now });
    return setPickProblems(facts).map(({ message }) => message);
  }
  const thing = await thingOnRecord(read, { kind: 'stock', stockId: pick.stockId as never }, new Set());
  if (thing.kind !== 'pack') return [];
  const facts = await packFactsOf(read, {
    ...thing,
    saidUseBy: pick.useBy,
    kit,
    quantity: pick.quantity,
    now,
  });
  return packProblems({ ...facts, free: facts.free + pick.quantity }).map(({ message }) => message);
}

/** Every line of the list as it stands, with what keeps it from being picked and which copies serve as well. */
export async function kitLines(
  { read }: Pick<Reading, 'read'>,
  kit: KitOnRecord,
  matched: readonly MatchedLine[],
  things: ReadonlyMap<string, PickedThing>,
  now: string,
): Promise<KitLine[]> {
  const ids = kit.list.flatMap((line) =>
    line.kind === 'set' ? [line.setId, ...line.alike.map(({ setId }) => setId)] : [],
  );
  const [rows, heaps] = await Promise.all([
    read
      .select({ set: sets, place: places })
      .from(sets)
      .leftJoin(places, eq(places.id, sets.placeId))
      .where(inArray(sets.id, ids)),
    read
      .select({ heap: stock, place: places, item: { name: items.name, code: items.code } })
      .from(stock)
      .innerJoin(places, eq(places.id, stock.placeId))
      .innerJoin(items, eq(items.id, stock.itemId))
      .where(
        inArray(
          stock.id,
          kit.list.flatMap((line) => (line.kind === 'pack' ? [line.stockId] : [])),
        ),
      ),
  ]);
  const setOf = new Map(rows.map((row) => [row.set.id, row]));
  const heapOf = new Map(heaps.map((row) => [row.heap.id, row]));
  const setProblems = async (id: string): Promise<string[]> => {
    const set = setOf.get(id)?.set;
    if (!set) return [];
    const facts = await setPickFactsOf(read, { set, booked: kit.booked, rival: null, packId: null, now });
    return setPickProblems(facts).map(({ message }) => message);
  };
  const lines = matched.map(async ({ line, pickIds, picked, wanted }): Promise<KitLine> => {
    const mine = [...new Set(pickIds)].flatMap((id) => things.get(id) ?? []);
    const open =
      picked < wanted && (kit.stage === 'picking' || kit.stage === 'picked' || kit.stage === 'checked');
    const common = { role: line.role, wanted, pickedPieces: picked, picked: mine };
    if (line.kind === 'set') {
      const row = setOf.get(line.setId);
      const others = open ? line.alike : [];
      const judged = await Promise.all(
        others.map(async (one) => ({ one, problems: await setProblems(one.setId) })),
      );
      return {
        ...common,
        key: line.setId,
        kind: 'set',
        name: line.code,
        detail: line.configurationName,
        place: row?.place ? { name: row.place.name, metres: row.place.metres } : null,
        useBy: row?.set.useBy ?? null,
        readyAt: row?.set.step === 'inSterileStore' ? null : line.readyAt,
        problems: open ? await setProblems(line.setId) : [],
        alike: judged
          .filter(({ problems }) => problems.length === 0)
          .map(({ one }) => ({ ...one, place: setOf.get(one.setId)?.place?.name ?? null })),
      };
    }
    const row = heapOf.get(line.stockId);
    return {
      ...common,
      key: line.stockId,
      kind: 'pack',
      name: row?.item.name ?? line.itemId,
      detail: [row?.item.code, line.lot === null ? 'no lot stated' : `lot ${line.lot}`]
        .filter(Boolean)
        .join(', '),
      place: row ? { name: row.place.name, metres: row.place.metres } : null,
      useBy: row?.heap.useBy ?? null,
      readyAt: null,
      problems: open ? await heapProblems({ read }, kit, line.stockId, wanted - picked, now) : [],
      alike: [],
    };
  });
  return Promise.all(lines);
}

async function heapProblems(
  { read }: Pick<Reading, 'read'>,
  kit: KitOnRecord,
  stockId: string,
  quantity: number,
  now: string,
): Promise<string[]> {
  const thing = await thingOnRecord(read, { kind: 'stock', stockId: stockId as never }, new Set());
  if (thing.kind !== 'pack') return [];
  return packProblems(await packFactsOf(read, { ...thing, kit, quantity, now })).map(
    ({ message }) => message,
  );
}
