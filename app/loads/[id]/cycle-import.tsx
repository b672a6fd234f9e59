'use client';

import { useRouter } from 'next/navigation';
import { type ChangeEvent, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { Dialog } from '@/app/_ui/dialog';
import type { CycleImported } from '@/db/operations/loads/import-cycle';
import { cycleOutcome } from '@/lib/loads/cycle/summary';
import { CYCLE_OUTCOME_WORDS } from '@/lib/wording/loads';
import { durationWords } from '@/lib/wording/thermal-dose';
import styles from '../loads.module.css';
import { sendLoad } from '../send-load';

const MOST_BYTES = 900_000;

/** Takes the CSV of a cycle: first says what it would be, and keeps it only when told so. */
export function CycleImport({ loadId, number, again }: { loadId: string; number: string; again: boolean }) {
  const router = useRouter();
  const [file, setFile] = useState<{ name: string; text: string } | null>(null);
  const [tried, setTried] = useState<CycleImported | null>(null);
  const [wrong, setWrong] = useState<string[]>([]);
  const [pending, setPending] = useState(false);

  function reset() {
    setFile(null);
    setTried(null);
    setWrong([]);
  }

  async function ask(chosen: { name: string; text: string }, dryRun: boolean) {
    setPending(true);
    const body = { baseRevision: null, text: chosen.text, fileName: chosen.name, dryRun };
    const sent = await sendLoad<CycleImported>(`/api/v1/loads/${loadId}/cycle`, body);
    setPending(false);
    setWrong(sent.ok ? [] : sent.sentences);
    setTried(sent.ok ? sent.value : null);
    return sent.ok;
  }

  async function choose(event: ChangeEvent<HTMLInputElement>) {
    const chosen = event.target.files?.[0];
    // the same file may be chosen again once it was put right
    event.target.value = '';
    if (!chosen) return;
    reset();
    if (chosen.size > MOST_BYTES)
      return setWrong(['The file is larger than 900 kB: it is no record of one cycle.']);
    const taken = { name: chosen.name, text: await chosen.text() };
    setFile(taken);
    await ask(taken, true);
  }

  return (
    <Dialog
      title={`The cycle of load ${number}`}
      width="wide"
      trigger={{ label: again ? 'Import again' : 'Import the cycle', size: 'bench' }}
      onOpen={(open) => (open ? undefined : reset())}
    >
      {(close) => (
        <div className={styles.form} data-size="bench">
          <p>
            A CSV file with a heading that names a time and a temperature in °C or °F. It is tried first;
            nothing is imported in part.
          </p>
          <label className={styles.fileChoice}>
            <span>{file === null ? 'Choose the file' : `Chosen: ${file.name}. Choose another`}</span>
            <input type="file" accept=".csv,.txt,text/csv,text/plain" onChange={choose} disabled={pending} />
          </label>
          {wrong.length > 0 ? (
            <div role="alert" className={styles.wrong}>
              <p>
                <strong>Nothing was imported.</strong>{' '}
                {wrong.length === 1 ? 'One thing is wrong:' : `${wrong.length} things are wrong:`}
              </p>
              {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a list that scrolls must be reachable by keyboard */}
              <ul className={styles.problems} tabIndex={0} aria-label="What is wrong with the file">
                {wrong.map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
            </div>
          ) : null}
          {tried !== null && file !== null ? (
            <>
              <div role="status">
                <p>
                  <strong>{`This is what would be imported. ${CYCLE_OUTCOME_WORDS[cycleOutcome(tried.summary)]}`}</strong>
                  {tried.summary.dose?.holding
                    ? `: ${durationWords(tried.summary.dose.holding.longestSeconds)} within the band, ${durationWords(tried.summary.dose.holding.requiredSeconds)} asked for.`
                    : '.'}
                </p>
                <ul className={styles.plain}>
                  {tried.summary.understood.map((line) => (
                    <li key={line}>{line}</li>
                  ))}
                </ul>
              </div>
              <ButtonRow>
                <Button
                  kind="primary"
                  size="bench"
                  pending={pending}
                  onClick={async () => {
                    if (!(await ask(file, false))) return;
                    router.refresh();
                    reset();
                    close();
                  }}
                >
                  {again ? 'Import in place of the other' : 'Import'}
                </Button>
                <Button size="bench" onClick={close}>
                  Leave it
                </Button>
              </ButtonRow>
            </>
          ) : null}
        </div>
      )}
    </Dialog>
  );
}
