/** How often a heap is counted follows its class. `null` for what a figure would need and nobody has stated. */
export type CountClass = 'A' | 'B' | 'C';
export const COUNT_CLASSES: readonly CountClass[] = ['A', 'B', 'C'];

/** What the class of an item goes by. */
export interface ClassFacts {
  itemId: string;
  /** Pieces implanted, wasted and not found over the last twelve months. */
  used: number;
  unitPence: number | null;
  /** The most pressing must-have class among the lines that list it; `null`: no configuration in force does. */
  mustHaveClass: 1 | 2 | 3 | 4 | null;
}

/** Items that make up the first 80 % of the value of use are A, the next up to 95 % B, the rest C. Common practice, no source. */
const A_UP_TO_PERCENT = 80;
const B_UP_TO_PERCENT = 95;

/**
 * The class of each item by the value of its use. The item that reaches over a border belongs above it, so that one
 * item that is all the value is A. What was used and has no stated price is A: its value is not established.
 */
export function classesByValue(facts: readonly ClassFacts[]): Map<string, CountClass> {
  const classes = new Map<string, CountClass>();
  const priced: { itemId: string; pence: number }[] = [];
  for (const { itemId, used, unitPence } of facts) {
    if (used > 0 && unitPence === null) classes.set(itemId, 'A');
    else priced.push({ itemId, pence: used * (unitPence ?? 0) });
  }
  priced.sort((a, b) => b.pence - a.pence || (a.itemId < b.itemId ? -1 : 1));
  const total = priced.reduce((sum, { pence }) => sum + pence, 0);
  let before = 0;
  for (const { itemId, pence } of priced) {
    const reaches = (percent: number) => pence > 0 && before * 100 < total * percent;
    classes.set(itemId, reaches(A_UP_TO_PERCENT) ? 'A' : reaches(B_UP_TO_PERCENT) ? 'B' : 'C');
    before += pence;
  }
  return classes;
}

/** The class of each item by its must-have class: 1 is A, 2 is B, the rest, and what no configuration lists, C. */
export function classesByMustHave(facts: readonly ClassFacts[]): Map<string, CountClass> {
  return new Map(
    facts.map(({ itemId, mustHaveClass }) => [
      itemId,
      mustHaveClass === 1 ? 'A' : mustHaveClass === 2 ? 'B' : 'C',
    ]),
  );
}
