'use client';

import { type ChangeEvent, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { Status } from '@/app/_ui/status';
import type { LoanListTried } from '@/db/operations/loans/bring-loan-list';
import styles from '../loans.module.css';
import { type SeenLoan, useLoanAct } from '../use-loan-act';

const MOST_BYTES = 800_000;
type Source = { kind: 'csv'; text: string; fileName: string } | { kind: 'asAsked' };

/** Takes the lender’s content list: first says what it would be, and keeps it only when told so. */
export function ListImport({
  loan,
  asked,
  onDone,
}: {
  loan: SeenLoan;
  asked: string | null;
  onDone?: () => void;
}) {
  const { send, pending, problems, forget } = useLoanAct(loan, onDone);
  const [source, setSource] = useState<Source | null>(null);
  const [tried, setTried] = useState<LoanListTried | null>(null);
  const [tooLarge, setTooLarge] = useState(false);

  async function tryIt(next: Source) {
    setSource(next);
    setTried(await send<LoanListTried>({ act: 'list', source: next, dryRun: true }, null));
  }
  async function choose(event: ChangeEvent<HTMLInputElement>) {
    const file = event.target.files?.[0];
    // the same file may be chosen again once it was put right
    event.target.value = '';
    if (!file) return;
    forget();
    setTried(null);
    setTooLarge(file.size > MOST_BYTES);
    if (file.size > MOST_BYTES) return;
    await tryIt({ kind: 'csv', text: await file.text(), fileName: file.name });
  }
  const wrong = tooLarge
    ? ['The file is larger than 800 kB: it is no content list.']
    : problems.map((one) => one.sentence);
  return (
    <div className={styles.form}>
      <p>
        A CSV file whose first line names its columns: tray, code, GTIN, name, quantity, implant, class. A
        quantity and a name or a code are needed. It is tried first; nothing is taken in part.
      </p>
      <label className={styles.fileChoice}>
        <span>
          {source?.kind === 'csv' ? `Chosen: ${source.fileName}. Choose another` : 'Choose the file'}
        </span>
        <input type="file" accept=".csv,.txt,text/csv,text/plain" onChange={choose} disabled={pending} />
      </label>
      {asked === null ? null : (
        <Button pending={pending} onClick={() => tryIt({ kind: 'asAsked' })}>
          {`The lender sends just what ${asked} holds`}
        </Button>
      )}
      {wrong.length > 0 ? (
        <div role="alert" className={styles.wrong}>
          <p>
            <strong>Nothing was taken.</strong>{' '}
            {wrong.length === 1 ? 'One thing is wrong:' : `${wrong.length} things are wrong:`}
          </p>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a list that scrolls must be reachable by keyboard */}
          <ul className={styles.problems} tabIndex={0} aria-label="What is wrong with the list">
            {wrong.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </div>
      ) : null}
      {tried !== null && source !== null ? (
        <>
          <div role="status">
            <p>
              <strong>{`This is what would be taken: ${tried.lines} lines, ${tried.pieces} pieces, ${tried.trays} ${tried.trays === 1 ? 'tray' : 'trays'}.`}</strong>
            </p>
            {tried.unclassed > 0 ? (
              <p>
                {`No must-have class is stated for ${tried.unclassed} of them: each counts as one that stops the step.`}
              </p>
            ) : null}
            {tried.unknown.length > 0 ? (
              <>
                <p>
                  <Status tone="unknown">not in the catalogue</Status>{' '}
                  {tried.unknown.length === 1
                    ? 'One line stays as it is written; no plan can count on it.'
                    : `${tried.unknown.length} lines stay as they are written; no plan can count on them.`}
                </p>
                <ul className={styles.plain}>
                  {tried.unknown.map(({ tray, name, quantity }) => (
                    <li key={`${tray} ${name}`}>{`Tray ${tray}: ${quantity} × ${name}`}</li>
                  ))}
                </ul>
              </>
            ) : null}
          </div>
          <ButtonRow>
            <Button
              kind="primary"
              size="bench"
              pending={pending}
              onClick={() => send({ act: 'list', source, dryRun: false }, 'its content list is here')}
            >
              Take this list
            </Button>
          </ButtonRow>
        </>
      ) : null}
    </div>
  );
}
