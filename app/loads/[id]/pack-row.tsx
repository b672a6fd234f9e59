'use client';

import Link from 'next/link';
import { Button } from '@/app/_ui/button';
import { Segmented } from '@/app/_ui/radio-group';
import { Status } from '@/app/_ui/status';
import type { LoadedPack } from '@/db/queries/loads/packsOfLoad';
import { type UnloadedAs, unloadedAs } from '@/lib/loads/load';
import { IMPLANT_WORDS, UNLOADED_WORDS } from '@/lib/wording/loads';
import { capitalised } from '@/lib/wording/numbers';
import styles from '../loads.module.css';

/** One pack in a load, with what can be done with it now. */
export function PackRow({
  pack,
  chosen,
  onTakeOut,
  onFound,
}: {
  pack: LoadedPack;
  chosen: boolean;
  onTakeOut: (() => void) | null;
  onFound: ((as: UnloadedAs) => void) | null;
}) {
  const unfit = pack.unloadedAs !== null && pack.unloadedAs !== 'sound';
  return (
    <li id={`pack-${pack.id}`} className={styles.pack} data-chosen={chosen}>
      <div className={styles.packName}>
        <strong>
          {pack.setId === null ? pack.name : <Link href={`/sets/${pack.setId}`}>{pack.name}</Link>}
        </strong>
        <span>
          {[
            pack.number,
            pack.barrier,
            ...(pack.grams === null ? [] : [`${(pack.grams / 1000).toFixed(2)} kg`]),
            IMPLANT_WORDS[pack.implants],
          ].join(' · ')}
        </span>
      </div>
      <div className={styles.packEnd}>
        {pack.short ? <Status tone="attention">SHORT</Status> : null}
        {onTakeOut ? <Button onClick={onTakeOut}>{`Take out ${pack.name}`}</Button> : null}
        {onFound && !unfit ? (
          <Segmented
            name={`found-${pack.id}`}
            label={`How ${pack.name} came out`}
            hideLabel
            value={pack.unloadedAs}
            onValue={onFound}
            choices={unloadedAs.options.map((value) => ({
              value,
              label: capitalised(UNLOADED_WORDS[value]),
            }))}
          />
        ) : pack.unloadedAs !== null ? (
          <Status tone={unfit ? 'stop' : 'good'} look={unfit ? 'tag' : 'plain'}>
            {capitalised(UNLOADED_WORDS[pack.unloadedAs])}
          </Status>
        ) : null}
      </div>
    </li>
  );
}
