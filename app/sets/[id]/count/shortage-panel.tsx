'use client';

import { useEffect, useState } from 'react';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import { type CountDraft, countFrom } from '@/lib/sets/countDraft';
import { sendJson } from '../../_parts/send-json';
import styles from './count.module.css';

interface Shortage {
  stops: { about: string; words: string }[];
  maySend: { who: string; because: string; tone: Tone };
}

/** What the shortage entered so far stops; lines not counted yet are taken as whole. */
export function ShortagePanel({ setId, draft }: { setId: string; draft: CountDraft }) {
  const [shortage, setShortage] = useState<Shortage | null>(null);
  const entered = JSON.stringify(countFrom(draft).lines.map(({ lineId, found }) => [lineId, found]));

  useEffect(() => {
    const found = Object.fromEntries(JSON.parse(entered) as [string, number][]);
    if (Object.keys(found).length === 0) {
      setShortage(null);
      return;
    }
    let left = false;
    const timer = setTimeout(() => {
      sendJson<Shortage>(`/api/sets/${setId}/shortage`, { found }).then(
        (answer) => {
          if (!left && answer.ok) setShortage(answer.value);
        },
        () => undefined, // the count itself does not need it
      );
    }, 350);
    return () => {
      left = true;
      clearTimeout(timer);
    };
  }, [entered, setId]);

  return (
    <Section title="What this stops" note="as entered so far; lines not counted are taken as whole">
      <div className={styles.shortage} aria-live="polite">
        {shortage === null ? (
          <p>Nothing is entered yet.</p>
        ) : (
          <>
            {shortage.stops.length === 0 ? (
              <p>
                <Status tone="good">Stops nothing</Status> No promised construct and no booked case.
              </p>
            ) : (
              <ul>
                {shortage.stops.map(({ about, words }) => (
                  <li key={about}>
                    <Status tone="stop">stops</Status> <strong>{about}</strong>: {words}
                  </li>
                ))}
              </ul>
            )}
            <p>
              <Status tone={shortage.maySend.tone} look="plain">
                {shortage.maySend.who}
              </Status>{' '}
              {shortage.maySend.because}
            </p>
          </>
        )}
      </div>
    </Section>
  );
}
