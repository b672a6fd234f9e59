import { eq } from 'drizzle-orm';
import { type CompletenessOutput, percentFound } from '@/lib/calculations/completeness/completeness';
import { mustHaves as mustHavesOf } from '@/lib/calculations/completeness/mustHaves';
import type { Item } from '@/lib/catalogue/item';
import { configurationVersionId, type ItemId, type SetId } from '@/lib/identity/ids';
import { completenessInputOf, type HeldLine, type SetSettings } from '@/lib/sets/holdings';
import type { Queries } from '../client';
import { prepared } from '../prepared';
import { mayRead, type Reading, THE_PROGRAM } from '../reader';
import { setCompleteness, sets } from '../schema';
import { hiddenFrom } from './bench/blind';
import { keptCatalogue } from './caseKit';
import { itemsById } from './itemsById';
import { keptLines } from './keptLines';
import { keptVersions } from './keptVersions';
import { loadSetSettings } from './sets';

/** How complete one set is, and what its shortage stops by must-have class. */
export interface SetCompleteness {
  setId: SetId;
  pieces: CompletenessOutput['pieces'];
  mustHaves: CompletenessOutput['mustHaves'];
  /** Lines that nobody has counted. */
  uncounted: number;
  /** Pieces put aside. */
  unsound: number;
  /** Lines short of what is expected, by class. */
  shortLines: Record<1 | 2 | 3 | 4, number>;
  /** Must-have lines below their minimum that nothing stands in for: each stops its step. */
  stopped: Record<1 | 2, number>;
}

// read as plain rows: of thousands of sets, making objects of them would take longer than reading them
const keptFigures = prepared((read) => {
  const { setId: id, lines, expected, found, surplus, unsound, uncounted, musts, below } = setCompleteness;
  const { short1, short2, short3, short4 } = setCompleteness;
  const counted = { lines, expected, found, surplus, unsound, uncounted, musts, below };
  return read
    .select({ id, versionId: sets.versionId, ...counted, short1, short2, short3, short4 })
    .from(setCompleteness)
    .innerJoin(sets, eq(sets.id, setCompleteness.setId))
    .prepare();
});

type FiguresRow = [
  id: string,
  versionId: string,
  lines: number,
  expected: number,
  found: number,
  surplus: number,
  unsound: number,
  uncounted: number,
  musts: number,
  below: number,
  short1: number,
  short2: number,
  short3: number,
  short4: number,
];

/** For whoever is blind to a set: nobody has counted it. */
const asUncounted = ([id, version, lines, expected, , , , , musts]: FiguresRow): FiguresRow => {
  const [found, surplus, unsound, short] = [0, 0, 0, 0];
  return [
    id,
    version,
    lines,
    expected,
    found,
    surplus,
    unsound,
    lines,
    musts,
    musts,
    short,
    short,
    short,
    short,
  ];
};

/**
 * How complete every set of the hospital is: the figures of the calculation `completeness`, exactly, from sums that are kept
 * as contents are written. Whole lines are read only of sets whose must-haves are not all simply there, where it matters
 * what may stand in. For a reader who is blind to a set, nobody has counted it.
 */
export async function completenessOfSets(db: Reading): Promise<SetCompleteness[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const rows = keptFigures(read).values() as FiguresRow[];
  const [hidden, versions, catalogue, settings] = await Promise.all([
    hiddenFrom(db),
    keptVersions({ read, reader: THE_PROGRAM }),
    keptCatalogue(db),
    loadSetSettings(db),
  ]);
  const inDoubt = new Set<string>();
  for (const [id, , , , , , , , , below] of rows) if (below > 0 || hidden.has(id)) inDoubt.add(id);
  const linesOf = await keptLines(read, inDoubt);
  const by = { items: itemsById(catalogue), limits: JSON.stringify(settings) };
  const held: Lines[] = [];
  const answer = rows.map((row): SetCompleteness => {
    const isHidden = hidden.has(row[0]);
    const known = isHidden ? asUncounted(row) : row;
    const [id, versionId, , expected, found, surplus, unsound, uncounted, musts, below] = known;
    const [, , , , , , , , , , short1, short2, short3, short4] = known;
    const mustHaves = below === 0 ? { met: musts, of: musts, lines: [] } : judged(id, versionId, isHidden);
    return {
      // the table takes no other ids; of thousands, reading each anew takes longer than all sums
      setId: id as SetId,
      pieces: { found, expected, percent: percentFound(found, expected), surplus },
      mustHaves,
      uncounted,
      unsound,
      shortLines: { 1: short1, 2: short2, 3: short3, 4: short4 },
      stopped: { 1: stoppedOf(mustHaves, 1), 2: stoppedOf(mustHaves, 2) },
    };
  });
  heldFrom.set(read, held);
  return answer;

  function judged(id: string, versionId: string, isHidden: boolean) {
    const of = versions.get(configurationVersionId.parse(versionId))?.lines ?? [];
    const lines = linesOf(id, of, isHidden);
    held.push(lines);
    return judgedOnce(lines, by, settings);
  }
}

type Lines = readonly HeldLine[];
type MustHaves = CompletenessOutput['mustHaves'];
/** What must-haves are judged by beside the lines: the catalogue, and the hospital's limits as one text. */
interface JudgedBy {
  items: ReadonlyMap<ItemId, Item>;
  limits: string;
}

const judgedBefore = new WeakMap<Lines, JudgedBy & { mustHaves: MustHaves }>();
/** The lines of the last answer, which would be let go otherwise, and read and judged again. */
const heldFrom = new WeakMap<Queries, Lines[]>();

/** Lines that are the very same, judged by the same, are judged once: what lies in most sets is as it was a moment ago. */
function judgedOnce(lines: Lines, by: JudgedBy, settings: SetSettings): MustHaves {
  const before = judgedBefore.get(lines);
  if (before?.items === by.items && before.limits === by.limits) return before.mustHaves;
  const mustHaves = mustHavesOf(completenessInputOf(lines, [], by.items, settings));
  judgedBefore.set(lines, { ...by, mustHaves });
  return mustHaves;
}

const stoppedOf = ({ lines }: CompletenessOutput['mustHaves'], mustHaveClass: 1 | 2): number =>
  lines.filter((line) => line.state === 'notMet' && line.mustHaveClass === mustHaveClass).length;
