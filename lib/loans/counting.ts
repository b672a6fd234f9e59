/** A count of a loan as it came (`in`) or as it goes (`out`). */
export type LoanStage = 'in' | 'out';
/** A count, the blind check of it by another person, or the counting again of the lines on which those differ. */
export type LoanCountPurpose = 'count' | 'check' | 'settle';

/** Pieces of one line: those in order, and those damaged. Nobody counted where there is no figure. */
export interface Pieces {
  sound: number;
  damaged: number;
}

export interface LoanCount {
  purpose: LoanCountPurpose;
  personId: string;
  at: string;
  figures: ReadonlyMap<string, Pieces>;
}

export interface ListLine {
  id: string;
  quantity: number;
  /** `null`: nobody says. */
  implant: boolean | null;
}

/** What is to be done next about a stage's counts, or that nothing is. */
export type CountingNext = LoanCountPurpose | 'done';

export interface CountStanding {
  next: CountingNext;
  /** Lines on which the two counts differ and nobody has counted again. */
  disputed: string[];
  /** What each line is taken to hold; a line whose two figures differ has none until it is counted again. */
  figures: ReadonlyMap<string, Pieces>;
  /** Who counted first: the check is somebody else's. */
  firstBy: string | null;
}

type SecondCheck = 'always' | 'implantsAndShort' | 'never';

/**
 * How a stage's counts stand. The second person checks blind where the bench's own setting asks for it; a line of which
 * nobody says whether it is an implant counts as one.
 */
export function countStanding(
  lines: readonly ListLine[],
  counts: readonly LoanCount[],
  secondCheck: SecondCheck,
): CountStanding {
  const of = (purpose: LoanCountPurpose) => counts.find((one) => one.purpose === purpose);
  const [first, check, settle] = [of('count'), of('check'), of('settle')];
  if (!first) return { next: 'count', disputed: [], figures: new Map(), firstBy: null };
  const disputed = check
    ? lines.map(({ id }) => id).filter((id) => !samePieces(first.figures.get(id), check.figures.get(id)))
    : [];
  const figures = new Map(first.figures);
  for (const id of disputed) {
    const again = settle?.figures.get(id);
    if (again) figures.set(id, again);
    else figures.delete(id);
  }
  const open = disputed.filter((id) => !figures.has(id));
  const needed = checkNeeded(lines, first.figures, secondCheck);
  const next = needed && !check ? 'check' : open.length > 0 ? 'settle' : 'done';
  return { next, disputed: open, figures, firstBy: first.personId };
}

const samePieces = (a: Pieces | undefined, b: Pieces | undefined): boolean =>
  a?.sound === b?.sound && a?.damaged === b?.damaged;

function checkNeeded(
  lines: readonly ListLine[],
  figures: ReadonlyMap<string, Pieces>,
  secondCheck: SecondCheck,
): boolean {
  if (secondCheck !== 'implantsAndShort') return secondCheck === 'always';
  return lines.some(({ id, quantity, implant }) => {
    const found = figures.get(id);
    return implant !== false || found === undefined || found.sound < quantity;
  });
}
