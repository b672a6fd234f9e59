import Link from 'next/link';
import type { ReactNode } from 'react';
import { type Definition, DefinitionList } from '@/app/_ui/definition-list';
import { Status } from '@/app/_ui/status';
import type { LoanOnScreen } from '@/db/queries/loans/loanOnScreen';
import { loanNoticeWords } from '@/lib/wording/loan-notice';
import { lateWords, PAPER_WORDS } from '@/lib/wording/loans';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';

/** Who, for what, by when, and how it came and goes. */
export function LoanFactsList({ found, at }: { found: LoanOnScreen; at: string }) {
  const { loan, lender, booked, configuration, due, names, declared, handed } = found;
  const moment = (instant: string | null) => (instant === null ? null : momentWords(instant, at));
  const items: Definition[] = [
    {
      term: 'Lender',
      value: <Link href={`/lenders/${lender.id}`}>{lender.name}</Link>,
      note: [lender.contact, lender.phone, lender.email].filter(Boolean).join(', '),
    },
    {
      term: 'For',
      value: booked ? (
        <Link href={`/cases/${booked.id}`}>{`Case ${booked.reference}`}</Link>
      ) : (
        `${loan.fromDate} to ${loan.untilDate}`
      ),
      note: booked ? `${momentWords(booked.startsAt, at)}, ${booked.surgeon}` : 'a period',
    },
    { term: 'Asked by', value: names.askedBy, note: moment(loan.askedAt) },
    {
      term: 'Our kind',
      value: configuration ? (
        <Link
          href={`/configurations/${configuration.id}`}
        >{`${configuration.code}, ${configuration.name}`}</Link>
      ) : (
        'none: asked for in words'
      ),
    },
    {
      term: 'Due',
      value: moment(due.at) ?? notEstablished('not established'),
      note: loanNoticeWords.ruleWord(due.terms.rule),
    },
    ...(loan.answeredBy === null
      ? []
      : [
          {
            term: 'The lender says',
            value: loan.endedBecause ?? `it arrives ${moment(loan.expectedAt) ?? 'at a time not stated'}`,
            note: `${loan.answeredBy}, ${moment(loan.answeredAt)}`,
          },
        ]),
    { term: 'Back with the lender by', value: loan.backBy },
  ];
  if (loan.arrivedAt !== null)
    items.push(
      { term: 'Came', value: moment(loan.arrivedAt), note: <Punctual found={found} /> },
      {
        term: 'Brought by',
        value: loan.broughtBy,
        note: found.place === null ? null : `stands in ${found.place}`,
      },
      ...(['declaration', 'instructions'] as const).map((paper) => ({
        term: capitalised(PAPER_WORDS[paper]),
        value: <PaperStatus paper={loan[paper]} />,
        note: names.papersBy === null ? null : `${names.papersBy}, ${moment(loan.papersAt)}`,
      })),
    );
  if (declared) items.push({ term: 'Declared by us', value: declared.name, note: moment(declared.at) });
  if (handed)
    items.push({
      term: 'Collected by',
      value: loan.collectedBy,
      note: `handed over by ${handed.name}, ${moment(loan.collectedAt)}`,
    });
  return <DefinitionList columns={2} items={items} />;
}

const notEstablished = (words: string): ReactNode => (
  <Status tone="unknown" look="plain">
    {words}
  </Status>
);

function Punctual({ found }: { found: LoanOnScreen }) {
  if (found.due.at === null) return notEstablished('against due: not established');
  return found.late ? (
    <Status tone="attention" look="plain">{`${lateWords(found.lateMinutes ?? 0)} late`}</Status>
  ) : (
    <Status tone="good" look="plain">
      in time
    </Status>
  );
}

function PaperStatus({ paper }: { paper: string | null }) {
  if (paper === null) return notEstablished('nobody has looked');
  return paper === 'present' ? (
    <Status tone="good" look="plain">
      here
    </Status>
  ) : (
    <Status tone="stop" look="plain">
      not here: held
    </Status>
  );
}
