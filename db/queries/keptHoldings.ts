import { inArray, sql } from 'drizzle-orm';
import type { ItemId } from '@/lib/identity/ids';
import type { StoredSet } from '@/lib/kits/store';
import type { MustHaveClass } from '@/lib/sets/configuration';
import type { Queries } from '../client';
import { configurationLines, items, setCompleteness, setContents } from '../schema';

/** What lies in a set by item, and what that weighs; a piece of unknown mass makes the whole unknown. */
type Holding = Readonly<Pick<StoredSet, 'contents' | 'massGrams'>> & {
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
  /** What was found in each set, as one text, and the mark it had then. */
  figures: Map<string, { mark: number; text: string }>;
  /** Of versions in force or superseded, which never change. */
  lines: Map<string, Line>;
  /** The catalogue's masses as of a stamp, and what was read under it, by the text of a set's figures. */
  stamp: string;
  masses: Map<string, number | null>;
  holdings: Map<string, Holding>;
}
const kept = new WeakMap<Queries, Kept>();

/** Texts kept at most; past so many all are let go, and those that are still needed are worked out anew. */
const MOST_TEXTS = 20_000;

/**
 * What lies in every set. Only sets whose mark is another are read again, in one text each; what a text says is worked out once,
 * and sets of which it says the same share the very same holding, so that what is remembered about one is good for all of them.
 * Nobody may change a holding.
 */
export async function keptHoldings(read: Queries): Promise<ReadonlyMap<string, Holding>> {
  const own = await keptFor(read);
  const marks = await read
    .select({ setId: setCompleteness.setId, mark: setCompleteness.mark })
    .from(setCompleteness);
  await readChanged(
    read,
    own,
    marks.filter(({ setId, mark }) => own.figures.get(setId)?.mark !== mark),
  );
  const textOf = (setId: string) => own.figures.get(setId)?.text ?? '';
  if (own.holdings.size > MOST_TEXTS) own.holdings.clear();
  const unknown = new Set(marks.map(({ setId }) => textOf(setId)).filter((text) => !own.holdings.has(text)));
  await learnLines(read, own.lines, [...unknown]);
  for (const text of unknown) own.holdings.set(text, holdingOf(text, own));
  return new Map(marks.map(({ setId }) => [setId, own.holdings.get(textOf(setId)) ?? NOTHING_IN_IT]));
}

async function keptFor(read: Queries): Promise<Kept> {
  const [row] = await read.all<{ stamp: string }>(
    sql`SELECT count(*) || '/' || coalesce(sum(revision), 0) || '/' || coalesce(max(rowid), 0) AS stamp FROM ${items}`,
  );
  const stamp = row?.stamp ?? '';
  const before = kept.get(read);
  if (before?.stamp === stamp) return before;
  const own: Kept = {
    figures: before?.figures ?? new Map(),
    lines: before?.lines ?? new Map(),
    stamp,
    masses: await massesOf(read),
    holdings: new Map(),
  };
  kept.set(read, own);
  return own;
}

async function readChanged(
  read: Queries,
  { figures }: Kept,
  changed: readonly { setId: string; mark: number }[],
): Promise<void> {
  if (changed.length === 0) return;
  const ids = JSON.stringify(changed.map(({ setId }) => setId));
  const rows = await read.all<{ set_id: string; text: string }>(sql`
    SELECT set_id, group_concat(line_id || ' ' || found) AS text FROM ${setContents}
    WHERE set_id IN (SELECT value FROM json_each(${ids})) GROUP BY set_id`);
  const textOf = new Map(rows.map((row) => [row.set_id, row.text]));
  for (const { setId, mark } of changed) figures.set(setId, { mark, text: textOf.get(setId) ?? '' });
}

const massesOf = async (read: Queries): Promise<Kept['masses']> =>
  new Map(
    (await read.select({ id: items.id, grams: items.massGrams }).from(items)).map(({ id, grams }) => [
      id,
      grams,
    ]),
  );

const pairsOf = (text: string): [lineId: string, found: number][] =>
  text === ''
    ? []
    : text.split(',').map((pair) => {
        const [line = '', found] = pair.split(' ');
        return [line, Number(found)];
      });

async function learnLines(read: Queries, lines: Kept['lines'], texts: readonly string[]): Promise<void> {
  const wanted = new Set(texts.flatMap((text) => pairsOf(text).map(([line]) => line)));
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
function holdingOf(text: string, { lines, masses }: Kept): Holding {
  const byItem = new Map<string, StoredSet['contents'][number]>();
  let massGrams: number | null = 0;
  let lacks = false;
  for (const [lineId, found] of pairsOf(text)) {
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
