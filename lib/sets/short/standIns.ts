import { z } from 'zod';
import { largestMatching } from '../../calculations/matching';
import { type ItemId, itemId, type LineId, lineId, type StockId, stockId } from '../../identity/ids';
import type { Problem } from '../../identity/result';
import type { PlainDate } from '../../quantities/plainDate';
import { shortWords as words } from '../../wording/short';
import type { HeldLine } from '../holdings';

/** A sterile pouch of ours or the maker's, by stock row. */
export interface Pouch {
  stockId: StockId;
  itemId: ItemId;
  quantity: number;
  useBy: PlainDate | null;
}

/** One piece that stands in for one missing piece of a class 2 line. */
export const standIn = z.strictObject({
  lineId,
  itemId,
  from: z.discriminatedUnion('kind', [
    /** A sterile pouch that travels with the set. */
    z.strictObject({ kind: z.literal('pouch'), stockId }),
    /** A piece of another line, beyond what that line itself must hold. */
    z.strictObject({ kind: z.literal('inSet'), lineId }),
  ]),
});
export type StandIn = z.infer<typeof standIn>;

interface Spare {
  itemId: ItemId;
  pieces: number;
  from: StandIn['from'];
}

/** What may stand in for each class 2 line below its minimum. Each piece stands in once; as many as possible are met. */
export function findStandIns(
  lines: readonly HeldLine[],
  pouches: readonly Pouch[],
): ReadonlyMap<LineId, StandIn[]> {
  const spares = sparesOf(lines, pouches);
  const wanted = lines.filter(isBelow).flatMap((line) =>
    Array.from({ length: line.minimum - (line.found ?? 0) }, () => ({
      line,
      accepted: spares.flatMap((spare, at) => (serves(spare, line) ? [at] : [])),
    })),
  );
  const given = largestMatching(
    wanted.map(({ accepted }) => accepted),
    spares.map(({ pieces }) => pieces),
  );
  const found = new Map<LineId, StandIn[]>();
  for (const [at, { line }] of wanted.entries()) {
    const place = given[at] ?? null;
    const spare = place === null ? undefined : spares[place];
    if (!spare) continue;
    const one: StandIn = { lineId: line.id, itemId: spare.itemId, from: spare.from };
    found.set(line.id, [...(found.get(line.id) ?? []), one]);
  }
  return found;
}

/** Everything that could stand in for one line, for a person to choose from: the item itself first, then as approved. */
export function choicesFor(
  line: HeldLine,
  lines: readonly HeldLine[],
  pouches: readonly Pouch[],
): (StandIn & { pieces: number })[] {
  const rank = (id: ItemId) => (id === line.itemId ? -1 : line.substitutes.indexOf(id));
  return sparesOf(lines, pouches)
    .filter((spare) => serves(spare, line))
    .sort((a, b) => rank(a.itemId) - rank(b.itemId))
    .map(({ itemId: id, from, pieces }) => ({ lineId: line.id, itemId: id, from, pieces }));
}

/** Whether the stand-ins a person chose may stand in, and are enough. All problems at once. */
export function checkStandIns(
  chosen: readonly StandIn[],
  lines: readonly HeldLine[],
  pouches: readonly Pouch[],
  nameOf: (id: ItemId) => string,
): Problem[] {
  const spares = sparesOf(lines, pouches);
  const used = new Map<string, number>();
  const problems = chosen.flatMap((one, at): Problem[] => {
    const path = ['substitutes', at];
    const line = lines.find(({ id }) => id === one.lineId);
    if (!line || !isBelow(line)) return [problem(path, 'not-short', words.notShortThere)];
    const spare = spares.find(({ from }) => keyOf(from) === keyOf(one.from));
    if (!spare || spare.itemId !== one.itemId)
      return [problem(path, 'not-at-hand', words.standInGone(nameOf(one.itemId)))];
    if (!serves(spare, line))
      return [problem(path, 'not-approved', words.notASubstitute(nameOf(one.itemId), nameOf(line.itemId)))];
    const taken = (used.get(keyOf(one.from)) ?? 0) + 1;
    used.set(keyOf(one.from), taken);
    return taken > spare.pieces
      ? [problem(path, 'too-few', words.standInTooFew(nameOf(one.itemId), spare.pieces))]
      : [];
  });
  const tooFew = lines.filter(isBelow).flatMap((line): Problem[] => {
    const missing = line.minimum - (line.found ?? 0);
    const named = chosen.filter((one) => one.lineId === line.id).length;
    if (named === missing) return [];
    return [
      problem(['substitutes'], 'stand-ins-needed', words.standInsNeeded(nameOf(line.itemId), missing, named)),
    ];
  });
  return [...problems, ...tooFew];
}

const isBelow = ({ mustHaveClass, found, minimum }: HeldLine): boolean =>
  mustHaveClass === 2 && found !== null && found < minimum;

function sparesOf(lines: readonly HeldLine[], pouches: readonly Pouch[]): Spare[] {
  const inSet = lines.map(({ id, itemId: item, found, minimum, mustHaveClass }): Spare => {
    // back-ups and conveniences are free to stand in; a must-have only beyond its own minimum
    const pieces = Math.max(0, (found ?? 0) - (mustHaveClass <= 2 ? minimum : 0));
    return { itemId: item, pieces, from: { kind: 'inSet', lineId: id } };
  });
  const travelling = pouches.map(({ stockId: stock, itemId: item, quantity }): Spare => {
    return { itemId: item, pieces: quantity, from: { kind: 'pouch', stockId: stock } };
  });
  return [...inSet, ...travelling].filter(({ pieces }) => pieces > 0);
}

/** A pouch of the missing item itself always serves; another item only where it is approved, one way. */
function serves({ itemId: item, from }: Spare, line: HeldLine): boolean {
  if (item === line.itemId) return from.kind === 'pouch';
  return line.substitutes.includes(item);
}

const keyOf = (from: StandIn['from']): string => (from.kind === 'pouch' ? from.stockId : from.lineId);

const problem = (path: (string | number)[], code: string, message: string): Problem => ({
  path,
  code,
  message,
});
