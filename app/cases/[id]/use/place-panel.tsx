'use client';

import { Disclosure } from '@/app/_ui/disclosure';
import { Status } from '@/app/_ui/status';
import type { RecordOfUse } from '@/db/queries/usage/recordOfUse';
import type { TableItem } from '@/db/queries/usage/tableItems';
import type { HoleFill, PlannedPlate } from '@/lib/plans/plan';
import type { UsePlace } from '@/lib/usage/act';
import { lengthAsPlanned } from '@/lib/usage/differences';
import { capitalised } from '@/lib/wording/numbers';
import { fillWords } from '@/lib/wording/plans';
import { placeWords, USE_OUTCOME_WORDS } from '@/lib/wording/usage';
import { LengthKeys } from './length-keys';
import { type InHole, PlateBoard } from './plate-board';
import styles from './use.module.css';
import { type Saying, samePlace, type Table, type Touched } from './use-table';

type Panel = {
  record: RecordOfUse;
  table: Table;
  saying: Saying;
  onPlace: (place: UsePlace | null) => void;
  onTouch: (touched: Touched) => void;
};

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

/** Free lag screws of the plan, each a place of its own. */
export function FreePanel(panel: Panel) {
  const { record, table, saying, onPlace } = panel;
  const screws = record.plan?.construct.freeScrews ?? [];
  const chosen = screws.find(({ key }) => samePlace(saying.place, { kind: 'free', screw: key }));
  return (
    <>
      <ul className={styles.places} aria-label="Free screws">
        {screws.map((screw) => {
          const place: UsePlace = { kind: 'free', screw: screw.key };
          const used = usedAt(table, place);
          return (
            <li key={screw.key}>
              <button
                type="button"
                className={styles.plateKey}
                aria-pressed={chosen?.key === screw.key}
                onClick={() => onPlace(place)}
              >
                {`${screw.key}: ${used.length > 0 ? used.map(({ itemId }) => table.items.get(itemId)?.name ?? itemId).join(', ') : 'nothing recorded'}`}
              </button>
            </li>
          );
        })}
      </ul>
      {chosen && saying.place ? (
        <ScrewChoice {...panel} place={saying.place} fill={{ purpose: 'lag', ...chosen }} />
      ) : (
        <p className={styles.soft}>Touch a free screw, then what went in. Or scan it.</p>
      )}
    </>
  );
}

/** What may go into a place: screws of the planned kind by length, and whatever else is at the table under it. */
function ScrewChoice({ fill, place, ...panel }: Panel & { fill: HoleFill | null; place: UsePlace }) {
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

function Chosen({
  table,
  place,
  words,
  saying,
  children,
}: Panel & { place: UsePlace; words: string; fill: HoleFill | null; children: React.ReactNode }) {
  const used = usedAt(table, place);
  return (
    <section className={styles.chosen} aria-label={capitalised(placeWords(place))}>
      <h3 className={styles.placeTitle}>{capitalised(placeWords(place))}</h3>
      <p>
        {capitalised(words)}
        {saying.outcome === 'implanted'
          ? ''
          : `. What is touched now is: ${USE_OUTCOME_WORDS[saying.outcome].toLowerCase()}`}
      </p>
      {used.length > 0 ? (
        <p>
          <Status tone="attention">
            {`Recorded here already: ${used.map(({ itemId }) => table.items.get(itemId)?.name ?? itemId).join(', ')}`}
          </Status>
        </p>
      ) : null}
      {children}
    </section>
  );
}

const usedAt = ({ reckoned }: Table, place: UsePlace) =>
  reckoned.state.pieces.filter((piece) => piece.outcome === 'implanted' && samePlace(piece.place, place));

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
