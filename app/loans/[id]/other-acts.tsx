import { ButtonRow } from '@/app/_ui/button-row';
import type { LoanChoices } from '@/db/queries/loans/choices';
import type { LoanOnScreen } from '@/db/queries/loans/loanOnScreen';
import { may } from '@/lib/people/permissions';
import type { Role } from '@/lib/people/role';
import { wallClock } from '@/lib/theatre/localTime';
import { momentWords } from '@/lib/wording/sets';
import { AnswerDialog, ArrivalDialog, ListDialog, PapersDialog } from './in-dialog';
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
  const keeps = may(person, 'keepLoans');
  const isOpen = row.state === 'asked' || row.state === 'confirmed';
  const counted = counting.in.counts.length > 0 || trays.some(({ set }) => set !== null);
  const mayList = keeps && (isOpen || row.state === 'here') && !counted && next.do !== 'bringList';
  const mayUse =
    may(person, 'countLoan') &&
    found.used &&
    (row.state === 'inService' || row.state === 'goingBack') &&
    found.declared === null;
  const mayPapers =
    keeps &&
    (row.state === 'here' || row.state === 'inService') &&
    row.papersAt !== null &&
    next.do !== 'getPapers';
  return (
    <ButtonRow>
      {mayList ? <ListDialog loan={loan} asked={configuration?.code ?? null} /> : null}
      {keeps && row.state === 'confirmed' ? <AnswerDialog loan={loan} contact={lender.contact} /> : null}
      {keeps && row.state === 'confirmed' && next.do === 'bringList' ? (
        <ArrivalDialog loan={loan} now={wallClock(at)} places={choices.places} />
      ) : null}
      {mayPapers ? <PapersDialog loan={loan} /> : null}
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
      {keeps && isOpen && next.do !== 'callOff' ? (
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
