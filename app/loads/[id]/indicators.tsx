'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { Dialog } from '@/app/_ui/dialog';
import { problemsAt } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { RadioGroup, Segmented } from '@/app/_ui/radio-group';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { TextField } from '@/app/_ui/text-field';
import type { IndicatorOnFile } from '@/db/queries/loads/acceptanceFacts';
import {
  type IndicatorKind,
  type IndicatorResult,
  indicatorKind,
  indicatorResult,
  type LoadState,
} from '@/lib/loads/load';
import { INDICATOR_WORDS, RESULT_TONES, RESULT_WORDS } from '@/lib/wording/loads';
import { capitalised, listWords } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';
import styles from '../loads.module.css';
import { sendLoad } from '../send-load';

/** Indicators that went with the load, each read once by a person. */
export function Indicators({
  loadId,
  number,
  state,
  indicators,
  required,
  mayWork,
  at,
}: {
  loadId: string;
  number: string;
  state: LoadState;
  indicators: readonly IndicatorOnFile[];
  required: readonly IndicatorKind[];
  mayWork: boolean;
  at: string;
}) {
  const open = ['makingUp', 'running', 'awaitingAcceptance'].includes(state);
  const readable = mayWork && state !== 'makingUp' && state !== 'undone';
  return (
    <Section
      title="Indicators"
      note={
        required.length === 0
          ? undefined
          : `every load needs: ${listWords(required.map((kind) => INDICATOR_WORDS[kind]))}`
      }
      actions={mayWork && open ? <AddIndicator loadId={loadId} number={number} /> : null}
    >
      {indicators.length === 0 ? (
        <p className={styles.soft}>None on record yet.</p>
      ) : (
        <ul className={styles.packs}>
          {indicators.map((one) => (
            <li key={one.id} className={styles.pack}>
              <div className={styles.packName}>
                <strong>{capitalised(INDICATOR_WORDS[one.kind])}</strong>
                <span>
                  {[
                    ...(one.kind === 'printedRecord'
                      ? []
                      : [one.lot === null ? 'lot not stated' : `lot ${one.lot}`]),
                    ...(one.useBy === null ? [] : [`use-by ${one.useBy}`]),
                    ...(one.position === null ? [] : [one.position]),
                    ...(one.readBy === null || one.readAt === null
                      ? []
                      : [`read by ${one.readBy}, ${momentWords(one.readAt, at)}`]),
                  ].join(' · ')}
                </span>
              </div>
              <div className={styles.packEnd}>
                <Status tone={RESULT_TONES[one.result]}>{capitalised(RESULT_WORDS[one.result])}</Status>
                {one.result === 'pending' && readable ? (
                  <>
                    <ReadButton
                      loadId={loadId}
                      indicator={one}
                      result="passed"
                      accepted={state === 'accepted'}
                    />
                    <ReadButton
                      loadId={loadId}
                      indicator={one}
                      result="failed"
                      accepted={state === 'accepted'}
                    />
                  </>
                ) : null}
              </div>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

function ReadButton({
  loadId,
  indicator,
  result,
  accepted,
}: {
  loadId: string;
  indicator: IndicatorOnFile;
  result: 'passed' | 'failed';
  accepted: boolean;
}) {
  const router = useRouter();
  const what = INDICATOR_WORDS[indicator.kind];
  return (
    <ConfirmDialog
      title={`The ${what} ${result}?`}
      confirm={`It ${result}`}
      danger={result === 'failed'}
      trigger={{ label: capitalised(result) }}
      onConfirm={async () => {
        const body = { baseRevision: null, indicatorId: indicator.id, result };
        const sent = await sendLoad(`/api/v1/loads/${loadId}/results`, body);
        router.refresh();
        return sent.ok ? undefined : sent.sentences.join(' ');
      }}
    >
      <p>It is read once, and stays as you read it now.</p>
      {accepted && result === 'failed' ? (
        <p>
          <strong>
            The load was accepted on it. It is rejected by this, and everything since the last accepted load
            is held at once.
          </strong>
        </p>
      ) : null}
    </ConfirmDialog>
  );
}

function AddIndicator({ loadId, number }: { loadId: string; number: string }) {
  const router = useRouter();
  const [kind, setKind] = useState<IndicatorKind | null>(null);
  const [result, setResult] = useState<IndicatorResult | null>(null);
  const [lot, setLot] = useState('');
  const [useBy, setUseBy] = useState('');
  const [position, setPosition] = useState('');
  const [problems, setProblems] = useState<{ path: string; sentence: string }[]>([]);
  const [pending, setPending] = useState(false);

  async function add(close: () => void) {
    if (kind === null || result === null)
      return setProblems([
        ...(kind === null ? [{ path: 'kind', sentence: 'Say which indicator it is.' }] : []),
        ...(result === null
          ? [{ path: 'result', sentence: 'Say how it was read, or that it is pending.' }]
          : []),
      ]);
    setPending(true);
    const entry = { kind, lot, useBy, position, result };
    const sent = await sendLoad(`/api/v1/loads/${loadId}/indicators`, { baseRevision: null, entry });
    setPending(false);
    if (!sent.ok)
      return setProblems(
        sent.problems.length > 0 ? sent.problems : [{ path: '', sentence: sent.sentences.join(' ') }],
      );
    router.refresh();
    // the next one is another: its result is never there before it is read
    setKind(null);
    setResult(null);
    setProblems([]);
    close();
  }

  return (
    <Dialog title={`An indicator of load ${number}`} trigger={{ label: 'Add an indicator', size: 'bench' }}>
      {(close) => (
        <div className={styles.form} data-size="bench">
          {problems.length > 0 ? <ProblemSummary problems={problems} /> : null}
          <RadioGroup
            name="kind"
            label="Which"
            value={kind}
            onValue={setKind}
            problems={problemsAt(problems, 'kind')}
            choices={indicatorKind.options.map((value) => ({
              value,
              label: capitalised(INDICATOR_WORDS[value]),
            }))}
          />
          {kind === 'printedRecord' ? null : (
            <>
              <TextField
                name="lot"
                label="Lot"
                hint="Blank where it is not stated."
                value={lot}
                onValue={setLot}
                width="code"
                problems={problemsAt(problems, 'lot')}
              />
              <TextField
                name="useBy"
                label="Use-by"
                hint="As 2027-06-30."
                value={useBy}
                onValue={setUseBy}
                width="code"
                problems={problemsAt(problems, 'useBy')}
              />
            </>
          )}
          <TextField
            name="position"
            label="Where it lay"
            value={position}
            onValue={setPosition}
            problems={problemsAt(problems, 'position')}
          />
          <Segmented
            name="result"
            label="Result"
            value={result}
            onValue={setResult}
            problems={problemsAt(problems, 'result')}
            choices={indicatorResult.options.map((value) => ({
              value,
              label: capitalised(RESULT_WORDS[value]),
            }))}
          />
          <Button kind="primary" size="bench" pending={pending} onClick={() => add(close)}>
            Record it
          </Button>
        </div>
      )}
    </Dialog>
  );
}
