'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { NumberField } from '@/app/_ui/number-field';
import { SelectField } from '@/app/_ui/select-field';
import type { Plate } from '@/lib/catalogue/item';
import type { PlannedPlate } from '@/lib/plans/plan';
import { micronsFromMm, writeMm } from '@/lib/quantities/length';
import { PRINCIPLE_WORDS } from '@/lib/wording/plans';
import styles from './planner.module.css';
import type { Planner } from './use-planner';

/** What is stated about a plate as a whole: its principle and the fracture zone in millimetres. */
export function PlateFacts({
  planner,
  planned,
  plate,
  marking,
  onMarking,
  onExchange,
}: {
  planner: Planner;
  planned: PlannedPlate;
  plate: Plate;
  marking: boolean;
  onMarking: (marking: boolean) => void;
  onExchange: () => void;
}) {
  const { key: plateKey } = planned;
  return (
    <fieldset className={styles.plateFacts} disabled={planner.readOnly}>
      <legend className={styles.hiddenLegend}>{`About ${plateKey}`}</legend>
      <SelectField
        name={`${plateKey}-principle`}
        label="Principle"
        blank="Not stated"
        width="medium"
        options={Object.entries(PRINCIPLE_WORDS).map(([value, label]) => ({ value, label }))}
        value={planned.principle ?? ''}
        onValue={(value) =>
          planner.edit({
            do: 'setPrinciple',
            plateKey,
            principle: (value || null) as PlannedPlate['principle'],
          })
        }
      />
      <ZoneFields
        plateKey={plateKey}
        zone={planned.zone}
        lengthUm={plate.lengthUm}
        onZone={(zone) => planner.edit({ do: 'setZone', plateKey, zone }, `zone ${plateKey}`)}
      />
      <div className={styles.plateActs}>
        <Button aria-pressed={marking} onClick={() => onMarking(!marking)}>
          {marking ? 'Drag across the plate …' : 'Mark the zone on the drawing'}
        </Button>
        {planned.zone ? (
          <Button kind="quiet" onClick={() => planner.edit({ do: 'setZone', plateKey, zone: null })}>
            Clear the zone
          </Button>
        ) : null}
        <Button onClick={onExchange}>Exchange the plate</Button>
        <Button kind="quiet" onClick={() => planner.edit({ do: 'removePlate', plateKey })}>
          {`Remove ${plateKey}`}
        </Button>
      </div>
    </fieldset>
  );
}

function ZoneFields({
  plateKey,
  zone,
  lengthUm,
  onZone,
}: {
  plateKey: string;
  zone: PlannedPlate['zone'];
  lengthUm: number | null;
  onZone: (zone: PlannedPlate['zone']) => void;
}) {
  const stated = zone ? `${zone.fromUm} ${zone.toUm}` : '';
  const [typed, setTyped] = useState({
    from: zone ? writeMm(zone.fromUm) : '',
    to: zone ? writeMm(zone.toUm) : '',
    stated,
  });
  if (typed.stated !== stated) {
    setTyped({ from: zone ? writeMm(zone.fromUm) : '', to: zone ? writeMm(zone.toUm) : '', stated });
  }
  const problem = zoneProblem(typed.from, typed.to, lengthUm);

  function type(from: string, to: string) {
    const ends = zoneProblem(from, to, lengthUm) === null ? zoneOf(from, to) : undefined;
    setTyped({
      from,
      to,
      stated: ends === undefined ? typed.stated : ends ? `${ends.fromUm} ${ends.toUm}` : '',
    });
    if (ends !== undefined) onZone(ends);
  }
  return (
    <div className={styles.zone}>
      <NumberField
        name={`${plateKey}-zone-from`}
        label="Fracture zone from"
        unit="mm"
        value={typed.from}
        onValue={(text) => type(text, typed.to)}
        problems={problem ? [problem] : []}
      />
      <NumberField
        name={`${plateKey}-zone-to`}
        label="to"
        unit="mm"
        value={typed.to}
        onValue={(text) => type(typed.from, text)}
      />
    </div>
  );
}

/** Both ends, or `null` when neither is typed, or `undefined` while one is missing. */
function zoneOf(from: string, to: string): PlannedPlate['zone'] | undefined {
  if (from.trim() === '' && to.trim() === '') return null;
  if (from.trim() === '' || to.trim() === '') return undefined;
  return { fromUm: micronsFromMm(from), toUm: micronsFromMm(to) };
}

function zoneProblem(from: string, to: string, lengthUm: number | null): string | null {
  const written = [from, to].filter((text) => text.trim() !== '');
  if (!written.every((text) => /^\d{1,4}([.,]\d{1,3})?$/.test(text.trim())))
    return 'Millimetres from the shaft end, such as 40.';
  if (written.length < 2) return null;
  const [start, end] = [micronsFromMm(from), micronsFromMm(to)];
  if (start > end) return 'The zone ends before it begins.';
  if (lengthUm !== null && end > lengthUm) return `The plate is ${writeMm(lengthUm)} mm long.`;
  return null;
}
