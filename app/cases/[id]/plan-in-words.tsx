import type { Plate } from '@/lib/catalogue/item';
import type { Construct, PlannedPlate } from '@/lib/plans/plan';
import { compareNatural } from '@/lib/plans/planFinding';
import { freeScrewWords } from '@/lib/wording/planChanges';
import {
  BONE_WORDS,
  fillWords,
  LIMB_WORDS,
  PRINCIPLE_WORDS,
  plainMm,
  REGION_WORDS,
  zoneWords,
} from '@/lib/wording/plans';
import styles from './case.module.css';
import { PlanDrawing } from './plan-drawing';

/** A plan as it was stated, in words: every plate with its holes, every free screw. */
export function PlanInWords({
  construct,
  itemName,
  plates,
}: {
  construct: Construct;
  itemName: (itemId: string) => string;
  /** Plates to draw, by id; one that is not here is only named. */
  plates?: ReadonlyMap<string, Plate>;
}) {
  return (
    <div className={styles.plan}>
      <p>
        {`${REGION_WORDS[construct.region]}, ${construct.limb ? LIMB_WORDS[construct.limb].toLowerCase() : 'either side'} · bone: ${BONE_WORDS[construct.bone].toLowerCase()}`}
        {construct.sharedLengthSdMm === null
          ? ''
          : ` · spread shared by all lengths ± ${plainMm(construct.sharedLengthSdMm)} mm`}
      </p>
      {construct.note ? <p className={styles.note}>{construct.note}</p> : null}
      {construct.plates.map((plate) => (
        <div key={plate.key}>
          <h3>{`${plate.key}: ${itemName(plate.plateItemId)}`}</h3>
          <p className={styles.soft}>
            {`Principle: ${plate.principle ? PRINCIPLE_WORDS[plate.principle].toLowerCase() : 'not stated'} · fracture zone ${zoneWords(plate.zone)}`}
          </p>
          {drawn(plate, plates)}
          <dl className={styles.holes}>
            {Object.keys(plate.fills)
              .sort(compareNatural)
              .map((holeId) => (
                <div key={holeId}>
                  <dt>{holeId}</dt>
                  <dd>{fillWords(plate.fills[holeId], itemName)}</dd>
                </div>
              ))}
          </dl>
        </div>
      ))}
      {construct.freeScrews.length > 0 ? (
        <div>
          <h3>Free lag screws</h3>
          <dl className={styles.holes}>
            {construct.freeScrews.map((screw) => (
              <div key={screw.key}>
                <dt>{screw.key}</dt>
                <dd>{freeScrewWords(screw, itemName)}</dd>
              </div>
            ))}
          </dl>
        </div>
      ) : null}
    </div>
  );
}

function drawn(planned: PlannedPlate, plates: ReadonlyMap<string, Plate> | undefined) {
  const plate = plates?.get(planned.plateItemId);
  return plate ? <PlanDrawing planned={planned} plate={plate} /> : null;
}
