import type { ItemId } from '../identity/ids';
import type { Buildable } from '../kits/buildable';
import type { StepKey } from '../kits/need';
import type { StoredSet } from '../kits/store';
import type { MustHaveClass } from '../sets/configuration';

/** Whether what a set is short of matters for the chosen construct. */
export type Matters =
  /** Without it, by this set alone, these steps stop. */
  | { kind: 'stops'; steps: StepKey[] }
  | { kind: 'no' }
  /** A value it rests on is missing. */
  | { kind: 'notEstablished' }
  /** The plan is not known yet: nothing can be said. */
  | { kind: 'notKnown' };

export interface ShortLine {
  itemId: ItemId;
  /** Pieces short of what the set should hold. */
  short: number;
  mustHaveClass: MustHaveClass;
  matters: Matters;
}

/**
 * What a set is short of, and for each whether it matters for the construct: it does where a need that this set does not meet
 * would take the piece; it does not where every need is met without it.
 *
 * @param built what the set's pieces build of the construct; `null`: the plan is not known yet
 */
export function shortLines(contents: StoredSet['contents'], built: Buildable | null): ShortLine[] {
  return contents
    .filter(({ found, expected }) => found < expected)
    .map(({ itemId, found, expected, mustHaveClass }) => ({
      itemId,
      short: expected - found,
      mustHaveClass,
      matters: matters(itemId, built),
    }))
    .sort((a, b) => RANK[a.matters.kind] - RANK[b.matters.kind] || a.mustHaveClass - b.mustHaveClass);
}

const RANK: Record<Matters['kind'], number> = { stops: 0, notEstablished: 1, notKnown: 2, no: 3 };

function matters(itemId: ItemId, built: Buildable | null): Matters {
  if (built === null) return { kind: 'notKnown' };
  const stopped = built.blocked.filter((need) =>
    need.kind === 'piece'
      ? need.accepts.includes(itemId)
      : need.wouldClose.some((pieces) => pieces.includes(itemId)),
  );
  if (stopped.length > 0)
    return { kind: 'stops', steps: [...new Set(stopped.flatMap(({ steps }) => steps))] };
  return built.open.length > 0 ? { kind: 'notEstablished' } : { kind: 'no' };
}
