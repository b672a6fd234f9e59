'use client';

import type { FormEvent, ReactNode } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import type { SentProblem } from '@/app/sets/_parts/send-json';
import styles from '../loans.module.css';

/** The frame of a form that does one thing with a loan: what is wrong above, one button below. */
export function ActForm({
  confirm,
  pending,
  problems,
  onSend,
  more,
  children,
}: {
  confirm: string;
  pending: boolean;
  problems: readonly SentProblem[];
  onSend: () => void;
  /** Further buttons beside the one that sends. */
  more?: ReactNode;
  children?: ReactNode;
}) {
  function submit(event: FormEvent) {
    event.preventDefault();
    onSend();
  }
  return (
    <form onSubmit={submit} noValidate className={styles.form}>
      {problems.length > 0 ? <ProblemSummary problems={problems} /> : null}
      {children}
      <ButtonRow>
        <Button type="submit" kind="primary" size="bench" pending={pending}>
          {confirm}
        </Button>
        {more}
      </ButtonRow>
    </form>
  );
}
