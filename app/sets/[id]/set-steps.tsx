'use client';

import { type ReactNode, useState } from 'react';
import { NextStep, type PressedSet } from '@/app/_turns/next-step';
import { ButtonRow } from '@/app/_ui/button-row';
import type { TurnStep } from '@/lib/sets/setState';
import type { NextAct } from '@/lib/turns/queue';
import { ChooseDialog } from './choose-dialog';
import { HoldDialog } from './hold-dialog';
import { LiftDialog } from './lift-dialog';
import { ReasonDialog } from './reason-dialog';
import styles from './set.module.css';
import { WhenFields } from './when-fields';

/** What this person may do with the set as it is. */
export interface Offered {
  next: { act: NextAct; mayAct: boolean; href: string | null } | null;
  send: boolean;
  hold: boolean;
  lift: boolean;
  reprocess: boolean;
  wash: boolean;
  move: boolean;
  withdraw: boolean;
  bringBack: boolean;
}

/** The steps of a set: the next one first, then what else may be done with it where it is. */
export function SetSteps({
  set,
  step,
  offered,
  after,
  cases,
  promised,
  places,
  promisedWords,
  children,
}: {
  set: PressedSet;
  step: TurnStep;
  offered: Offered;
  after: readonly TurnStep[];
  cases: { value: string; label: string; note?: string }[];
  promised: string | null;
  places: { value: string; label: string }[];
  promisedWords: string;
  /** Further steps of other kinds. */
  children: ReactNode;
}) {
  const [doneAt, setDoneAt] = useState<string | null>(null);
  const shared = { set, doneAt };
  return (
    <div className={styles.acts} data-size="bench">
      <ButtonRow>
        {offered.next && step !== 'held' ? (
          <NextStep {...shared} {...offered.next} focusable kind="primary" />
        ) : null}
        {offered.lift ? <LiftDialog set={set} after={after} /> : null}
        {offered.send ? (
          <ChooseDialog {...shared} how="send" choices={cases} chosen={promised} primary>
            <p>
              Use-by is tested against the day of the case. A set that was let go short goes to its own case
              only.
            </p>
          </ChooseDialog>
        ) : null}
        {children}
        {offered.wash ? <WashAgain {...shared} /> : null}
        {offered.hold ? <HoldDialog {...shared} again={step === 'held'} /> : null}
        {offered.move ? <ChooseDialog {...shared} how="move" choices={places} /> : null}
        {offered.reprocess ? (
          <ReasonDialog {...shared} how="reprocess">
            <p>Its wrap is opened: it is no longer sterile, and goes to washing. {promisedWords}</p>
          </ReasonDialog>
        ) : null}
        {offered.withdraw ? (
          <ReasonDialog set={set} doneAt={null} how="withdraw">
            <p>It stays where it is and takes no step until it is brought back. {promisedWords}</p>
          </ReasonDialog>
        ) : null}
        {offered.bringBack ? (
          <ReasonDialog set={set} doneAt={null} how="bring-back">
            <p>A sterile set is opened on the bench then: nobody looked after its sterility meanwhile.</p>
          </ReasonDialog>
        ) : null}
      </ButtonRow>
      <WhenFields onWhen={setDoneAt} />
    </div>
  );
}

/** Seen to be dirty on the bench, before it was packed: back to washing. */
function WashAgain({ set, doneAt }: { set: PressedSet; doneAt: string | null }) {
  return <NextStep set={set} act="beginWash" mayAct href={null} doneAt={doneAt} />;
}
