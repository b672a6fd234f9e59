import { ButtonRow } from '@/app/_ui/button-row';
import { Dialog } from '@/app/_ui/dialog';
import type { LoanChoices } from '@/db/queries/loans/choices';
import type { LoanOnScreen } from '@/db/queries/loans/findLoan';
import { may } from '@/lib/people/permissions';
import type { Role } from '@/lib/people/role';
import { momentWords } from '@/lib/wording/sets';
import { AnswerForm } from './answer-form';
import { ListImport } from './list-import';
import { PapersForm } from './papers-form';
import { ReasonDialog } from './reason-dialog';
import { UseDialog } from './use-dialog';

interface Props {
  found: LoanOnScreen;
  person: { role: Role };
  choices: LoanChoices;
  at: string;
}

/** What may be entered besides the next step: it changes nothing about what comes first. */
export function OtherActs({ found, person, choices, at }: Props) {
  const { next, loan: row, lender, configuration, counting, trays, lines, booked } = found;
  const loan = { id: row.id, number: row.number, revision: row.revision };
  const keeps = may(person.role, 'keepLoans');
  const isOpen = row.state === 'asked' || row.state === 'confirmed';
  const counted = counting.in.counts.length > 0 || trays.some(({ set }) => set !== null);
  const mayList = keeps && (isOpen || row.state === 'here') && !counted && next.do !== 'bringList';
  const mayUse =
    may(person.role, 'countLoan') &&
    found.used &&
    (row.state === 'inService' || row.state === 'goingBack') &&
    found.declared === null;
  const mayPapers = keeps && row.papersAt !== null && next.do !== 'getPapers';
  return (
    <ButtonRow>
      {mayList ? (
        <Dialog
          title={`The content list of ${loan.number}`}
          width="wide"
          trigger={{ label: 'Bring in the content list' }}
        >
          <ListImport loan={loan} asked={configuration?.code ?? null} />
        </Dialog>
      ) : null}
      {keeps && row.state === 'confirmed' ? (
        <Dialog title={`The lender on ${loan.number}`} trigger={{ label: 'The lender says something else' }}>
          <AnswerForm loan={loan} contact={lender.contact} />
        </Dialog>
      ) : null}
      {mayPapers && (row.state === 'here' || row.state === 'inService') ? (
        <Dialog title={`Papers of ${loan.number}`} trigger={{ label: 'Look for the papers again' }}>
          <PapersForm loan={loan} />
        </Dialog>
      ) : null}
      {mayUse ? (
        <UseDialog
          loan={loan}
          lines={lines.map(({ id, name, tray }) => ({ value: id, label: `${name}, tray ${tray}` }))}
          cases={choices.cases.map(({ id, reference, startsAt, surgeon }) => ({
            value: id,
            label: `${reference}, ${momentWords(startsAt, at)}, ${surgeon}`,
          }))}
          caseId={booked && choices.cases.some(({ id }) => id === booked.id) ? booked.id : ''}
        />
      ) : null}
      {keeps && isOpen ? (
        <ReasonDialog
          loan={loan}
          act="callOff"
          label="Call it off"
          about="It is not needed any more. Tell the lender; what has arrived is sent back instead."
        />
      ) : null}
      {keeps && row.state === 'inService' && next.do !== 'beginReturn' ? (
        <ReasonDialog
          loan={loan}
          act="beginReturn"
          label="Begin the return"
          about="It is washed where it was opened, counted, weighed and declared before it goes."
        />
      ) : null}
      {keeps && row.state === 'here' && next.do !== 'sendBack' ? (
        <ReasonDialog
          loan={loan}
          act="beginReturn"
          label="Send it back as it is"
          about="It is not taken into use. What was not opened goes back as it came."
        />
      ) : null}
    </ButtonRow>
  );
}
