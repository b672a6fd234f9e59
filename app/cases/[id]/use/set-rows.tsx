'use client';

import { useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { Button } from '@/app/_ui/button';
import { Status } from '@/app/_ui/status';
import type { RecordOfUse } from '@/db/queries/usage/recordOfUse';
import { mayStay } from '@/lib/usage/implant';
import { sourceKey } from '@/lib/usage/state';
import { USE_OUTCOME_WORDS } from '@/lib/wording/usage';
import { touchOf } from './touch';
import styles from './use.module.css';
import type { Saying, Table, Touched } from './use-table';

/** Everything in one set, line by line: implants first, instruments where they are asked for. */
export function SetRows({
  setId,
  record,
  table,
  saying,
  mayEnter,
  onTouch,
}: {
  setId: string;
  record: RecordOfUse;
  table: Table;
  saying: Saying;
  mayEnter: boolean;
  onTouch: (touched: Touched) => void;
}) {
  const [all, setAll] = useState(false);
  const set = record.sets.find(({ id }) => id === setId);
  const lines = record.slots.filter((slot) => slot.setId === setId);
  const isImplant = (itemId: string) => mayStay(table.items.get(itemId)?.kind ?? '');
  // what is recorded of an instrument stays in view
  const named = new Set(table.reckoned.state.pieces.map(({ source }) => sourceKey(source)));
  const shown = lines.filter((line) => all || isImplant(line.itemId) || named.has(sourceKey(line)));
  const word = USE_OUTCOME_WORDS[saying.outcome];
  return (
    <>
      <p className={styles.soft}>
        {set?.pack
          ? `Pack ${set.pack.number}, ${set.pack.load === null ? 'load not on record' : `load ${set.pack.load}`}. `
          : ''}
        What is not named here goes back with the set.
      </p>
      {set?.held ? (
        <p>
          <Status tone="stop" look="strong">
            Do not open: held
          </Status>
        </p>
      ) : null}
      {saying.outcome === 'returnedUnopened' ? (
        <p>
          <Status tone="unknown">Pieces of an open set are not returned unopened</Status>
        </p>
      ) : null}
      <ul className={styles.rows} aria-label={`Lines of ${set?.code ?? ''}`}>
        {shown.map((line) => {
          const item = table.items.get(line.itemId);
          const name = item?.name ?? line.itemId;
          const account = table.reckoned.accounts.find(({ key }) => key === sourceKey(line));
          const gone = account ? account.implanted + account.discarded + account.notFound : 0;
          const open =
            saying.outcome !== 'returnedUnopened' &&
            (isImplant(line.itemId) ||
              saying.outcome === 'droppedOrDamaged' ||
              saying.outcome === 'notFound');
          return (
            <li key={line.lineId} className={styles.row}>
              <div>
                <p className={kitStyles.name}>{name}</p>
                <p className={kitStyles.under}>
                  {`layer ${line.layer}, row ${line.row}, slot ${line.slot} · ${line.recorded === null ? 'not counted' : `${line.recorded} went in`}${gone > 0 ? `, ${account?.back ?? 'not known'} left` : ''}`}
                </p>
              </div>
              {mayEnter && open ? (
                <Button
                  size="bench"
                  aria-label={`${name}: ${word.toLowerCase()}`}
                  onClick={() => onTouch(touchOf(line))}
                >
                  {word}
                </Button>
              ) : null}
            </li>
          );
        })}
      </ul>
      {lines.some(({ itemId }) => !isImplant(itemId)) ? (
        <Button size="bench" kind="quiet" onClick={() => setAll(!all)}>
          {all ? 'Implants alone' : 'Instruments too: dropped, damaged or not found'}
        </Button>
      ) : null}
    </>
  );
}
