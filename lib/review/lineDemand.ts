import type { Item } from '../catalogue/item';
import type { ItemId } from '../identity/ids';
import { groupBy } from '../lists/groupBy';
import type { ConfigurationLine } from '../sets/configuration';
import { askedFor, type Evidence, evidenceOf, type PastCase } from './pastCase';

/** What past cases asked of one line. */
export interface LineDemand {
  line: ConfigurationLine;
  evidence: Evidence;
  /** Cases of which it is known. */
  cases: number;
  /** In how many cases how many pieces; `null` where nobody knows. */
  usedIn: { pieces: number; cases: number }[] | null;
}

/**
 * What past cases asked of each line. Where several lines hold the same item, pieces are taken from the first that is no back-up, and
 * only what it does not hold is asked of the next; what no line holds is asked of the last.
 */
export function lineDemands(
  lines: readonly ConfigurationLine[],
  items: ReadonlyMap<ItemId, Item>,
  cases: readonly PastCase[],
): LineDemand[] {
  const byItem = groupBy(lines, ({ itemId }) => itemId);
  return lines.map((line): LineDemand => {
    const item = items.get(line.itemId);
    const evidence = item ? evidenceOf(item) : 'none';
    if (evidence === 'none') return { line, evidence, cases: 0, usedIn: null };
    const order = [...(byItem.get(line.itemId) ?? [])].sort(takenFirst);
    const at = order.indexOf(line);
    const before = order.slice(0, at).reduce((all, one) => all + one.expected, 0);
    const most = at === order.length - 1 ? Number.POSITIVE_INFINITY : line.expected;
    const counted = new Map<number, number>();
    let known = 0;
    for (const one of cases) {
      const asked = askedFor(one, line.itemId, evidence);
      if (asked === null) continue;
      known += 1;
      const pieces = Math.min(most, Math.max(0, asked - before));
      if (pieces > 0) counted.set(pieces, (counted.get(pieces) ?? 0) + 1);
    }
    const usedIn = [...counted].map(([pieces, count]) => ({ pieces, cases: count }));
    return { line, evidence, cases: known, usedIn: usedIn.sort((a, b) => a.pieces - b.pieces) };
  });
}

const takenFirst = (a: ConfigurationLine, b: ConfigurationLine) =>
  Number(a.mustHaveClass === 3) - Number(b.mustHaveClass === 3) ||
  a.layer - b.layer ||
  a.row - b.row ||
  a.slot - b.slot;
