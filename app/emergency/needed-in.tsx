'use client';

import { useRouter } from 'next/navigation';
import { useTransition } from 'react';
import { classNames } from '@/app/_ui/class-names';
import { addressOf, type EmergencyAsked } from '@/lib/emergency/asked';
import styles from './emergency.module.css';

const MINUTE_MS = 60_000;
const CHOICES = [
  { minutes: 0, label: 'Now' },
  { minutes: 30, label: '30 min' },
  { minutes: 60, label: '1 hour' },
  { minutes: 120, label: '2 hours' },
  { minutes: 240, label: '4 hours' },
];

/** The third question: how long until it is needed. It is kept as a time by the clock, so that it stays true while one looks. */
export function NeededIn({
  asked,
  minutes,
  at,
}: {
  asked: EmergencyAsked;
  /** From now, as it is answered or assumed. */
  minutes: number;
  /** The same by the clock on the wall. */
  at: string;
}) {
  const router = useRouter();
  const [pending, begin] = useTransition();
  function choose(inMinutes: number) {
    const wholeMinute = Math.ceil(Date.now() / MINUTE_MS) + inMinutes;
    const by = new Date(wholeMinute * MINUTE_MS).toISOString();
    begin(() => router.push(addressOf({ ...asked, by }), { scroll: false }));
  }
  return (
    <fieldset className={styles.needed} aria-busy={pending || undefined}>
      <legend>
        3. Needed {at}
        {asked.by === null ? ', until you say otherwise' : ''}
      </legend>
      <div className={styles.times}>
        {CHOICES.map((choice) => {
          const chosen = Math.abs(choice.minutes - minutes) <= 2;
          return (
            <button
              key={choice.minutes}
              type="button"
              aria-pressed={chosen}
              className={classNames(styles.tile, styles.time, chosen && styles.tileChosen)}
              onClick={() => choose(choice.minutes)}
            >
              {choice.label}
            </button>
          );
        })}
      </div>
    </fieldset>
  );
}
