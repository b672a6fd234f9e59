import { and, eq, inArray, sql } from 'drizzle-orm';
import type { CountId, SetId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { type CountEntry, canBeCounted, checkCount, countEntry } from '@/lib/sets/count';
import { turnStep } from '@/lib/sets/setState';
import { countWords as words } from '@/lib/wording/counts';
import type { Database, Queries } from '../client';
import { appendLedger } from '../ledger';
import { lineFromRow } from '../mappers/configuration';
import type { Person } from '../queries/people';
import { type ContentsNow, contentsNow } from '../queries/setContents';
import {
  configurationLines,
  countLines,
  counts,
  items,
  setContents,
  setForeignPieces,
  sets,
} from '../schema';

interface RecordCount {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  /** As sent from outside; parsed here against `countEntry`. */
  entry: unknown;
}

export interface RecordedCount {
  id: CountId;
  setId: SetId;
  /** The set's revision after the count. */
  revision: number;
}

/**
 * Records one person's count and makes it what the set holds. The same count sent twice is recorded once; a count that
 * began before someone else changed the set is refused, with both values to show and nothing overwritten.
 */
export async function recordCount(request: RecordCount): Promise<Outcome<RecordedCount, ContentsNow>> {
  const { db, now, person } = request;
  if (!may(person.role, 'countSet')) return refused('notPermitted', words.notPermitted(person.name));
  const parsed = countEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const entry = parsed.data;
  return db.tx(async (write) => {
    const [set] = await write.select().from(sets).where(eq(sets.id, entry.setId));
    if (!set) return refused('notFound', words.noSuchSet);
    const [before] = await write.select().from(counts).where(eq(counts.id, entry.id));
    if (before) {
      return before.setId === entry.setId && before.countedBy === person.id
        ? { ok: true, value: { id: entry.id, setId: entry.setId, revision: before.baseRevision + 1 } }
        : refused('conflict', words.changed(set.code));
    }
    if (!canBeCounted(turnStep.parse(set.step))) return refused('frozen', words.sealed(set.code));
    if (set.revision !== entry.baseRevision) {
      return refused('conflict', words.changed(set.code), await contentsNow(write, set));
    }
    const lines = await write
      .select()
      .from(configurationLines)
      .where(eq(configurationLines.versionId, set.versionId));
    const known = lines.map(lineFromRow);
    const problems = [
      ...checkCount(entry, known),
      ...(await unknownForeign(write, entry)),
      ...entry.foreign.flatMap(({ note }, at) => textProblems(note ?? '', ['foreign', at, 'note'])),
    ];
    if (problems.length > 0) return refusedFor(problems);
    await writeCount(
      write,
      entry,
      set.versionId,
      new Map(known.map(({ id, expected }) => [id, expected])),
      person,
      now,
    );
    const revision = set.revision + 1;
    await write
      .update(sets)
      .set({ revision })
      .where(and(eq(sets.id, set.id), eq(sets.revision, set.revision)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'record-count',
      subjectKind: 'set',
      subjectId: set.id,
      detail: { countId: entry.id, lines: entry.lines, foreign: entry.foreign, revision },
    });
    return { ok: true, value: { id: entry.id, setId: entry.setId, revision } };
  });
}

/** Foreign pieces are named from the catalogue; one that is not in it can't be. */
async function unknownForeign(write: Queries, { foreign }: CountEntry): Promise<Problem[]> {
  if (foreign.length === 0) return [];
  const named = foreign.map(({ itemId }) => itemId);
  const rows = await write.select({ id: items.id }).from(items).where(inArray(items.id, named));
  const known = new Set(rows.map(({ id }) => id));
  return foreign.flatMap(({ itemId }, at) =>
    known.has(itemId)
      ? []
      : [{ path: ['foreign', at, 'itemId'], code: 'unknown-item', message: words.unknownForeign(itemId) }],
  );
}

async function writeCount(
  write: Queries,
  entry: CountEntry,
  versionId: string,
  expectedOf: ReadonlyMap<string, number>,
  person: Person,
  now: string,
): Promise<void> {
  const { id: countId, setId, baseRevision } = entry;
  await write
    .insert(counts)
    .values({ id: countId, setId, versionId, countedBy: person.id, countedAt: now, baseRevision });
  const rows = entry.lines.map(({ lineId, found, unsound, condition }) => ({
    lineId,
    found,
    unsound,
    condition,
  }));
  await write
    .insert(countLines)
    .values(rows.map((row) => ({ ...row, countId, expected: expectedOf.get(row.lineId) ?? 0 })));
  await write
    .insert(setContents)
    .values(rows.map((row) => ({ ...row, setId })))
    .onConflictDoUpdate({
      target: [setContents.setId, setContents.lineId],
      set: { found: sql`excluded.found`, unsound: sql`excluded.unsound`, condition: sql`excluded.condition` },
    });
  const old = await write
    .select({ id: setForeignPieces.id })
    .from(setForeignPieces)
    .where(eq(setForeignPieces.setId, setId));
  if (old.length > 0)
    await write.delete(setForeignPieces).where(
      inArray(
        setForeignPieces.id,
        old.map(({ id }) => id),
      ),
    );
  if (entry.foreign.length > 0) {
    await write
      .insert(setForeignPieces)
      .values(entry.foreign.map((piece, at) => ({ ...piece, id: `${countId}-${at}`, setId })));
  }
}
