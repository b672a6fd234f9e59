'use client';

import { useEffect, useRef, useState } from 'react';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import { NewestOnly } from '@/lib/bench/newestOnly';
import type { CountState } from '@/lib/bench/state';
import { sendJson } from '../../_parts/send-json';
import styles from './bench.module.css';

interface Shortage {
  stops: { about: string; words: string }[];
  maySend: { who: string; because: string; tone: Tone };
  spares: { lineId: string; name: string; shelf: string[]; sets: string[] }[];
}

/** Keys follow one another faster than this while a good layer is counted; the answer itself takes a tenth of a second. */
const SETTLED_MS = 120;

/** What the shortage entered so far stops, and where the nearest spare lies; lines not counted yet are taken as whole. */
export function ShortagePanel({
  countId,
  state,
  uncounted,
}: {
  countId: string;
  state: CountState;
  /** Lines without a figure yet: what they stop is not known. */
  uncounted: number;
}) {
  const [answered, setAnswered] = useState<{ question: string; shortage: Shortage } | null>(null);
  const asked = JSON.stringify({
    found: Object.fromEntries(
      [...state.lines].flatMap(([id, { found }]) => (found === null ? [] : [[id, Math.max(0, found)]])),
    ),
    foreign: [...state.foreign.values()].reduce(
      (sum, { found, takenHome }) =>
        sum + Math.max(0, found - takenHome.reduce((home, { pieces }) => home + pieces, 0)),
      0,
    ),
  });

  // entries must be saved meanwhile: never more than one question is before them
  const questions = useRef<NewestOnly<string> | null>(null);
  useEffect(() => {
    let left = false;
    const own = new NewestOnly<string>(async (question) => {
      const answer = await sendJson<Shortage>(`/api/v1/bench/${countId}/shortage`, JSON.parse(question));
      if (!left && answer.ok) setAnswered({ question, shortage: answer.value });
    });
    questions.current = own;
    return () => {
      left = true;
      own.stop();
    };
  }, [countId]);
  useEffect(() => {
    const timer = setTimeout(() => questions.current?.ask(asked), SETTLED_MS);
    return () => clearTimeout(timer);
  }, [asked]);

  const nothing = state.lines.size === 0 && state.foreign.size === 0;
  const shortage = answered?.shortage ?? null;
  const late = answered !== null && answered.question !== asked;
  return (
    <Section
      title="What this stops"
      note={
        late && !nothing
          ? 'for the entries before; the last ones are being worked out…'
          : 'by your own entries'
      }
    >
      <div className={styles.shortage} aria-live="polite" aria-busy={late}>
        {nothing || shortage === null ? (
          <p>{nothing ? 'Nothing is entered yet.' : 'Working it out…'}</p>
        ) : (
          <>
            {shortage.stops.length === 0 ? (
              <p>
                <Status tone={uncounted > 0 ? 'unknown' : 'good'}>
                  {uncounted > 0 ? 'Stops nothing so far' : 'Stops nothing'}
                </Status>{' '}
                No promised construct and no booked case.
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
            {uncounted > 0 ? (
              <p>
                <Status tone="unknown" look="plain">
                  Not known yet who may pack it
                </Status>{' '}
                {uncounted === 1 ? 'One line is not counted.' : `${uncounted} lines are not counted.`}
              </p>
            ) : (
              <p>
                <Status tone={shortage.maySend.tone} look="plain">
                  {shortage.maySend.who}
                </Status>{' '}
                {shortage.maySend.because}
              </p>
            )}
            {shortage.spares.length > 0 ? (
              <dl className={styles.spares}>
                {shortage.spares.map(({ lineId, name, shelf, sets }) => (
                  <div key={lineId}>
                    <dt>{name}</dt>
                    <dd>
                      {[...shelf, ...sets].length === 0
                        ? 'No spare in store, and no other set holds one too many.'
                        : [...shelf, ...sets].join('; ')}
                    </dd>
                  </div>
                ))}
              </dl>
            ) : null}
          </>
        )}
      </div>
    </Section>
  );
}
