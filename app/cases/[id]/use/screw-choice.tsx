'use client';

import { Disclosure } from '@/app/_ui/disclosure';
import type { TableItem } from '@/db/queries/usage/tableItems';
import type { HoleFill } from '@/lib/plans/plan';
import type { UsePlace } from '@/lib/usage/act';
import { lengthAsPlanned } from '@/lib/usage/differences';
import { fillWords } from '@/lib/wording/plans';
import { Chosen, type Panel } from './chosen-place';
import { LengthKeys } from './length-keys';
import styles from './use.module.css';

/** What may go into a place: screws of the planned kind by length, and whatever else is at the table under it. */
export function ScrewChoice({ fill, place, ...panel }: Panel & { fill: HoleFill | null; place: UsePlace }) {
  const { record, table, onTouch } = panel;
  const family = fill && 'screwFamily' in fill ? fill.screwFamily : null;
  function asPlanned(item: TableItem): 'planned' | 'accepted' | null {
    if (fill === null || !('length' in fill) || fill.length.kind !== 'exact') return null;
    if (item.screwFamily !== family || lengthAsPlanned(fill, item.lengthUm) !== true) return null;
    return lengthAsPlanned({ ...fill, acceptLongerMm: 0 }, item.lengthUm) ? 'planned' : 'accepted';
  }
  const itemName = (id: string) => table.items.get(id)?.name ?? id;
  const keys = (label: string, takes: (item: TableItem) => boolean) => (
    <LengthKeys
      record={record}
      table={table}
      label={label}
      takes={takes}
      planned={asPlanned}
      onTouch={onTouch}
    />
  );
  const others = [
    ...new Set(
      record.items.flatMap(({ kind, screwFamily }) =>
        kind === 'screw' && screwFamily !== null && screwFamily !== family ? [screwFamily] : [],
      ),
    ),
  ].sort();
  const atTable = (name: string) =>
    [...record.slots, ...record.packs].some(({ itemId }) => table.items.get(itemId)?.screwFamily === name);
  const there = others.filter(atTable);
  return (
    <Chosen {...panel} place={place} words={`planned: ${fillWords(fill ?? undefined, itemName)}`} fill={fill}>
      {family === null ? null : keys(family, (item) => item.screwFamily === family)}
      {there.length > 0 ? (
        <Disclosure summary="Another screw" open={family === null}>
          {there.map((name) => (
            <div key={name}>
              <h4 className={styles.family}>{name}</h4>
              {keys(name, (item) => item.screwFamily === name)}
            </div>
          ))}
        </Disclosure>
      ) : null}
    </Chosen>
  );
}
