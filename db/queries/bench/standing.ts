import { and, asc, count, eq, isNull } from 'drizzle-orm';
import type { CountPurpose } from '@/lib/bench/closing';
import type { BenchStanding, OpenCount, OpenDispute, ShortLine } from '@/lib/bench/packable';
import { isImplant } from '@/lib/bench/routes';
import { groupBy } from '@/lib/lists/groupBy';
import { turnStep } from '@/lib/sets/setState';
import type { Queries } from '../../client';
import { lineFromRow } from '../../mappers/configuration';
import { mayRead, type Reading, THE_PROGRAM } from '../../reader';
import {
  benchCounts,
  benchEntries,
  configurationLines,
  counts,
  items,
  people,
  setContents,
  setForeignPieces,
  sets,
} from '../../schema';
import { readSetting } from '../settings';
import { isBlind } from './blind';
import { countsGoodFrom, isOpen, openDisputes, type StatedLine, statedLines } from './turnCounts';

/**
 * How the counts of a set's present turn stand, for a screen; `null` where there is no such set. What a reader with a
 * blind check open must not see is left out.
 */
export async function loadBenchStanding(db: Reading, setId: string): Promise<BenchStanding | null> {
  mayRead(db, 'readHospital');
  const standing = await benchStandingOf(db.read, setId);
  if (!standing || db.reader === THE_PROGRAM) return standing;
  if (!(await isBlind(db.read, db.reader.id, setId))) return standing;
  const shortByClass = { 1: 0, 2: 0, 3: 0, 4: 0 };
  return { ...standing, disputes: [], foreign: 0, surplus: 0, short: [], shortByClass, blind: true };
}

/** The same inside or outside a write, for whoever decides: nothing is left out. */
export async function benchStandingOf(read: Queries, setId: string): Promise<BenchStanding | null> {
  const [set] = await read.select().from(sets).where(eq(sets.id, setId));
  if (!set) return null;
  const [rows, contents, foreign, stated, disputes, open, { secondCheck }] = await Promise.all([
    read
      .select({ line: configurationLines, kind: items.kind })
      .from(configurationLines)
      .innerJoin(items, eq(items.id, configurationLines.itemId))
      .where(eq(configurationLines.versionId, set.versionId))
      .orderBy(asc(configurationLines.layer), asc(configurationLines.row), asc(configurationLines.slot)),
    read.select().from(setContents).where(eq(setContents.setId, setId)),
    read.select().from(setForeignPieces).where(eq(setForeignPieces.setId, setId)),
    statedLines(read, set),
    disputesOf(read, setId),
    openCountsOf(read, setId),
    readSetting(read, 'bench'),
  ]);
  const held = new Map(contents.map(({ lineId, found }) => [lineId, found]));
  const lines = rows.map(({ line }) => lineFromRow(line));
  const byLine = groupBy(stated, ({ lineId }) => lineId);
  const short = lines.flatMap((line): ShortLine[] => {
    const found = held.get(line.id);
    if (found === undefined || found >= line.expected) return [];
    const { id: lineId, itemId, mustHaveClass, expected, minimum, substitutes } = line;
    return [{ lineId, itemId, mustHaveClass, expected, minimum, found, substitutes }];
  });
  const shortByClass = { 1: 0, 2: 0, 3: 0, 4: 0 };
  for (const { mustHaveClass } of short) shortByClass[mustHaveClass] += 1;
  const implants = rows.some(({ kind }) => isImplant({ kind: kind as never }));
  return {
    setId,
    code: set.code,
    step: turnStep.parse(set.step),
    turnId: set.turnId,
    versionId: set.versionId,
    lines: lines.length,
    counted: lines.filter(({ id }) => byLine.has(id)).length,
    checked: lines.filter(({ id }) => isChecked(byLine.get(id) ?? [])).length,
    checkNeeded:
      secondCheck === 'always' || (secondCheck === 'implantsAndShort' && (implants || short.length > 0)),
    countedBy: [...new Map(stated.map(({ personId, person }) => [personId, person]))].map(
      ([personId, name]) => ({ personId, name }),
    ),
    openCounts: open,
    disputes,
    foreign: foreign.reduce((sum, { quantity }) => sum + quantity, 0),
    surplus: lines.reduce((sum, { id, expected }) => sum + Math.max(0, (held.get(id) ?? 0) - expected), 0),
    refillsOfOne: await refillsOfOne(read, set, stated),
    short,
    shortByClass,
    blind: false,
  };
}

/**
 * Two people have counted the line, and the later one could not see the earlier one's figure: by a blind check, by a
 * count that was open already when the first was closed, or both of them together in a settling.
 */
function isChecked(stated: readonly StatedLine[]): boolean {
  return stated.some(
    (later, at) =>
      later.purpose === 'settle' ||
      stated
        .slice(0, at)
        .some(
          (first) =>
            first.personId !== later.personId &&
            (later.purpose === 'check' || later.beganAt < first.closedAt),
        ),
  );
}

async function disputesOf(read: Queries, setId: string): Promise<OpenDispute[]> {
  const rows = await openDisputes(read, setId);
  if (rows.length === 0) return [];
  const who = await read
    .select({ id: counts.id, name: people.name })
    .from(counts)
    .innerJoin(people, eq(people.id, counts.countedBy))
    .where(eq(counts.setId, setId));
  const nameOf = new Map(who.map(({ id, name }) => [id, name]));
  return rows.map((row) => ({
    lineId: row.lineId,
    firstBy: nameOf.get(row.firstCountId) ?? '',
    first: row.firstPieces,
    secondBy: nameOf.get(row.secondCountId) ?? '',
    second: row.secondPieces,
  }));
}

async function openCountsOf(read: Queries, setId: string): Promise<OpenCount[]> {
  const rows = await read
    .select({
      countId: benchCounts.id,
      purpose: benchCounts.purpose,
      personId: benchCounts.personId,
      person: people.name,
      since: benchCounts.beganAt,
      entries: count(benchEntries.id),
    })
    .from(benchCounts)
    .innerJoin(people, eq(people.id, benchCounts.personId))
    .leftJoin(benchEntries, eq(benchEntries.countId, benchCounts.id))
    .where(and(eq(benchCounts.setId, setId), isOpen))
    .groupBy(benchCounts.id)
    .orderBy(asc(benchCounts.beganAt));
  return rows.map((row) => ({ ...row, purpose: row.purpose as CountPurpose }));
}

/** Lines with a look-alike put in by one person, which no other person has counted since. */
async function refillsOfOne(
  read: Queries,
  set: typeof sets.$inferSelect,
  stated: readonly StatedLine[],
): Promise<number> {
  if (set.turnId === null) return 0;
  const from = await countsGoodFrom(read, set);
  const rows = await read
    .select({ entry: benchEntries })
    .from(benchEntries)
    .innerJoin(benchCounts, eq(benchCounts.id, benchEntries.countId))
    .where(
      and(eq(benchCounts.setId, set.id), eq(benchCounts.turnId, set.turnId), isNull(benchCounts.abandonedAt)),
    );
  const undone = new Set(
    rows.flatMap(({ entry }) => {
      const act = entry.act as { kind: string; entryId?: string };
      return act.kind === 'undo' && act.entryId ? [act.entryId] : [];
    }),
  );
  const open = rows.flatMap(({ entry }) => {
    if (!entry.needsSecond || entry.secondPersonId !== null || undone.has(entry.id)) return [];
    if (entry.enteredAt < from) return [];
    const { lineId } = entry.act as { lineId: string };
    const seen = stated.some(
      (one) =>
        one.lineId === lineId &&
        (one.purpose === 'settle' || (one.personId !== entry.personId && one.beganAt >= entry.enteredAt)),
    );
    return seen ? [] : [lineId];
  });
  return new Set(open).size;
}
