'use client';

import Link from 'next/link';
import { useState } from 'react';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { Dialog } from '@/app/_ui/dialog';
import { EmptyState } from '@/app/_ui/empty-state';
import { PatientDataHint } from '@/app/_ui/patient-data-hint';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { TextArea } from '@/app/_ui/text-area';
import type { CountLineShown, CountScreen } from '@/db/queries/shelf/countScreen';
import { differenceWords } from '@/lib/wording/stock-counts';
import styles from '../counts.module.css';

/** What a closed count found: the differences, each to be decided by itself, then what agrees. */
export function Results({ count, mayDecide }: { count: CountScreen; mayDecide: boolean }) {
  const differs = count.lines.filter(({ result }) => (result?.difference ?? 0) !== 0);
  const agrees = count.lines.filter(({ result }) => result?.difference === 0);
  const not = count.lines.filter(({ result }) => result?.difference === null);
  const { pieces, percent } = count.tolerance;
  return (
    <>
      <Section
        title="Differences"
        note={
          differs.length === 0
            ? 'none'
            : `counted again above ${pieces} ${pieces === 1 ? 'piece' : 'pieces'} or ${percent} %, whichever is larger`
        }
      >
        {differs.length === 0 ? (
          <EmptyState title="All as on record">Nothing is to be decided.</EmptyState>
        ) : (
          <ul className={styles.list} aria-label="Differences">
            {differs.map((line) => (
              <ResultRow key={line.id} line={line}>
                {line.result?.decision ? (
                  <p>
                    <Status tone={line.result.decision === 'accepted' ? 'good' : 'neutral'}>
                      {line.result.decision === 'accepted' ? 'accepted' : 'left as it was'}
                    </Status>{' '}
                    {`by ${line.result.decidedBy ?? ''}${line.result.because === null ? '' : `: ${line.result.because}`}`}
                  </p>
                ) : mayDecide && count.stage === 'toDecide' ? (
                  <Decide count={count} line={line} />
                ) : (
                  <Status tone="attention">
                    {count.stage === 'toDecide' ? 'to be decided by another person' : 'to be counted again'}
                  </Status>
                )}
              </ResultRow>
            ))}
          </ul>
        )}
      </Section>
      {agrees.length > 0 ? (
        <Section title="As on record" note={String(agrees.length)}>
          <ul className={styles.list} aria-label="As on record">
            {agrees.map((line) => (
              <ResultRow key={line.id} line={line} />
            ))}
          </ul>
        </Section>
      ) : null}
      {not.length > 0 ? (
        <Section title="Not counted" note="still due">
          <ul className={styles.list} aria-label="Not counted">
            {not.map((line) => (
              <ResultRow key={line.id} line={line} />
            ))}
          </ul>
        </Section>
      ) : null}
    </>
  );
}

function ResultRow({ line, children }: { line: CountLineShown; children?: React.ReactNode }) {
  const { result } = line;
  return (
    <li className={styles.line}>
      <div>
        <p className={styles.name}>
          <Link href={`/stock/${line.itemId}`}>{line.name}</Link>
        </p>
        <p className={styles.soft}>
          {`${line.code}, ${line.lot === null ? 'no lot stated' : `lot ${line.lot}`}${line.useBy === null ? '' : `, use-by ${line.useBy}`}`}
        </p>
        {line.added ? <Status tone="attention">not on the list at first</Status> : null}
      </div>
      {result === null || result.first === null ? (
        <span />
      ) : (
        <dl className={styles.figures}>
          <div>
            <dt>Counted</dt>
            <dd>{result.first}</dd>
          </div>
          {result.second === null ? null : (
            <div>
              <dt>Counted again</dt>
              <dd>{result.second}</dd>
            </div>
          )}
          <div>
            <dt>On record then</dt>
            <dd>{result.expected}</dd>
          </div>
          <div>
            <dt>So</dt>
            <dd>{differenceWords(result.difference ?? 0)}</dd>
          </div>
        </dl>
      )}
      <div>{children}</div>
    </li>
  );
}

/** Accepts one difference, which changes the record, or leaves it, with why. */
function Decide({ count, line }: { count: CountScreen; line: CountLineShown }) {
  const { act, pending, refusal, forget } = useAct();
  const [open, setOpen] = useState(false);
  const [because, setBecause] = useState('');
  const [asked, setAsked] = useState(false);
  const address = `/api/v1/stock-counts/${count.id}/acts`;
  const difference = line.result?.difference ?? 0;
  return (
    <div className={styles.acts}>
      <ConfirmDialog
        title={`Accept ${differenceWords(difference)}?`}
        confirm="Accept it"
        trigger={{ label: 'Accept', size: 'bench' }}
        onConfirm={() =>
          act(
            address,
            { kind: 'decide', lineId: line.id, decision: 'accepted', because: '' },
            `${line.name}: the record follows the count.`,
          )
        }
      >
        <p>
          {difference > 0
            ? `${difference} of ${line.name} ${difference === 1 ? 'is' : 'are'} put on record as found on the shelf.`
            : `${-difference} of ${line.name} ${difference === -1 ? 'is' : 'are'} put on record as not found on the shelf.`}{' '}
          What was picked or moved since stays as it is.
        </p>
      </ConfirmDialog>
      <Dialog
        title="Leave the record as it is?"
        trigger={{ label: 'Leave', size: 'bench' }}
        open={open}
        onOpen={(next) => {
          forget();
          setAsked(false);
          setOpen(next);
        }}
        actions={
          <Button
            kind="primary"
            size="bench"
            pending={pending}
            onClick={async () => {
              setAsked(true);
              if (because.trim() === '') return;
              const body = { kind: 'decide', lineId: line.id, decision: 'left', because: because.trim() };
              if ((await act(address, body, `${line.name}: left as it was.`)) === undefined) setOpen(false);
            }}
          >
            Leave it
          </Button>
        }
      >
        <div className={styles.form} data-size="bench">
          <TextArea
            name={`left-because-${line.id}`}
            label="Why"
            required
            rows={2}
            maxLength={400}
            value={because}
            onValue={setBecause}
            problems={asked && because.trim() === '' ? ['Say why the difference is left as it is.'] : []}
          />
          <PatientDataHint text={because} />
          {refusal ? (
            <p role="alert" className={styles.refusal}>
              {refusal}
            </p>
          ) : null}
        </div>
      </Dialog>
    </div>
  );
}
