import { sql } from 'drizzle-orm';
import type { ConfigurationLine } from '@/lib/sets/configuration';
import type { HeldLine } from '@/lib/sets/holdings';
import { pieceCondition } from '@/lib/sets/setState';
import type { Queries } from '../client';
import { prepared } from '../prepared';
import { setCompleteness, setContents } from '../schema';

/** What lies in a set, as one text: lines with what was found there, in the order of their ids. */
type Contents = string;
const NOTHING: Contents = '[]';
type ContentsRow = [lineId: string, found: number, unsound: number, condition: string];

const allMarks = prepared((read) => marksIn(read).prepare());
const someMarks = prepared((read) =>
  marksIn(read)
    .where(sql`${setCompleteness.setId} IN (SELECT value FROM json_each(${sql.placeholder('ids')}))`)
    .prepare(),
);
const marksIn = (read: Queries) =>
  read.select({ setId: setCompleteness.setId, mark: setCompleteness.mark }).from(setCompleteness);

// one text for each set: a row for each of a quarter of a million lines would cost more than all the rest
const contentsOf = prepared((read) =>
  read
    .select({
      setId: setContents.setId,
      contents: sql<Contents>`json_group_array(json_array(${setContents.lineId}, ${setContents.found},
        ${setContents.unsound}, ${setContents.condition}))`,
    })
    .from(setContents)
    .where(sql`${setContents.setId} IN (SELECT value FROM json_each(${sql.placeholder('ids')}))`)
    .groupBy(setContents.setId)
    .prepare(),
);

const kept = new WeakMap<Queries, Map<string, { mark: number; contents: Contents }>>();

/**
 * What lies in every set, or in some: read once, and again where it changed. Sets that follow one version and hold the same
 * are given the very same lines, so that what is worked out about them is worked out once; nobody may change them.
 */
export async function keptLines(
  read: Queries,
  only: ReadonlySet<string> | null,
): Promise<(setId: string, of: readonly ConfigurationLine[], isHidden: boolean) => readonly HeldLine[]> {
  const known = kept.get(read) ?? new Map<string, { mark: number; contents: Contents }>();
  kept.set(read, known);
  const wanted =
    only === null ? allMarks(read).all() : someMarks(read).all({ ids: JSON.stringify([...only]) });
  const changed = wanted.filter(({ setId, mark }) => known.get(setId)?.mark !== mark);
  if (changed.length > 0) {
    const ids = JSON.stringify(changed.map(({ setId }) => setId));
    const found = new Map(
      contentsOf(read)
        .all({ ids })
        .map((row) => [row.setId, row.contents]),
    );
    for (const { setId, mark } of changed) known.set(setId, { mark, contents: found.get(setId) ?? NOTHING });
  }
  return (setId, of, isHidden) => linesWith(of, isHidden ? NOTHING : (known.get(setId)?.contents ?? NOTHING));
}

const same = new WeakMap<readonly ConfigurationLine[], Map<Contents, WeakRef<readonly HeldLine[]>>>();

function linesWith(of: readonly ConfigurationLine[], contents: Contents): readonly HeldLine[] {
  const alike = same.get(of) ?? new Map<Contents, WeakRef<readonly HeldLine[]>>();
  same.set(of, alike);
  const before = alike.get(contents)?.deref();
  if (before) return before;
  for (const [text, lines] of alike) if (!lines.deref()) alike.delete(text);
  const counted = new Map((JSON.parse(contents) as ContentsRow[]).map((row) => [row[0], row]));
  const lines = of.map((line): HeldLine => {
    const [, found = null, unsound = 0, condition = 'sound'] = counted.get(line.id) ?? [];
    return { ...line, found, unsound, condition: pieceCondition.parse(condition) };
  });
  alike.set(contents, new WeakRef(lines));
  return lines;
}
