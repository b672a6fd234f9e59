'use client';

import kitStyles from '@/app/_kit/kit.module.css';
import { SavedLine } from '@/app/_kit/saved-line';
import { Button } from '@/app/_ui/button';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { RecordOfUse } from '@/db/queries/usage/recordOfUse';
import type { UseAct } from '@/lib/usage/act';
import { capitalised } from '@/lib/wording/numbers';
import { NO_REASON, reasonWords } from '@/lib/wording/reasons';
import { momentWords } from '@/lib/wording/sets';
import { DELAY_STEP_WORDS, delayMinutes } from '@/lib/wording/usage';
import { DelayDialog } from './delay-dialog';
import styles from './use.module.css';
import { type ListedEntry, type Table, useTable } from './use-table';

/** What held the case up: how long, why, at which step and about what, as far as it is known. A wrong one is taken back. */
export function Delays({
  record,
  table,
  now,
  because,
  mayEnter,
}: {
  record: RecordOfUse;
  table: Table;
  now: string;
  /** Why a closed record is corrected. */
  because: string | null;
  mayEnter: boolean;
}) {
  const entries = table.entries
    .filter(({ act }) => act.kind === 'delay')
    .sort((a, b) => (a.doneAt < b.doneAt ? 1 : -1));
  return (
    <Section
      title="Delays"
      note="by their reasons; no total names a person"
      actions={mayEnter ? <DelayDialog record={record} table={table} because={because} /> : null}
    >
      {entries.length === 0 ? <p className={styles.soft}>No delay is recorded.</p> : null}
      {entries.length === 0 ? null : (
        <ol className={styles.recorded} aria-label="Delays">
          {entries.map((entry) => (
            <Delay
              key={entry.id}
              entry={entry}
              record={record}
              table={table}
              now={now}
              onTakeBack={
                mayEnter
                  ? () => table.send({ kind: 'takenBack', entryId: entry.id, because } as UseAct)
                  : null
              }
            />
          ))}
        </ol>
      )}
    </Section>
  );
}

function Delay({
  entry,
  record,
  table,
  now,
  onTakeBack,
}: {
  entry: ListedEntry;
  record: RecordOfUse;
  table: Table;
  now: string;
  onTakeBack: (() => void) | null;
}) {
  const { act } = entry;
  if (act.kind !== 'delay') return null;
  const backId = table.reckoned.state.takenBack.get(entry.id);
  const back = table.entries.find(({ id }) => id === backId);
  const reason = record.reasons.find(({ id }) => id === act.reasonId);
  const about =
    act.about === null
      ? null
      : act.about.kind === 'set'
        ? table.nameOf(act.about.setId)
        : table.nameOfItem(act.about.itemId);
  const minutes = capitalised(delayMinutes(act.minutes));
  return (
    <li className={styles.entry} data-back={back ? 'yes' : undefined}>
      <div>
        <p className={kitStyles.name}>
          {[minutes, ...(act.step === null ? [] : [DELAY_STEP_WORDS[act.step]])].join(', ')}
        </p>
        <p>
          <Status tone={reason ? 'attention' : 'unknown'}>
            {reason ? reasonWords(reason) : `reason ${NO_REASON}`}
          </Status>
          {back ? (
            <>
              {' '}
              <Status tone="stop">taken back</Status>
            </>
          ) : null}
          {entry.pending ? (
            <>
              {' '}
              <Status tone="unknown">pending</Status>
            </>
          ) : null}
        </p>
        {about === null ? null : <p className={kitStyles.under}>{`About ${about}`}</p>}
        {act.note === null ? null : <p className={kitStyles.under}>{`“${act.note}”`}</p>}
        <p className={kitStyles.under}>{`${momentWords(entry.doneAt, now)}, ${entry.by}`}</p>
        {act.because === null ? null : (
          <p className={kitStyles.under}>{`Entered after closing: “${act.because}”`}</p>
        )}
        {back?.act.because == null ? null : (
          <p className={kitStyles.under}>
            {`Taken back by ${back.by}, ${momentWords(back.doneAt, now)}: “${back.act.because}”`}
          </p>
        )}
      </div>
      {onTakeBack && !back ? (
        <Button
          size="bench"
          kind="quiet"
          aria-label={`Take back: delay, ${delayMinutes(act.minutes)}`}
          onClick={onTakeBack}
        >
          Take back
        </Button>
      ) : null}
    </li>
  );
}

/** Delays of a case for which nothing is in theatre: that nothing came may be what held it up. */
export function DelaysAlone({
  caseId,
  record,
  now,
  mayEnter,
}: {
  caseId: string;
  record: RecordOfUse;
  now: string;
  mayEnter: boolean;
}) {
  const table = useTable(caseId, record);
  return (
    <>
      <Delays record={record} table={table} now={now} because={null} mayEnter={mayEnter} />
      {mayEnter ? <SavedLine outbox={table.outbox} /> : null}
    </>
  );
}
