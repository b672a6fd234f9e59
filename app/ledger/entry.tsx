import Link from 'next/link';
import { Disclosure } from '@/app/_ui/disclosure';
import { Status } from '@/app/_ui/status';
import type { Correction, LedgerRecord } from '@/db/queries/ledger/entries';
import { canBeCorrected, correctableValues } from '@/lib/ledger/correction';
import { latenessOf } from '@/lib/ledger/late';
import {
  instantWords,
  latenessWords,
  pathWords,
  scalarWords,
  targetWords,
  ledgerWords as words,
} from '@/lib/wording/ledger';
import { actWords } from '@/lib/wording/ledger-acts';
import { CorrectDialog } from './correct-dialog';
import { detailLines } from './detail-lines';
import styles from './ledger.module.css';
import { subjectHref } from './subject-href';

/** One entry: what, of what, by whom, when it was done and entered, what corrects it, and all it holds. */
export function Entry({
  row,
  lateAfterMinutes,
  mayCorrect,
}: {
  row: LedgerRecord;
  lateAfterMinutes: number;
  mayCorrect: boolean;
}) {
  const late = latenessWords(latenessOf(row, lateAfterMinutes));
  const name = row.subject.label ?? row.subject.id;
  const href = subjectHref(row.subject);
  return (
    <li className={styles.entry} id={`entry-${row.seq}`}>
      <p className={styles.seq}>Entry {row.seq.toLocaleString('en-GB')}</p>
      <div className={styles.what}>
        <p>
          <strong>{actWords(row.action)}</strong>{' '}
          {href === null ? <span className={styles.subject}>{name}</span> : <Link href={href}>{name}</Link>}
        </p>
        <p className={styles.who}>{words.who(row.person?.name ?? null, byToken(row.detail))}</p>
        {row.corrects === null ? null : (
          <p>
            {words.corrects(row.corrects.seq)} ({actWords(row.corrects.action)},{' '}
            {instantWords(row.corrects.doneAt)}).
          </p>
        )}
        {row.action === 'correct-record' && !row.hidden ? (
          <OldAndNew {...(row.detail as unknown as Correction)} />
        ) : null}
        {row.corrections.map((one) => (
          <CorrectionNote key={one.seq} correction={one} />
        ))}
      </div>
      <div className={styles.when}>
        <p>
          <time dateTime={row.doneAt}>{instantWords(row.doneAt)}</time>
        </p>
        {late === null ? null : <Status tone="attention">{late}</Status>}
      </div>
      <div className={styles.more}>
        <Disclosure summary="What was written">
          <dl className={styles.detail}>
            <dt>Done</dt>
            <dd>{row.doneAt}</dd>
            <dt>Entered</dt>
            <dd>{row.enteredAt}</dd>
            {row.hidden ? (
              <div className={styles.pair}>
                <dt>Detail</dt>
                <dd>{words.hidden}</dd>
              </div>
            ) : null}
            {detailLines(row.detail).map(({ path, value }) => (
              <div key={path.join('/')} className={styles.pair}>
                <dt>{pathWords(path)}</dt>
                <dd>{scalarWords(value)}</dd>
              </div>
            ))}
            <dt>Hash</dt>
            <dd className={styles.hash}>{row.hash}</dd>
          </dl>
          {mayCorrect && !row.hidden && canBeCorrected(row.action) ? (
            <CorrectDialog
              seq={row.seq}
              title={`${actWords(row.action)} ${name}`}
              doneAt={standsAt(row, 'time', row.doneAt)}
              values={correctableValues(row.detail).map(({ pointer, path, value }) => ({
                pointer,
                label: pathWords(path),
                value: standsAt(row, pointer, value),
              }))}
            />
          ) : null}
        </Disclosure>
      </div>
    </li>
  );
}

/** What holds now at a place of the entry: the newest correction of it, or what was written. */
function standsAt<T>(row: LedgerRecord, place: string, written: T): T {
  const newest = row.corrections.findLast(({ target }) =>
    target.kind === 'value' ? target.pointer === place : target.kind === place,
  );
  return newest === undefined ? written : (newest.new as T);
}

function CorrectionNote({ correction }: { correction: Correction }) {
  return (
    <div className={styles.correction}>
      <p>
        <Status tone="attention">{words.corrected}</Status> {instantWords(correction.at)} by{' '}
        {correction.by ?? words.nobody},{' '}
        <Link href={`/ledger?before=${correction.seq + 1}`}>entry {correction.seq}</Link>
      </p>
      <OldAndNew {...correction} />
    </div>
  );
}

function OldAndNew({
  target,
  old,
  new: next,
  reason,
}: Pick<Correction, 'target' | 'old' | 'new' | 'reason'>) {
  return (
    <p>
      {target.kind === 'remark' ? (
        <>Remark: {scalarWords(next)}</>
      ) : (
        <>
          {targetWords(target)}: <s>{scalarWords(old)}</s> <strong>{scalarWords(next)}</strong>
        </>
      )}
      . Because: {reason}
    </p>
  );
}

/** The name of the token by which it was asked for. */
function byToken(detail: unknown): string | null {
  const { byToken: mark } = detail as { byToken?: { name?: unknown } };
  return typeof mark?.name === 'string' ? mark.name : null;
}
