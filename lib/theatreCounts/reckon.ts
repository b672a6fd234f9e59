import type { CountMoment } from './act';
import { type AddedItem, type TheatreState, thingKey } from './state';

/** A line of a set's count sheet, as a count in theatre needs it. */
export interface SheetLine {
  setId: string;
  lineId: string;
  itemId: string;
  name: string;
  /** Fit pieces on record in the set as it was packed; `null`: nobody has counted it. */
  recorded: number | null;
}

export interface CountSubject {
  moment: CountMoment;
  /** Every line of every set that went into theatre for the case. */
  lines: readonly SheetLine[];
  /** The last closed first count; `null` where there is none, or this is one. */
  first: TheatreState | null;
}

/** One figure that ought to come out. */
export interface Reckoned {
  key: string;
  setId: string | null;
  lineId: string | null;
  itemId: string | null;
  name: string;
  /** Pieces that ought to be here; `null`: not established, there is nothing to hold the figure against. */
  expected: number | null;
  counted: number | null;
}

/**
 * What ought to be here beside what was counted. A first count is held against what each set was packed with; a final one
 * against the first, with what came to the table since and without what is implanted or was thrown away. A set opened only
 * after the first count is held against what it was packed with.
 */
export function reckon(subject: CountSubject, state: TheatreState): Reckoned[] {
  const { moment, lines, first } = subject;
  const opened = lines.filter(({ setId }) => !state.notOpened.has(setId));
  const ofSets = opened.map(({ setId, lineId, itemId, name, recorded }): Reckoned => {
    const key = thingKey({ kind: 'line', setId, lineId } as never);
    const before = first?.counted.get(key) ?? recorded;
    return {
      key,
      setId,
      lineId,
      itemId,
      name,
      expected: before === null ? null : less(before, key, moment, state),
      counted: state.counted.get(key) ?? null,
    };
  });
  return [...ofSets, ...addedTo(subject, state)];
}

function addedTo({ moment, first }: CountSubject, state: TheatreState): Reckoned[] {
  const known = new Map<string, AddedItem>([...(first?.added ?? []), ...state.added]);
  return [...known.values()].map(({ key: own, itemId, name }): Reckoned => {
    const key = thingKey({ kind: 'added', key: own });
    const now = state.added.get(own)?.pieces ?? 0;
    // what is added in a first count is counted by that
    const counted = moment === 'first' ? now : (state.counted.get(key) ?? null);
    const before = moment === 'first' ? now : (first?.added.get(own)?.pieces ?? 0) + now;
    return {
      key,
      setId: null,
      lineId: null,
      itemId,
      name,
      expected: less(before, key, moment, state),
      counted,
    };
  });
}

function less(
  before: number,
  key: string,
  moment: CountMoment,
  { implanted, discarded }: TheatreState,
): number {
  if (moment === 'first') return before;
  return Math.max(0, before - (implanted.get(key) ?? 0) - (discarded.get(key) ?? 0));
}

export interface TheatreDifference extends Reckoned {
  expected: number;
  counted: number;
}

/** Figures that do not come out. What is not established is no difference, and no agreement either. */
export const differencesOf = (reckoned: readonly Reckoned[]): TheatreDifference[] =>
  reckoned.filter(
    (one): one is TheatreDifference =>
      one.expected !== null && one.counted !== null && one.expected !== one.counted,
  );
