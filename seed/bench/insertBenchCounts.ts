import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { sha256 } from '@/db/ledger';
import {
  asidePieces,
  benchCounts,
  benchEntries,
  configurationLines,
  countLines,
  counts,
  disputedLines,
  refillJobs,
  sets,
} from '@/db/schema';
import { type BenchEntry, benchAct } from '@/lib/bench/act';
import { digestText } from '@/lib/bench/digest';
import { groupBy } from '@/lib/lists/groupBy';
import type { DemoPerson } from '../hospital/people';
import type { HospitalClock } from '../hospitalClock';
import { setIdOf } from '../insertSets';
import { SETS } from '../sets/sets';

/** Sets whose counts of the present turn are told: who counted, who checked blind, and how. */
const COUNTED: readonly { code: string; by: DemoPerson; checkedBy: DemoPerson }[] = [
  { code: 'SFS-03', by: 'person_tomas-birkett', checkedBy: 'person_jolene-stott' },
  { code: 'DRT-04', by: 'person_jolene-stott', checkedBy: 'person_wren-adeyemi' },
  // the two differ: its count is disputed
  { code: 'PTT-02', by: 'person_tomas-birkett', checkedBy: 'person_jolene-stott' },
];
const MINUTE = 60_000;

type Line = typeof countLines.$inferSelect;

/** What stood on the bench before the demo begins: counts entry by entry, their checks, and what followed from them. */
export async function insertBenchCounts(write: Queries, clock: HospitalClock): Promise<void> {
  const setOf = new Map((await write.select().from(sets)).map((row) => [row.id, row]));
  const linesOf = groupBy(await write.select().from(countLines), ({ countId }) => countId);
  for (const { code, by, checkedBy } of COUNTED) {
    const plan = SETS.find((one) => one.code === code);
    const set = setOf.get(setIdOf(code));
    if (!plan || !set?.turnId) throw new Error(`${code} is in no turn`);
    const end = clock.now.getTime() - plan.hoursInStep * 60 * MINUTE;
    const first = `count_demo-${code.toLowerCase()}-1`;
    const second = `count_demo-${code.toLowerCase()}-2`;
    const lines = linesOf.get(first) ?? [];
    const known = linesOf.get(second) ?? [];
    const checked = known.length > 0 ? known : lines.map((line) => ({ ...line, countId: second }));
    if (known.length === 0) {
      const countedAt = new Date(end - 15 * MINUTE).toISOString();
      await insertMany(write, counts, [
        {
          id: second,
          setId: set.id,
          versionId: set.versionId,
          countedBy: checkedBy,
          countedAt,
          baseRevision: 1,
        },
      ]);
      await insertMany(write, countLines, checked);
    }
    await insertCount(write, set, {
      id: first,
      purpose: 'count',
      by,
      lines,
      from: end - 70 * MINUTE,
      to: end - 45 * MINUTE,
    });
    await insertCount(write, set, {
      id: second,
      purpose: 'check',
      by: checkedBy,
      lines: checked,
      from: end - 40 * MINUTE,
      to: end - 15 * MINUTE,
    });
    await insertConsequences(write, set, by, lines, checked, new Date(end - 15 * MINUTE).toISOString());
  }
}

async function insertCount(
  write: Queries,
  set: typeof sets.$inferSelect,
  count: {
    id: string;
    purpose: 'count' | 'check';
    by: DemoPerson;
    lines: readonly Line[];
    from: number;
    to: number;
  },
): Promise<void> {
  const { id, purpose, by, lines, from, to } = count;
  const entries = lines.map(
    ({ lineId, found }, at): BenchEntry => ({
      id: `entry_${id.slice(6)}-${at + 1}`,
      act: benchAct.parse({ kind: 'found', lineId, pieces: found }),
      doneAt: new Date(from + Math.floor(((to - from) * (at + 1)) / (lines.length + 1))).toISOString(),
    }),
  );
  // closed only after its entries are in: a closed count takes none
  const begun = {
    id,
    setId: set.id,
    turnId: set.turnId ?? '',
    versionId: set.versionId,
    purpose,
    personId: by,
    workstationId: null,
    baseRevision: 1,
    beganAt: new Date(from).toISOString(),
  };
  await insertMany(write, benchCounts, [begun]);
  await insertMany(
    write,
    benchEntries,
    entries.map(({ id: entryId, act, doneAt }) => ({
      id: entryId,
      countId: id,
      act,
      personId: by,
      doneAt,
      enteredAt: doneAt,
    })),
  );
  const closed = {
    closedAt: new Date(to).toISOString(),
    entryCount: entries.length,
    entryDigest: sha256(digestText(id, by, entries)),
  };
  await write
    .insert(benchCounts)
    .values({ ...begun, ...closed })
    .onConflictDoUpdate({ target: benchCounts.id, set: closed });
}

/** Disputes where the two differ, refills asked for where pieces are short, and the unfit pieces on their way. */
async function insertConsequences(
  write: Queries,
  set: typeof sets.$inferSelect,
  by: DemoPerson,
  lines: readonly Line[],
  checked: readonly Line[],
  at: string,
): Promise<void> {
  const rows = await write.select().from(configurationLines);
  const itemOf = new Map(rows.map(({ id, itemId }) => [id, itemId]));
  const code = set.code.toLowerCase();
  const short = lines.filter(({ found, expected }) => found < expected);
  await insertMany(
    write,
    refillJobs,
    short.map(({ lineId, found, expected }, index) => ({
      id: `refill_demo-${code}-${index + 1}`,
      setId: set.id,
      lineId,
      itemId: itemOf.get(lineId) ?? '',
      quantity: expected - found,
      foundBy: by,
      openedAt: at,
      turnId: set.turnId,
    })),
  );
  await insertMany(
    write,
    asidePieces,
    lines
      .filter(({ unsound }) => unsound > 0)
      .map(({ lineId, unsound, condition }, index) => ({
        id: `aside_demo-${code}-${index + 1}`,
        itemId: itemOf.get(lineId) ?? '',
        setId: set.id,
        lineId,
        quantity: unsound,
        condition,
        route: 'repair',
        foundBy: by,
        foundAt: at,
      })),
  );
  await insertMany(
    write,
    disputedLines,
    checked.flatMap(({ countId, lineId, found }) => {
      const first = lines.find((line) => line.lineId === lineId);
      if (!first || first.found === found) return [];
      return [
        {
          firstCountId: first.countId,
          secondCountId: countId,
          lineId,
          setId: set.id,
          turnId: set.turnId ?? '',
          firstPieces: first.found,
          secondPieces: found,
          openedAt: at,
        },
      ];
    }),
  );
}
