import { inArray, sql } from 'drizzle-orm';
import type { ItemId } from '@/lib/identity/ids';
import type { StoredSet } from '@/lib/kits/store';
import type { MustHaveClass } from '@/lib/sets/configuration';
import type { Queries } from '../client';
import { configurationLines, items, setContents } from '../schema';

/** What lies in a set by item, and what that weighs; a piece of unknown mass makes the whole unknown. */
export type Holding = Readonly<Pick<StoredSet, 'contents' | 'massGrams'>> & {
  /** On some line fewer lie than are expected. */
  readonly lacks: boolean;
};

export const NOTHING_IN_IT: Holding = { contents: [], massGrams: 0, lacks: false };

interface Line {
  itemId: ItemId;
  expected: number;
  mustHaveClass: MustHaveClass;
}

interface Kept {
  /** Of versions in force or superseded, which never change. */
  lines: Map<string, Line>;
  /** The catalogue's masses as of a stamp, and what was read under it, by the text of a set's figures. */
  stamp: string;
  masses: Map<string, number | null>;
  holdings: Map<string, Holding>;
}
const kept = new WeakMap<Queries, Kept>();

/** Texts kept at most; past so many all are let go, and those that are still needed are read anew. */
const MOST_TEXTS = 20_000;

/**
 * What lies in every set. The figures are read each time, in one text a set; what a text says is worked out once, and sets of
 * which it says the same share the very same holding, so that what is remembered about one is good for all of them. Nobody may
 * change a holding.
 */
export async function keptHoldings(read: Queries): Promise<ReadonlyMap<string, Holding>> {
  const [figures, [mark]] = await Promise.all([
    read.all<{ set_id: string; figures: string }>(
      sql`SELECT set_id, group_concat(line_id || ' ' || found) AS figures FROM ${setContents} GROUP BY set_id`,
    ),
    read.all<{ stamp: string }>(
      sql`SELECT count(*) || '/' || coalesce(sum(revision), 0) || '/' || coalesce(max(rowid), 0) AS stamp FROM ${items}`,
    ),
  ]);
  const stamp = mark?.stamp ?? '';
  const before = kept.get(read);
  const own: Kept =
    before?.stamp === stamp
      ? before
      : {
          lines: before?.lines ?? new Map(),
          stamp,
          masses: await massesOf(read),
          holdings: new Map(),
        };
  kept.set(read, own);
  if (own.holdings.size > MOST_TEXTS) own.holdings.clear();
  const unread = figures.filter((row) => !own.holdings.has(row.figures));
  await learnLines(read, own.lines, unread);
  for (const row of unread)
    if (!own.holdings.has(row.figures)) own.holdings.set(row.figures, holdingOf(row.figures, own));
  return new Map(figures.map((row) => [row.set_id, own.holdings.get(row.figures) ?? NOTHING_IN_IT]));
}

const massesOf = async (read: Queries): Promise<Kept['masses']> =>
  new Map(
    (await read.select({ id: items.id, grams: items.massGrams }).from(items)).map(({ id, grams }) => [
      id,
      grams,
    ]),
  );

const pairsOf = (figures: string): [lineId: string, found: number][] =>
  figures.split(',').map((pair) => {
    const [line = '', found] = pair.split(' ');
    return [line, Number(found)];
  });

async function learnLines(
  read: Queries,
  lines: Kept['lines'],
  rows: readonly { figures: string }[],
): Promise<void> {
  const wanted = new Set(rows.flatMap(({ figures }) => pairsOf(figures).map(([line]) => line)));
  const missing = [...wanted].filter((id) => !lines.has(id));
  if (missing.length === 0) return;
  const found = await read
    .select({
      id: configurationLines.id,
      itemId: configurationLines.itemId,
      expected: configurationLines.expected,
      rank: configurationLines.mustHaveClass,
    })
    .from(configurationLines)
    .where(inArray(configurationLines.id, sql`(SELECT value FROM json_each(${JSON.stringify(missing)}))`));
  for (const { id, itemId, expected, rank } of found)
    lines.set(id, { itemId: itemId as ItemId, expected, mustHaveClass: rank as MustHaveClass });
}

/** The figures of one set by item: an item on several lines is one heap. */
function holdingOf(figures: string, { lines, masses }: Kept): Holding {
  const byItem = new Map<string, StoredSet['contents'][number]>();
  let massGrams: number | null = 0;
  let lacks = false;
  for (const [lineId, found] of pairsOf(figures)) {
    const line = lines.get(lineId);
    if (!line) continue;
    lacks ||= found < line.expected;
    const grams = masses.get(line.itemId) ?? null;
    if (found > 0 && massGrams !== null) massGrams = grams === null ? null : massGrams + found * grams;
    const heap = byItem.get(line.itemId);
    if (heap) {
      heap.found += found;
      heap.expected += line.expected;
      heap.mustHaveClass = Math.min(heap.mustHaveClass, line.mustHaveClass) as MustHaveClass;
    } else byItem.set(line.itemId, { ...line, found });
  }
  return { contents: [...byItem.values()], massGrams, lacks };
}
