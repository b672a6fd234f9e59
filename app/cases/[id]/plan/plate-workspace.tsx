'use client';

import { type ReactNode, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { Status } from '@/app/_ui/status';
import type { ItemId } from '@/lib/identity/ids';
import { isScrewFill } from '@/lib/plans/chosenHoles';
import { inReadingOrder } from '@/lib/plans/holeNeighbours';
import type { HoleFill, PlannedPlate } from '@/lib/plans/plan';
import { plateOf } from '@/lib/plans/planCatalogue';
import { FINDING_GROUPS, type FindingGroup } from '@/lib/plans/planFinding';
import { HoleEditor } from './hole-editor';
import { HoleTable } from './hole-table';
import { MarkKey } from './mark-key';
import styles from './planner.module.css';
import { PlateBoard } from './plate-board';
import { PlateFacts } from './plate-facts';
import type { Planner } from './use-planner';
import { useShortcuts } from './use-shortcuts';

/** One plate of the plan: its drawing, what is chosen on it, and the table of its holes. */
export function PlateWorkspace({
  planner,
  planned,
  itemName,
  chosen,
  onChosen,
  onExchange,
  side,
}: {
  planner: Planner;
  planned: PlannedPlate;
  itemName: (itemId: ItemId | string) => string;
  chosen: readonly string[];
  onChosen: (holeIds: string[]) => void;
  onExchange: () => void;
  /** What stands beside every part of the plan. */
  side: ReactNode;
}) {
  const plate = plateOf(planner.catalogue, planned.plateItemId);
  const [focused, setFocused] = useState<string | null>(null);
  const [several, setSeveral] = useState(false);
  const [marking, setMarking] = useState(false);
  const [pending, setPending] = useState<HoleFill['purpose'] | null>(null);
  const onShortcut = useShortcuts(planner, planned, chosen, setPending);
  if (!plate) {
    return (
      <>
        <UnknownPlate planner={planner} planned={planned} onExchange={onExchange} />
        <div className={styles.right}>{side}</div>
      </>
    );
  }

  const order = inReadingOrder(plate.holes).map(({ id }) => id);
  const worst = worstByHole(planner, planned.key);
  function choose(holeId: string, how: 'only' | 'toggle' | 'through') {
    setPending(null);
    if (how === 'through' && chosen.length > 0) {
      const [a, b] = [order.indexOf(chosen[0] ?? holeId), order.indexOf(holeId)];
      const span = order.slice(Math.min(a, b), Math.max(a, b) + 1);
      onChosen(a <= b ? span : [...span].reverse());
    } else if (how === 'toggle' || several) {
      onChosen(chosen.includes(holeId) ? chosen.filter((id) => id !== holeId) : [...chosen, holeId]);
    } else onChosen([holeId]);
  }
  const pick = (ids: readonly string[]) => {
    setPending(null);
    onChosen([...ids]);
  };
  const undecided = inReadingOrder(plate.holes)
    .filter(({ id, holeClass }) => planned.fills[id] === undefined && holeClass !== 'wireHole')
    .map(({ id }) => id);
  const groups = [
    { label: 'All shaft', ids: plate.holes.filter(({ segment }) => segment === 'shaft').map(({ id }) => id) },
    { label: 'All head', ids: plate.holes.filter(({ segment }) => segment === 'head').map(({ id }) => id) },
    { label: 'All with a screw', ids: order.filter((id) => isScrewFill(planned.fills[id])) },
    { label: 'All not decided', ids: undecided },
  ].filter(({ ids }) => ids.length > 0);

  return (
    <>
      <div className={styles.left}>
        <div className={styles.boardArea}>
          <PlateBoard
            planned={planned}
            plate={plate}
            chosen={chosen}
            focused={focused}
            worst={worst}
            marking={marking}
            itemName={itemName}
            onChoose={choose}
            onFocusHole={setFocused}
            onShortcut={onShortcut}
            onZone={(zone, done) => {
              planner.edit({ do: 'setZone', plateKey: planned.key, zone }, `zone ${planned.key}`);
              if (done) setMarking(false);
            }}
          />
          <MarkKey />
          <div className={styles.choosing}>
            <Button size="small" aria-pressed={several} onClick={() => setSeveral(!several)}>
              Choose several
            </Button>
            {groups.map(({ label, ids }) => (
              <Button key={label} size="small" onClick={() => pick(ids)}>
                {label}
              </Button>
            ))}
            {undecided.length > 0 && !planner.readOnly ? (
              <Button
                size="small"
                kind="quiet"
                onClick={() =>
                  planner.edit({
                    do: 'fillHoles',
                    plateKey: planned.key,
                    holeIds: undecided,
                    fill: { purpose: 'empty' },
                  })
                }
              >
                Leave the undecided empty
              </Button>
            ) : null}
            <Button size="small" kind="quiet" onClick={() => pick([])} disabled={chosen.length === 0}>
              None
            </Button>
          </div>
          <PlateFacts
            planner={planner}
            planned={planned}
            plate={plate}
            marking={marking}
            onMarking={setMarking}
            onExchange={onExchange}
          />
        </div>
        <div className={styles.tableArea}>
          <HoleTable planner={planner} planned={planned} plate={plate} chosen={chosen} onChoose={choose} />
        </div>
      </div>
      <div className={styles.right}>
        <div className={styles.editorArea}>
          {chosen.length > 0 ? (
            <HoleEditor
              planner={planner}
              planned={planned}
              plate={plate}
              chosen={chosen}
              pending={pending}
              onPending={setPending}
            />
          ) : (
            <p className={styles.invite}>Point at a hole, or choose several, to say what goes in.</p>
          )}
        </div>
        {side}
      </div>
    </>
  );
}

function UnknownPlate({
  planner,
  planned,
  onExchange,
}: {
  planner: Planner;
  planned: PlannedPlate;
  onExchange: () => void;
}) {
  return (
    <div className={styles.left}>
      <p>
        <Status tone="stop">Stop</Status> {`The catalogue has no plate with the id ${planned.plateItemId}.`}
      </p>
      <div className={styles.choosing}>
        <Button onClick={onExchange} disabled={planner.readOnly}>
          Exchange the plate
        </Button>
        <Button
          kind="quiet"
          disabled={planner.readOnly}
          onClick={() => planner.edit({ do: 'removePlate', plateKey: planned.key })}
        >
          {`Remove ${planned.key}`}
        </Button>
      </div>
    </div>
  );
}

function worstByHole(planner: Planner, plateKey: string): Map<string, FindingGroup> {
  const worst = new Map<string, FindingGroup>();
  for (const { at, group } of planner.findings) {
    if (at.plateKey !== plateKey || at.holeId === null || group === 'note') continue;
    const before = worst.get(at.holeId);
    if (!before || FINDING_GROUPS.indexOf(group) < FINDING_GROUPS.indexOf(before))
      worst.set(at.holeId, group);
  }
  return worst;
}
