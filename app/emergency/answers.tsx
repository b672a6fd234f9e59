'use client';

import { useRouter } from 'next/navigation';
import { createContext, type ReactNode, useContext, useOptimistic, useTransition } from 'react';
import { classNames } from '@/app/_ui/class-names';
import { addressOf, type EmergencyAsked } from '@/lib/emergency/asked';
import styles from './emergency.module.css';

interface Answers {
  /** As they stand, the ones whose page is still on the way included. */
  asked: EmergencyAsked;
  /** The page for the last answer is on the way: nothing is taken by what is shown until then. */
  pending: boolean;
  choose: (answer: Partial<EmergencyAsked>) => void;
}

const AnswersContext = createContext<Answers | null>(null);

/** The answers in the address, for keys that are pressed faster than a page arrives: none of them loses the one before. */
export function AnswersProvider({
  asked: inAddress,
  children,
}: {
  asked: EmergencyAsked;
  children: ReactNode;
}) {
  const router = useRouter();
  const [pending, begin] = useTransition();
  const [asked, setAsked] = useOptimistic(inAddress);
  function choose(answer: Partial<EmergencyAsked>) {
    const next = { ...asked, ...answer };
    begin(() => {
      setAsked(next);
      router.push(addressOf(next), { scroll: false });
    });
  }
  return <AnswersContext value={{ asked, pending, choose }}>{children}</AnswersContext>;
}

export function useAnswers(): Answers {
  const answers = useContext(AnswersContext);
  if (!answers) throw new Error('answers are given inside of their provider');
  return answers;
}

/** One of a few answers that the page keeps its place for. */
export function AnswerTile<K extends 'theatre' | 'surgeon'>({
  answer,
  value,
  label,
  note,
  settled,
}: {
  answer: K;
  value: NonNullable<EmergencyAsked[K]>;
  label: string;
  note?: string | undefined;
  /** What counts, chosen or assumed. */
  settled: string | null;
}) {
  const { asked, choose } = useAnswers();
  const chosen = (asked[answer] ?? settled) === value;
  return (
    <button
      type="button"
      aria-pressed={chosen}
      className={classNames(styles.tile, chosen && styles.tileChosen)}
      onClick={() => choose({ [answer]: value })}
    >
      <span>{label}</span>
      {note ? <span className={styles.tileNote}>{note}</span> : null}
    </button>
  );
}
