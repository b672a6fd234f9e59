'use client';

import { type SeenLoan, useLoanAct } from '../use-loan-act';
import { ActForm } from './act-form';

/** An act that is one press. */
export function PlainAct({
  loan,
  act,
  label,
  done,
}: {
  loan: SeenLoan;
  act: 'tag' | 'takeIn';
  label: string;
  done: string;
}) {
  const { send, pending, problems } = useLoanAct(loan);
  return <ActForm confirm={label} pending={pending} problems={problems} onSend={() => send({ act }, done)} />;
}
