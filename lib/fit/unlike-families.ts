import type { Item, Screw } from '../catalogue/item';
import type { CheckFinding } from './catalogue-check';
import { screwFacts } from './subjects';

/** What screws of one family may differ in. */
const MAY_DIFFER = new Set(['code', 'lengthUm', 'threadLengthUm', 'status', 'screwFamily']);

/** Screws of one family are alike in everything but length; one that is not is in the wrong family, or wrongly entered. */
export function unlikeFamilies(current: readonly Item[]): CheckFinding[] {
  const families = new Map<string, Screw[]>();
  for (const item of current) {
    if (item.kind === 'screw')
      families.set(item.screwFamily, [...(families.get(item.screwFamily) ?? []), item]);
  }
  return [...families.values()].flatMap((screws): CheckFinding[] => {
    const [first] = screws;
    if (!first) return [];
    const differing = Object.entries(screwFacts).filter(
      ([name, { read }]) =>
        !MAY_DIFFER.has(name) && new Set(screws.map((screw) => JSON.stringify(read(screw)))).size > 1,
    );
    if (differing.length === 0) return [];
    const facts = differing.map(([name]) => `screw.${name}`);
    return [
      {
        code: 'family-differs',
        outcome: 'notEstablished',
        items: screws,
        facts,
        relation: 'seats',
        holes: [],
        waiting: 0,
      },
    ];
  });
}
