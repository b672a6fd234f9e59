import type { EarlyUse } from './earlyUses';
import type { Column } from './programme';

interface CapacityRow {
  terms: [number, number][];
  capacity: number;
}

/**
 * One row per instant at which most stretches overlap: no more sets in use than the group has by then, where an early use
 * gives one back until it was due. Instants whose stretches all overlap at a later one too are left out, and so are rows
 * that nothing can break.
 *
 * @param readyMs when each set of the group is surely ready, ascending
 */
export function capacityRows(
  columns: readonly Column[],
  early: readonly EarlyUse[],
  readyMs: readonly number[],
): CapacityRow[] {
  const begins = [...new Set(columns.map(({ needMs }) => needMs))].sort((a, b) => a - b);
  const changes = [
    ...columns.map(({ firmBackMs }) => firmBackMs),
    ...early.map(({ toMs }) => toMs),
    ...readyMs,
  ].sort((a, b) => a - b);
  const rows: CapacityRow[] = [];
  let change = 0;
  begins.forEach((at, place) => {
    const next = begins[place + 1] ?? Number.POSITIVE_INFINITY;
    while (change < changes.length && (changes[change] as number) <= at) change += 1;
    // what is given back early must not be asked for again, so with early uses every instant has its row
    if (early.length === 0 && (changes[change] ?? Number.POSITIVE_INFINITY) > next) return;
    const inUse = columns.filter(({ needMs, firmBackMs }) => needMs <= at && at < firmBackMs);
    const capacity = readyMs.filter((ready) => ready <= at).length;
    if (inUse.length <= capacity) return;
    rows.push({
      terms: [
        ...inUse.map(({ variable }): [number, number] => [variable, 1]),
        ...early
          .filter(({ fromMs, toMs }) => fromMs <= at && at < toMs)
          .map(({ variable }): [number, number] => [variable, -1]),
      ],
      capacity,
    });
  });
  return rows;
}
