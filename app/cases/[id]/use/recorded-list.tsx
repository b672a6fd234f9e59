'use client';

import { useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { Button } from '@/app/_ui/button';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import type { RecordOfUse } from '@/db/queries/usage/recordOfUse';
import type { PieceAct, UseOutcome } from '@/lib/usage/act';
import { listWords } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';
import { lotOfUseWords, OPENING_BAR_WORDS, outcomeWords, placeWords } from '@/lib/wording/usage';
import styles from './use.module.css';
import type { ListedEntry, Table } from './use-table';
import { WhyWasted } from './why-wasted';

const OUTCOME_TONES: Record<UseOutcome, Tone> = {
  implanted: 'good',
  openedNotImplanted: 'attention',
  returnedUnopened: 'neutral',
  droppedOrDamaged: 'attention',
  notFound: 'stop',
};

/** How many are shown until all are asked for. */
const MOST_AT_FIRST = 12;

/** What is recorded, the newest first: whose each entry is, what is known of its lot, and what was taken back. */
export function RecordedList({
  record,
  table,
  now,
  onTakeBack,
  onName,
}: {
  record: RecordOfUse;
  table: Table;
  now: string;
  /** `null`: no reason may be named by this person, or now. */
  onName: ((entryId: string, reasonId: string | null) => void) | null;
  /** `null`: nothing may be taken back by this person, or now. */
  onTakeBack: ((entry: ListedEntry) => void) | null;
}) {
  const [all, setAll] = useState(false);
  const pieces = table.entries
    .filter(({ act }) => act.kind === 'piece')
    .sort((a, b) => (a.doneAt < b.doneAt ? 1 : -1));
  if (pieces.length === 0) return <p className={styles.soft}>Nothing is recorded yet.</p>;
  const shown = all ? pieces : pieces.slice(0, MOST_AT_FIRST);
  return (
    <>
      <ol className={styles.recorded} aria-label="What is recorded">
        {shown.map((entry) => (
          <Recorded
            key={entry.id}
            entry={entry}
            record={record}
            table={table}
            now={now}
            onTakeBack={onTakeBack}
            onName={onName}
          />
        ))}
      </ol>
      {pieces.length > MOST_AT_FIRST ? (
        <Button size="bench" kind="quiet" onClick={() => setAll(!all)}>
          {all ? 'The newest alone' : `All ${pieces.length}`}
        </Button>
      ) : null}
    </>
  );
}

function Recorded({
  entry,
  record,
  table,
  now,
  onTakeBack,
  onName,
}: {
  entry: ListedEntry;
  record: RecordOfUse;
  table: Table;
  now: string;
  onTakeBack: ((entry: ListedEntry) => void) | null;
  onName: ((entryId: string, reasonId: string | null) => void) | null;
}) {
  const act = entry.act as PieceAct;
  const backId = table.reckoned.state.takenBack.get(entry.id);
  const back = table.entries.find(({ id }) => id === backId);
  const name = table.items.get(act.itemId)?.name ?? act.itemId;
  return (
    <li className={styles.entry} data-back={back ? 'yes' : undefined}>
      <div>
        <p className={kitStyles.name}>
          {act.quantity > 1 ? `${act.quantity} × ${name}` : name}
          {act.place === null ? '' : `, ${placeWords(act.place)}`}
        </p>
        <p>
          <Status tone={OUTCOME_TONES[act.outcome]}>{saidOf(act, record)}</Status>
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
        <p className={kitStyles.under}>
          {`${lotWordsOf(act, record, entry)} · ${momentWords(entry.doneAt, now)}, ${entry.by}`}
        </p>
        {act.despite.length > 0 ? (
          <p>
            <Status tone="stop">
              {`Opened although ${listWords(act.despite.map((bar) => OPENING_BAR_WORDS[bar]))}`}
            </Status>
          </p>
        ) : null}
        {table.isWaste(act) && !back ? (
          <WhyWasted
            record={record}
            table={table}
            name={name}
            entryId={entry.id}
            onName={onName && ((reasonId) => onName(entry.id, reasonId))}
          />
        ) : null}
        {act.note === null ? null : <p className={kitStyles.under}>{`“${act.note}”`}</p>}
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
          aria-label={`Take back: ${name}, ${outcomeWords(act.outcome, act.lostAt).toLowerCase()}`}
          onClick={() => onTakeBack(entry)}
        >
          Take back
        </Button>
      ) : null}
    </li>
  );
}

/** What became of it; of an instrument that was opened, that it is washed. */
const saidOf = ({ outcome, lostAt, source }: PieceAct, record: RecordOfUse): string =>
  outcomeWords(
    outcome,
    lostAt,
    source.kind === 'pack' &&
      (record.packs.find(({ pickId }) => pickId === source.pickId)?.reusable ?? false),
  );

function lotWordsOf(act: PieceAct, record: RecordOfUse, entry: Pick<ListedEntry, 'pack'>): string {
  const { source } = act;
  if (source.kind === 'pack') {
    const pack = record.packs.find(({ pickId }) => pickId === source.pickId);
    return lotOfUseWords(act.lot, pack?.lot ?? null, null);
  }
  const code = record.sets.find(({ id }) => id === source.setId)?.code ?? source.setId;
  const set = { code, pack: entry.pack };
  return act.lot.kind === 'setAndLoad'
    ? lotOfUseWords(act.lot, null, set)
    : `${lotOfUseWords(act.lot, null, set)}, from ${code}`;
}
