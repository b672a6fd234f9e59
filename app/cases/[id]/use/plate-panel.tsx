'use client';

import { Status } from '@/app/_ui/status';
import type { PlannedPlate } from '@/lib/plans/plan';
import type { UsePlace } from '@/lib/usage/act';
import { Chosen, type Panel, usedAt } from './chosen-place';
import { LengthKeys } from './length-keys';
import { type InHole, PlateBoard } from './plate-board';
import { ScrewChoice } from './screw-choice';
import styles from './use.module.css';
import { samePlace, type Table } from './use-table';

/** A planned plate: which plate it was, and what went into each of its holes. */
export function PlatePanel({ planned, ...panel }: Panel & { planned: PlannedPlate }) {
  const { record, table, saying, onPlace } = panel;
  const plate = record.plates.find(({ id }) => id === planned.plateItemId);
  const own: UsePlace = { kind: 'plate', plate: planned.key };
  const { place } = saying;
  const hole = place?.kind === 'hole' && place.plate === planned.key ? place.hole : null;
  const asPlate = samePlace(place, own);
  const used = usedAt(table, own);
  const itemName = (id: string) => table.items.get(id)?.name ?? id;
  return (
    <>
      <p>
        {`Planned: ${itemName(planned.plateItemId)}. `}
        {used.length === 0 ? (
          <Status tone="neutral">plate not recorded yet</Status>
        ) : (
          <Status tone="good">{`Recorded: ${used.map(({ itemId }) => itemName(itemId)).join(', ')}`}</Status>
        )}
      </p>
      <p>
        <button
          type="button"
          className={styles.plateKey}
          aria-pressed={asPlate}
          onClick={() => onPlace(asPlate ? null : own)}
        >
          {`${planned.key}: which plate went in`}
        </button>
      </p>
      {plate ? (
        <PlateBoard
          planned={planned}
          plate={plate}
          inHole={inHoles(table, planned.key)}
          chosen={hole}
          itemName={itemName}
          onChoose={(id) => onPlace({ kind: 'hole', plate: planned.key, hole: id })}
        />
      ) : (
        <p className={styles.soft}>The catalogue has no drawing of this plate: its holes can’t be touched.</p>
      )}
      {asPlate ? (
        <Chosen {...panel} place={own} words="which plate went in" fill={null}>
          <LengthKeys
            record={record}
            table={table}
            label="Plates at the table"
            takes={({ kind }) => kind === 'plate'}
            planned={({ itemId }) => (itemId === planned.plateItemId ? 'planned' : null)}
            onTouch={panel.onTouch}
          />
        </Chosen>
      ) : hole !== null && place ? (
        <ScrewChoice {...panel} place={place} fill={planned.fills[hole] ?? null} />
      ) : (
        <p className={styles.soft}>Touch a hole, then what went in. Or scan it.</p>
      )}
    </>
  );
}

function inHoles({ reckoned, items }: Table, plate: string): Map<string, InHole> {
  const map = new Map<string, InHole>();
  for (const piece of reckoned.state.pieces) {
    if (piece.outcome !== 'implanted' || piece.place?.kind !== 'hole' || piece.place.plate !== plate)
      continue;
    const { hole } = piece.place;
    const before = map.get(hole);
    const name = items.get(piece.itemId)?.name ?? piece.itemId;
    map.set(hole, {
      pieces: [...(before?.pieces ?? []), piece],
      lengthUm: before ? before.lengthUm : (items.get(piece.itemId)?.lengthUm ?? null),
      words: before ? `${before.words} and ${name}` : name,
      differs: reckoned.differences.some(
        (one) =>
          'at' in one &&
          one.at.kind === 'hole' &&
          one.at.plate === plate &&
          one.at.hole === hole &&
          one.kind !== 'lengthNotEstablished',
      ),
    });
  }
  return map;
}
