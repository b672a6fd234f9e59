import type { ReactNode } from 'react';
import { Disclosure } from '@/app/_ui/disclosure';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { TrialOnFile, TrialSubject } from '@/db/queries/changes/trials';
import { compareTrials, trialsAgree } from '@/lib/changes/trial';
import { momentWords } from '@/lib/wording/changes';
import styles from './changes.module.css';
import { SubjectList } from './subject-list';
import { TrialView } from './trial-view';
import { TryButton } from './try-button';

/**
 * What a change would do: the reader's own trial, and beside it what whoever drafted it saw, with all that differs since.
 *
 * @param drafter who drafted it, or asked for it to be withdrawn
 * @param basisDigest what is in force now; a trial against another basis no longer stands
 */
export function TrialSection({
  title,
  subject,
  trials,
  me,
  drafter,
  basisDigest,
  mayTry,
  children,
}: {
  title: string;
  subject: TrialSubject;
  trials: readonly TrialOnFile[];
  me: string;
  drafter: string | null;
  basisDigest: string;
  mayTry: boolean;
  children?: ReactNode;
}) {
  const mine = trials.find(({ by }) => by.id === me) ?? null;
  const theirs = me === drafter ? null : (trials.find(({ by }) => by.id === drafter) ?? null);
  const shown = mine ?? theirs ?? trials[0] ?? null;
  const stale = shown !== null && shown.basisDigest !== basisDigest;
  return (
    <Section title={title} look="sheet" id="trial">
      <div className={styles.stack}>
        {children}
        {mayTry ? <TryButton subject={subject} again={mine !== null} /> : null}
        {shown === null ? <p>Nobody has tried it yet: what it would change is not known.</p> : null}
        {stale ? (
          <p>
            <Status tone="attention">What is in force changed since</Status> This trial does not stand any
            more: try it again before anybody approves.
          </p>
        ) : null}
        {mine && theirs ? <SinceThen before={theirs} after={mine} /> : null}
        {shown ? (
          <>
            <p className={styles.small}>
              {shown === mine ? 'You tried it' : `${shown.by.name} tried it`} on {momentWords(shown.at)}.
            </p>
            <TrialView trial={shown.result} />
          </>
        ) : null}
      </div>
    </Section>
  );
}

function SinceThen({ before, after }: { before: TrialOnFile; after: TrialOnFile }) {
  const difference = compareTrials(before.result, after.result);
  const saw = `${before.by.name} saw on ${momentWords(before.at)}`;
  if (trialsAgree(difference)) {
    return (
      <p>
        <Status tone="good">As it was drafted</Status> You see exactly what {saw}.
      </p>
    );
  }
  return (
    <div className={styles.since}>
      <p>
        <Status tone="attention">Changed since it was drafted</Status> What you see is not what {saw}.
      </p>
      {difference.pairsDiffer ? <p>The pairs of the catalogue that would change are others.</p> : null}
      {difference.versionDiffers ? (
        <p>The sets that follow it are counted otherwise, or are others.</p>
      ) : null}
      {difference.onlyAfter.length > 0 ? (
        <>
          <h3 className={styles.head}>New since then</h3>
          <SubjectList subjects={difference.onlyAfter} />
        </>
      ) : null}
      {difference.onlyBefore.length > 0 ? (
        <>
          <h3 className={styles.head}>Seen then, and not any more</h3>
          <SubjectList subjects={difference.onlyBefore} />
        </>
      ) : null}
      <Disclosure summary={`All that ${before.by.name} saw`}>
        <TrialView trial={before.result} />
      </Disclosure>
    </div>
  );
}
