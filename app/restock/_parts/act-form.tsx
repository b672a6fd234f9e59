'use client';

import type { FormEvent, ReactNode } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import type { SentProblem } from '@/app/sets/_parts/send-json';
import styles from '../restock.module.css';

/** The frame of a form that does one thing: what is wrong above, the button that names the act below. */
export function ActForm({
  confirm,
  pending,
  problems,
  onSend,
  children,
}: {
  confirm: string;
  pending: boolean;
  problems: readonly SentProblem[];
  onSend: () => void;
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
        <Button type="submit" kind="primary" pending={pending}>
          {confirm}
        </Button>
      </ButtonRow>
    </form>
  );
}
