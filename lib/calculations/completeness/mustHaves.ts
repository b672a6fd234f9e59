import { z } from 'zod';
import { largestMatching } from '../matching';
import type { CompletenessInput } from './completeness';

export const mustHaveOutput = z.strictObject({
  met: z.number().int(),
  of: z.number().int(),
  /** Only the lines of class 1 and 2 that are not simply there. */
  lines: z.array(
    z.strictObject({
      line: z.string(),
      item: z.string(),
      mustHaveClass: z.number().int(),
      state: z.enum(['notMet', 'metBySubstitute', 'metByPouch', 'notCounted']),
      found: z.number().int().nullable(),
      minimum: z.number().int(),
      /** The items that stand in, one per piece. */
      standIns: z.array(z.string()),
    }),
  ),
});

interface Spare {
  item: string;
  pieces: number;
  pouched: boolean;
}

/**
 * The must-haves: lines of class 1 and 2 at or above their minimum. A line below it is still met, at supervisor level,
 * by a sterile pouch of the same item, or (class 2) by an approved substitute: a pouch, or pieces of another line beyond
 * that line's own minimum. Each spare piece stands in once. `met` counts the lines met by their own pieces and by these.
 */
export function mustHaves(input: CompletenessInput): z.output<typeof mustHaveOutput> {
  const musts = input.lines.filter(({ mustHaveClass }) => mustHaveClass <= 2);
  const spares = sparesOf(input);
  const short = musts.filter(({ found, minimum }) => found !== null && found < minimum);
  const wanted = short.flatMap((line) =>
    Array.from({ length: line.minimum - (line.found ?? 0) }, () => ({
      line,
      accepted: spares.flatMap((spare, at) => (mayStandIn(spare, line) ? [at] : [])),
    })),
  );
  const given = largestMatching(
    wanted.map(({ accepted }) => accepted),
    spares.map(({ pieces }) => pieces),
  );
  const lines = musts.flatMap((line): z.output<typeof mustHaveOutput>['lines'] => {
    const row = {
      line: line.line,
      item: line.item,
      mustHaveClass: line.mustHaveClass,
      found: line.found,
      minimum: line.minimum,
    };
    if (line.found === null) return [{ ...row, state: 'notCounted', standIns: [] }];
    if (line.found >= line.minimum) return [];
    const places = wanted.flatMap((want, at) => (want.line === line ? [given[at] ?? null] : []));
    const used = places
      .flatMap((place) => (place === null ? [] : [spares[place]]))
      .filter((spare) => spare !== undefined);
    const standIns = used.map(({ item }) => item);
    if (used.length < places.length) return [{ ...row, state: 'notMet', standIns }];
    const ownPouch = standIns.every((item) => item === line.item);
    return [{ ...row, state: ownPouch ? 'metByPouch' : 'metBySubstitute', standIns }];
  });
  const unmet = lines.filter(({ state }) => state === 'notMet' || state === 'notCounted').length;
  return { met: musts.length - unmet, of: musts.length, lines };
}

function sparesOf({ lines, pouches }: CompletenessInput): Spare[] {
  const loose = lines.map(({ item, found, minimum, mustHaveClass }) => ({
    item,
    // back-ups and conveniences are free to stand in; a must-have only beyond its own minimum
    pieces: Math.max(0, (found ?? 0) - (mustHaveClass <= 2 ? minimum : 0)),
    pouched: false,
  }));
  return [...pouches.map(({ item, pieces }) => ({ item, pieces, pouched: true })), ...loose];
}

function mayStandIn(spare: Spare, line: CompletenessInput['lines'][number]): boolean {
  if (spare.pouched && spare.item === line.item) return true;
  return line.mustHaveClass === 2 && spare.item !== line.item && line.substitutes.includes(spare.item);
}
