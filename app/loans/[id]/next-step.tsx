import Link from 'next/link';
import type { ReactNode } from 'react';
import type { LoanChoices } from '@/db/queries/loans/choices';
import type { LoanOnScreen } from '@/db/queries/loans/loanOnScreen';
import { tagOf } from '@/lib/loans/trayKind';
import { may } from '@/lib/people/permissions';
import { ROLE_WORDS, type Role } from '@/lib/people/role';
import { wallClock } from '@/lib/theatre/localTime';
import { loanReturnWords } from '@/lib/wording/loan-paper';
import { questionWords } from '@/lib/wording/loans';
import { stepWords } from '@/lib/wording/sets';
import styles from '../loans.module.css';
import { AnswerForm } from './answer-form';
import { ArrivalForm } from './arrival-form';
import { CountForm } from './count-form';
import { DeclareButton, HandOver } from './leaving';
import { ListImport } from './list-import';
import { PapersForm } from './papers-form';
import { PlainAct } from './plain-act';
import { AskForm, DecideForm } from './question-forms';
import { ReasonDialog } from './reason-dialog';
import { WeighForm } from './weigh-form';

interface Props {
  found: LoanOnScreen;
  person: { id: string; role: Role };
  choices: LoanChoices;
  at: string;
}

/** The one thing to do next, for whoever may do it; everybody else is told who does. */
export function NextStep({ found, person, choices, at }: Props): ReactNode {
  const { next, loan: row, trays, lender, configuration, counting, questions } = found;
  const loan = { id: row.id, number: row.number, revision: row.revision };
  const keeps = may(person, 'keepLoans');
  const counts = may(person, 'countLoan');
  const byKeeper = (node: ReactNode) => (keeps ? node : <p>The loan keeper does this.</p>);
  const byCounter = (node: ReactNode) => (counts ? node : <p>The loan keeper or the bench does this.</p>);
  switch (next.do) {
    case 'recordAnswer':
      return byKeeper(<AnswerForm loan={loan} contact={lender.contact} />);
    case 'callOff':
      return byKeeper(
        <>
          <ReasonDialog
            loan={loan}
            act="callOff"
            label="Call it off"
            about="Tell the lender. What has arrived is sent back instead."
            primary
          />
          {row.state === 'confirmed' ? (
            <>
              <p>If it came all the same, enter its arrival.</p>
              <ArrivalForm loan={loan} now={wallClock(at)} places={choices.places} />
            </>
          ) : null}
        </>,
      );
    case 'bringList':
      return byKeeper(<ListImport loan={loan} asked={configuration?.code ?? null} />);
    case 'recordArrival':
      return byKeeper(<ArrivalForm loan={loan} now={wallClock(at)} places={choices.places} />);
    case 'lookAtPapers':
      return byKeeper(<PapersForm loan={loan} />);
    case 'weigh':
    case 'weighOut': {
      const stage = next.do === 'weigh' ? 'in' : 'out';
      const all = trays.map(({ tray }) => tray);
      return byCounter(
        <WeighForm key={stage} loan={loan} stage={stage} trays={all} limitsGrams={found.massLimitsGrams} />,
      );
    }
    case 'tag': {
      const tags = trays.filter(({ set }) => set === null).map(({ tray }) => tagOf(row.number, tray));
      return byKeeper(
        <>
          <p>{`Write ${tags.join(', ')} on a tag with the lender’s name, and fix one to each tray, in this order. From then on each is a set under that code.`}</p>
          <PlainAct loan={loan} act="tag" label="The tags are on" done="its trays are tagged" />
        </>,
      );
    }
    case 'countIn':
    case 'checkIn':
    case 'settleIn':
      return byCounter(<Counting found={found} stage="in" personId={person.id} />);
    case 'countOut':
    case 'checkOut':
    case 'settleOut':
      return byCounter(<Counting found={found} stage="out" personId={person.id} />);
    case 'ask':
      return byKeeper(
        <AskForm
          loan={loan}
          question={next.question}
          deciders={choices.deciders.map((one) => ({ ...one, role: ROLE_WORDS[one.role as Role] }))}
        />,
      );
    case 'awaitAnswer': {
      const open = questions.find(({ kind, answer }) => kind === next.question && answer === null);
      if (!open) throw new Error('there is an answer to wait for');
      return open.askedOf.id === person.id ? (
        <DecideForm loan={loan} question={open} />
      ) : (
        <p>{`${open.askedOf.name} was asked ${questionWords(open.kind)}, and alone answers it.`}</p>
      );
    }
    case 'takeIn':
      return byKeeper(
        <>
          <p>
            Weighed, counted, and its papers looked for. Its trays go on to washing like every other set; what
            is held stays held.
          </p>
          <PlainAct loan={loan} act="takeIn" label="It is unpacked" done="it goes on to decontamination" />
        </>,
      );
    case 'sendBack':
    case 'beginReturn':
      return byKeeper(
        <ReasonDialog
          loan={loan}
          act="beginReturn"
          label="Begin the return"
          about="It is washed where it was opened, counted, weighed and declared before it goes."
          primary
        />,
      );
    case 'getPapers':
      return byKeeper(<PapersForm loan={loan} />);
    case 'ordinaryTurn':
    case 'decontaminate':
      return <Trays found={found} />;
    case 'claim':
      return <p>Each line under “Not as it should be” is put to the lender, in words.</p>;
    case 'settleClaims':
      return <p>Under “Claims”, enter what the lender says to each.</p>;
    case 'declare':
      return may(person, 'declareLoan') ? (
        <DeclareButton loan={loan} says={declarationOf(found)} />
      ) : (
        <p>A technician or a decontamination lead declares it.</p>
      );
    case 'handOver':
      return byKeeper(<HandOver loan={loan} />);
    case 'nothing':
      return (
        <p>{row.endedBecause ?? `It has gone back${counting.out.next === 'done' ? ', counted' : ''}.`}</p>
      );
  }
}

/** The count that is due now: all lines, or those on which two counts differ. Whoever counted first does not check. */
function Counting({
  found,
  stage,
  personId,
}: {
  found: LoanOnScreen;
  stage: 'in' | 'out';
  personId: string;
}) {
  const { next, disputed, firstBy, counts } = found.counting[stage];
  if (next === 'check' && firstBy === personId)
    return <p>You made the first count. Another person checks it here, without seeing your figures.</p>;
  const lines = found.lines
    .filter(({ id }) => next !== 'settle' || disputed.includes(id))
    // how many are listed is not shown: what is counted is what lies there
    .map(({ id, tray, name, code, itemId }) => ({ id, tray, name, code, known: itemId !== null }));
  const { id, number, revision } = found.loan;
  return (
    // a count begun by one person is not gone on with by another
    <CountForm
      key={`${stage} ${counts.length} ${personId}`}
      loan={{ id, number, revision }}
      stage={stage}
      lines={lines}
    />
  );
}

/** Where each tray is now. */
function Trays({ found }: { found: LoanOnScreen }) {
  return (
    <ul className={styles.plain}>
      {found.trays.map(({ tray, set }) => (
        <li key={tray}>
          {set === null ? (
            `Tray ${tray} carries no tag yet.`
          ) : (
            <>
              <Link href={`/sets/${set.id}`}>{set.code}</Link>
              {` is ${stepWords(set.step, set.heldBecause)}.`}
            </>
          )}
        </li>
      ))}
    </ul>
  );
}

function declarationOf({ trays }: LoanOnScreen): string[] {
  const { how, tray: named } = loanReturnWords;
  return trays.map(
    ({ tray, tag, touched }) => `${named(tray, tag)}: ${how[touched ? 'decontaminated' : 'asItCame']}.`,
  );
}
