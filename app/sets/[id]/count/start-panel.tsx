'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { CountPurpose } from '@/lib/bench/closing';
import { PURPOSE_WORDS } from '@/lib/wording/bench';
import { sendJson } from '../../_parts/send-json';
import styles from './bench.module.css';
import { newEntryId } from './waiting-room';

export interface Disputed {
  lineId: string;
  name: string;
  place: string;
  firstBy: string;
  first: number;
  secondBy: string;
  second: number;
}

/** Before a count: how those of this turn stand, where two differ, and what may be begun. */
export function StartPanel({
  setId,
  facts,
  bars,
  disputed,
  open,
}: {
  setId: string;
  /** How far it is counted and checked, in sentences. */
  facts: readonly string[];
  /** What keeps it from being packed. */
  bars: readonly string[];
  disputed: readonly Disputed[];
  open: readonly { purpose: CountPurpose; note: string }[];
}) {
  const router = useRouter();
  const [wrong, setWrong] = useState<string | null>(null);
  const [busy, setBusy] = useState<CountPurpose | null>(null);

  async function begin(purpose: CountPurpose): Promise<void> {
    setBusy(purpose);
    setWrong(null);
    try {
      const answer = await sendJson('/api/v1/bench', { countId: newEntryId('count'), setId, purpose });
      if (answer.ok) router.refresh();
      else setWrong(answer.sentence);
    } catch {
      setWrong('The server can’t be reached. Try again in a moment.');
    } finally {
      setBusy(null);
    }
  }

  return (
    <div className={styles.screen}>
      {disputed.length > 0 ? (
        <Section title="Two counts differ" note="both figures are kept, whatever is settled">
          <table className={styles.both}>
            <caption className={styles.hidden}>Lines on which two counts differ</caption>
            <thead>
              <tr>
                <th scope="col">Line</th>
                <th scope="col">First count</th>
                <th scope="col">Second count</th>
              </tr>
            </thead>
            <tbody>
              {disputed.map((one) => (
                <tr key={`${one.lineId} ${one.firstBy} ${one.secondBy}`}>
                  <th scope="row">
                    {one.name}
                    <span className={styles.under}>{one.place}</span>
                  </th>
                  <td>
                    <strong>{one.first}</strong>
                    <span className={styles.under}>{one.firstBy}</span>
                  </td>
                  <td>
                    <strong>{one.second}</strong>
                    <span className={styles.under}>{one.secondBy}</span>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </Section>
      ) : null}
      <Section title="Where it stands" note="counts of this turn, since it was last packed">
        <ul className={styles.facts}>
          {facts.map((fact) => (
            <li key={fact}>{fact}</li>
          ))}
        </ul>
        {bars.length > 0 ? (
          <ul className={styles.facts} aria-label="Before it can be packed">
            {bars.map((bar) => (
              <li key={bar}>
                <Status tone="attention" look="plain">
                  before packing
                </Status>{' '}
                {bar}
              </li>
            ))}
          </ul>
        ) : (
          <p>
            <Status tone="good">Counting is done</Status> As far as counting goes, it may be packed.
          </p>
        )}
      </Section>
      {wrong ? (
        <p role="alert">
          <Status tone="stop">Not begun</Status> {wrong}
        </p>
      ) : null}
      <Section title="Begin">
        <ButtonRow>
          {open.map(({ purpose, note }, at) => (
            <span key={purpose} className={styles.begin}>
              <Button
                kind={at === 0 ? 'primary' : 'plain'}
                size="bench"
                pending={busy === purpose}
                onClick={() => begin(purpose)}
              >
                {PURPOSE_WORDS[purpose].act}
              </Button>
              <span className={styles.under}>{note}</span>
            </span>
          ))}
        </ButtonRow>
      </Section>
    </div>
  );
}
