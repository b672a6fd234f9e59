'use client';

import type { RecordOfUse } from '@/db/queries/usage/recordOfUse';
import type { TableItem } from '@/db/queries/usage/tableItems';
import type { TablePack } from '@/db/queries/usage/tablePacks';
import type { TableSlot } from '@/db/queries/usage/tableSlots';
import { writeMm } from '@/lib/quantities/length';
import { freePacks } from '@/lib/usage/account';
import { sourceKey } from '@/lib/usage/state';
import { touchOf } from './touch';
import styles from './use.module.css';
import type { Table, Touched } from './use-table';

type AtTable = (TableSlot | TablePack) & { item: TableItem };

/**
 * One key for each thing at the table that could go there, by length: touched once, it is recorded. How many are left is
 * what the record leaves, and says nothing of what may be used.
 */
export function LengthKeys({
  record,
  table,
  label,
  takes,
  planned,
  onTouch,
}: {
  record: RecordOfUse;
  table: Table;
  label: string;
  takes: (item: TableItem) => boolean;
  /** Whether the plan names it, or accepts it as longer: marked, not put first. */
  planned: (item: TableItem) => 'planned' | 'accepted' | null;
  onTouch: (touched: Touched) => void;
}) {
  const there = [...record.slots, ...record.packs]
    .flatMap((source): AtTable[] => {
      const item = table.items.get(source.itemId);
      return item && takes(item) ? [{ ...source, item }] : [];
    })
    .sort(
      (a, b) =>
        (a.item.lengthUm ?? 0) - (b.item.lengthUm ?? 0) ||
        a.item.name.localeCompare(b.item.name) ||
        a.kind.localeCompare(b.kind),
    );
  if (there.length === 0) return <p className={styles.soft}>Nothing at the table is of that kind.</p>;
  return (
    <ul className={styles.lengths} aria-label={label}>
      {there.map((source) => {
        const { item } = source;
        const { where, left } = whereOf(record, table, source);
        const said = planned(item);
        const screw = item.kind === 'screw' && item.lengthUm !== null;
        return (
          <li key={`${source.kind} ${sourceKey(source)}`}>
            <button
              type="button"
              className={styles.length}
              data-planned={said ?? undefined}
              data-wide={screw ? undefined : 'yes'}
              disabled={source.kind === 'pack' && left === 0}
              aria-label={`${item.name}, ${where}${said === null ? '' : `, ${said}`}`}
              onClick={() => onTouch(touchOf(source))}
            >
              <span className={styles.mm}>
                {screw ? writeMm(item.lengthUm ?? 0) : item.name}
                {screw ? <span className={styles.unit}> mm</span> : null}
              </span>
              <span className={styles.where}>{where}</span>
              {said === null ? null : <span className={styles.asPlanned}>{said}</span>}
            </button>
          </li>
        );
      })}
    </ul>
  );
}

function whereOf(record: RecordOfUse, table: Table, source: AtTable): { where: string; left: number | null } {
  const account = table.reckoned.accounts.find(({ key }) => key === sourceKey(source));
  if (source.kind === 'pack') {
    const left = account ? Math.max(0, freePacks(account)) : 0;
    return { where: `pack${source.lot === null ? '' : `, lot ${source.lot}`}, ${left} left`, left };
  }
  const code = record.sets.find(({ id }) => id === source.setId)?.code ?? source.setId;
  const left = account?.back ?? null;
  return { where: `${code}, ${left === null ? 'not counted' : `${left} left`}`, left };
}
