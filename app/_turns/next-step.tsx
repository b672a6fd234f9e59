'use client';

import { useEffect, useRef } from 'react';
import { PERMITTED } from '@/lib/people/permissions';
import { ROLE_WORDS } from '@/lib/people/role';
import { ACT_OF } from '@/lib/turns/acts';
import type { NextAct } from '@/lib/turns/queue';
import { listWords } from '@/lib/wording/numbers';
import { NEXT_ACT_WORDS } from '@/lib/wording/work';
import { Button } from '../_ui/button';
import { LinkButton } from '../_ui/link-button';
import { VisuallyHidden } from '../_ui/visually-hidden';
import styles from './turns.module.css';
import { useAct } from './use-act';
import { WashedDialog } from './washed-dialog';

/** A set as a button needs it. */
export interface PressedSet {
  id: string;
  code: string;
  revision: number;
}

/**
 * The one next step of a set. What is done here and now is one press; what is done on another screen leads there.
 *
 * @param mayAct  whether this person may do it; if not, it is said and nothing is offered
 * @param href    the screen where it is done, for acts that have one
 * @param doneAt  when it was done, where that is earlier than now
 * @param focusable the page's own step: focus comes here where the address asks for it
 */
export function NextStep({
  set,
  act,
  mayAct,
  href,
  doneAt = null,
  focusable = false,
  kind = 'plain',
}: {
  set: PressedSet;
  act: NextAct;
  mayAct: boolean;
  href: string | null;
  doneAt?: string | null;
  focusable?: boolean;
  kind?: 'primary' | 'plain';
}) {
  const { act: send, pending, refusal } = useAct();
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // a scan leads here with the step in focus, so that Enter takes it
    if (focusable && window.location.hash === '#next')
      place.current?.querySelector<HTMLElement>('button, a')?.focus();
  }, [focusable]);
  const label = NEXT_ACT_WORDS[act];
  const press = (path: string, done: string) => () =>
    send(`/api/v1/sets/${set.id}/${path}`, { baseRevision: set.revision, doneAt }, `${set.code}: ${done}.`);
  return (
    <div ref={place} className={styles.next}>
      {!mayAct ? (
        <p className={styles.soft}>{`${label}: for the ${listWords(
          PERMITTED[ACT_OF[act]].map((role) => ROLE_WORDS[role].toLowerCase()),
          'or',
        )}.`}</p>
      ) : act === 'receive' ? (
        <Button kind={kind} pending={pending} onClick={press('receive', 'coming back')}>
          {label}
          <VisuallyHidden>{set.code}</VisuallyHidden>
        </Button>
      ) : act === 'beginWash' ? (
        <Button kind={kind} pending={pending} onClick={press('begin-wash', 'washing')}>
          {label}
          <VisuallyHidden>{set.code}</VisuallyHidden>
        </Button>
      ) : act === 'endWash' ? (
        <WashedDialog set={set} doneAt={doneAt} kind={kind} />
      ) : href === null ? (
        <p className={styles.soft}>{label}</p>
      ) : (
        <LinkButton href={href} kind={kind}>
          {label}
          <VisuallyHidden>{set.code}</VisuallyHidden>
        </LinkButton>
      )}
      <div role="status" className={styles.refusal}>
        {refusal}
      </div>
    </div>
  );
}
