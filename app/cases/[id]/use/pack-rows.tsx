'use client';

import kitStyles from '@/app/_kit/kit.module.css';
import { Button } from '@/app/_ui/button';
import { Status } from '@/app/_ui/status';
import type { RecordOfUse } from '@/db/queries/usage/recordOfUse';
import type { TablePack } from '@/db/queries/usage/tablePacks';
import { plainDate } from '@/lib/quantities/plainDate';
import { freePacks } from '@/lib/usage/account';
import { openingBars } from '@/lib/usage/bars';
import { mayStay } from '@/lib/usage/implant';
import { listWords } from '@/lib/wording/numbers';
import { OPENING_BAR_WORDS, openedWords, USE_OUTCOME_WORDS } from '@/lib/wording/usage';
import { touchOf } from './touch';
import styles from './use.module.css';
import type { Saying, Table, Touched } from './use-table';

/** Single packs issued to the case: one touch a pack, as the bar says. */
export function PackRows({
  record,
  table,
  saying,
  mayEnter,
  onTouch,
}: {
  record: RecordOfUse;
  table: Table;
  saying: Saying;
  mayEnter: boolean;
  onTouch: (touched: Touched, saying?: Saying) => void;
}) {
  return (
    <ul className={styles.rows} aria-label="Single packs">
      {record.packs.map((pack) => {
        const item = table.items.get(pack.itemId);
        const name = item?.name ?? pack.itemId;
        const account = table.reckoned.accounts.find(({ key }) => key === pack.pickId);
        // an instrument is not implanted: one touch says that it was opened
        const outcome =
          saying.outcome === 'implanted' && item && !mayStay(item.kind)
            ? 'openedNotImplanted'
            : saying.outcome;
        const word =
          outcome === 'openedNotImplanted' ? openedWords(pack.reusable) : USE_OUTCOME_WORDS[outcome];
        const left = account ? Math.max(0, freePacks(account)) : 0;
        const bars = openingBars(
          {
            useBys: [pack.useBy ? plainDate.parse(pack.useBy) : null],
            held: pack.held,
            recalled: item?.status === 'recalled',
          },
          plainDate.parse(record.caseDate),
        );
        return (
          <li key={pack.pickId} className={styles.row}>
            <div>
              <p className={kitStyles.name}>{pack.quantity > 1 ? `${pack.quantity} × ${name}` : name}</p>
              <p className={kitStyles.under}>
                {[
                  pack.lot === null ? 'lot not stated' : `lot ${pack.lot}`,
                  pack.useBy === null ? 'no use-by stated' : `use-by ${pack.useBy}`,
                  left === 0 ? 'all recorded' : `${left} left`,
                ].join(' · ')}
              </p>
              {bars.length > 0 ? (
                <p>
                  <Status tone="stop" look="strong">
                    {`Do not open: ${listWords(bars.map((bar) => OPENING_BAR_WORDS[bar]))}`}
                  </Status>
                </p>
              ) : null}
            </div>
            {mayEnter && left > 0 ? (
              <Button
                size="bench"
                aria-label={`${name}: ${word.toLowerCase()}`}
                onClick={() => onTouch(touchOf(pack))}
              >
                {word}
              </Button>
            ) : null}
            {mayEnter ? <Unsaid pack={pack} name={name} table={table} onTouch={onTouch} /> : null}
          </li>
        );
      })}
    </ul>
  );
}

/** Packs the return said were opened: what each became is still to be said. */
function Unsaid({
  pack,
  name,
  table,
  onTouch,
}: {
  pack: TablePack;
  name: string;
  table: Table;
  onTouch: (touched: Touched, saying?: Saying) => void;
}) {
  const told = (returnId: string) =>
    table.reckoned.state.pieces.reduce(
      (sum, { source, quantity }) =>
        source.kind === 'pack' && source.returnId === returnId ? sum + quantity : sum,
      0,
    );
  const open = pack.returns.filter(
    ({ id, outcome, quantity }) => outcome === 'opened' && told(id) < quantity,
  );
  return open.map(({ id }) => (
    <div key={id} className={styles.unsaid}>
      <p>
        <Status tone="unknown">Opened, by the return</Status>
        {' and it is not said yet whether it was implanted.'}
      </p>
      <div className={kitStyles.acts}>
        {(['implanted', 'openedNotImplanted'] as const).map((outcome) => (
          <Button
            key={outcome}
            size="bench"
            aria-label={`${name}, opened by the return: ${USE_OUTCOME_WORDS[outcome].toLowerCase()}`}
            onClick={() => onTouch(touchOf(pack, { returnId: id }), { outcome, lostAt: null, place: null })}
          >
            {USE_OUTCOME_WORDS[outcome]}
          </Button>
        ))}
      </div>
    </div>
  ));
}
