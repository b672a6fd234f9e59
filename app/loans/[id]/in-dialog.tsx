'use client';

import { Dialog } from '@/app/_ui/dialog';
import type { SeenLoan } from '../use-loan-act';
import { AnswerForm } from './answer-form';
import { ArrivalForm } from './arrival-form';
import { ListImport } from './list-import';
import type { Moment } from './moment-fields';
import { PapersForm } from './papers-form';

/** The forms of the next step, offered also when something else comes first; each closes once it is done. */

export function ListDialog({ loan, asked }: { loan: SeenLoan; asked: string | null }) {
  return (
    <Dialog
      title={`The content list of ${loan.number}`}
      width="wide"
      trigger={{ label: 'Bring in the content list' }}
    >
      {(close) => <ListImport loan={loan} asked={asked} onDone={close} />}
    </Dialog>
  );
}

export function AnswerDialog({ loan, contact }: { loan: SeenLoan; contact: string | null }) {
  return (
    <Dialog title={`The lender on ${loan.number}`} trigger={{ label: 'The lender says something else' }}>
      {(close) => <AnswerForm loan={loan} contact={contact} onDone={close} />}
    </Dialog>
  );
}

export function ArrivalDialog({
  loan,
  now,
  places,
}: {
  loan: SeenLoan;
  now: Moment;
  places: { id: string; name: string }[];
}) {
  return (
    <Dialog
      title={`The arrival of ${loan.number}`}
      width="wide"
      trigger={{ label: 'It has arrived without a list' }}
    >
      {(close) => <ArrivalForm loan={loan} now={now} places={places} onDone={close} />}
    </Dialog>
  );
}

export function PapersDialog({ loan }: { loan: SeenLoan }) {
  return (
    <Dialog title={`Papers of ${loan.number}`} trigger={{ label: 'Look for the papers again' }}>
      {(close) => <PapersForm loan={loan} onDone={close} />}
    </Dialog>
  );
}
