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

type FiguresRow = [id: string, versionId: string, ...number[]];

const figuresFrom = ([id, versionId, ...figures]: FiguresRow) => {
  const [lines = 0, expected = 0, found = 0, surplus = 0, unsound = 0, uncounted = 0, ...others] = figures;
  const [musts = 0, below = 0, short1 = 0, short2 = 0, short3 = 0, short4 = 0] = others;
  const counted = { lines, expected, found, surplus, unsound, uncounted, musts, below };
  return { id, versionId, ...counted, short1, short2, short3, short4 };
};

/**
 * How complete every set of the hospital is: the figures of the calculation `completeness`, exactly, from sums that are kept
 * as contents are written. Whole lines are read only of sets whose must-haves are not all simply there, where it matters
 * what may stand in. For a reader who is blind to a set, nobody has counted it.
 */
export async function completenessOfSets(db: Reading): Promise<SetCompleteness[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const rows = (keptFigures(read).values() as FiguresRow[]).map(figuresFrom);
  const [hidden, versions, catalogue, settings] = await Promise.all([
    hiddenFrom(db),
    keptVersions({ read, reader: THE_PROGRAM }),
    keptCatalogue(db),
    loadSetSettings(db),
  ]);
  const inDoubt = rows.filter(({ id, below }) => below > 0 || hidden.has(id));
  const linesOf = await keptLines(read, new Set(inDoubt.map(({ id }) => id)));
  const items = itemsById(catalogue);
  const held: Lines[] = [];
  const answer = rows.map((row): SetCompleteness => {
    const isHidden = hidden.has(row.id);
    const known = isHidden ? { ...row, ...NOTHING_FOUND, uncounted: row.lines, below: row.musts } : row;
    const mustHaves =
      known.below === 0 ? { met: known.musts, of: known.musts, lines: [] } : judged(known, isHidden);
    return {
      // the table takes no other ids; of thousands, reading each anew takes longer than all sums
      setId: row.id as SetId,
      pieces: {
        found: known.found,
        expected: known.expected,
        percent: percentFound(known.found, known.expected),
        surplus: known.surplus,
      },
      mustHaves,
      uncounted: known.uncounted,
      unsound: known.unsound,
      shortLines: { 1: known.short1, 2: known.short2, 3: known.short3, 4: known.short4 },
      stopped: { 1: stoppedOf(mustHaves, 1), 2: stoppedOf(mustHaves, 2) },
    };
  });
  heldFrom.set(read, held);
  return answer;

  function judged({ id, versionId }: { id: string; versionId: string }, isHidden: boolean) {
    const of = versions.get(configurationVersionId.parse(versionId))?.lines ?? [];
    const lines = linesOf(id, of, isHidden);
    held.push(lines);
    return judgedOnce(lines, items, settings);
  }
}

type Lines = readonly HeldLine[];
type MustHaves = CompletenessOutput['mustHaves'];
type Items = ReadonlyMap<ItemId, Item>;

const judgedBefore = new WeakMap<Lines, { items: Items; mustHaves: MustHaves }>();
/** The lines of the last answer, which would be let go otherwise, and read and judged again. */
const heldFrom = new WeakMap<Queries, Lines[]>();

/** Lines that are the very same, of the same items, are judged once: what lies in most sets is as it was a moment ago. */
function judgedOnce(lines: Lines, items: Items, settings: SetSettings): MustHaves {
  const before = judgedBefore.get(lines);
  if (before?.items === items) return before.mustHaves;
  const mustHaves = mustHavesOf(completenessInputOf(lines, [], items, settings));
  judgedBefore.set(lines, { items, mustHaves });
  return mustHaves;
}

const NOTHING_FOUND = { found: 0, surplus: 0, unsound: 0, short1: 0, short2: 0, short3: 0, short4: 0 };

const stoppedOf = ({ lines }: CompletenessOutput['mustHaves'], mustHaveClass: 1 | 2): number =>
  lines.filter((line) => line.state === 'notMet' && line.mustHaveClass === mustHaveClass).length;
