import type { PlanChange } from '@/lib/plans/compare';
import { planChangeWords } from '@/lib/wording/planChanges';
import { ChangeRows } from './change-rows';

/**
 * What differs between two versions, hole by hole, with both values in words.
 *
 * @param heads names of the two columns
 */
export function ChangesList({
  changes,
  itemName,
  heads,
  caption,
}: {
  changes: readonly PlanChange[];
  itemName: (itemId: string) => string;
  heads: readonly [string, string];
  caption: string;
}) {
  if (changes.length === 0) return <p>Nothing differs: the two state the same.</p>;
  return (
    <ChangeRows
      rows={changes.map((change) => planChangeWords(change, itemName))}
      heads={heads}
      caption={caption}
      absent="not in the plan"
    />
  );
}
