import { asc, eq, inArray } from 'drizzle-orm';
import { handedOver, lastThereAt, ourDeclaration } from '@/lib/loans/declaration';
import { lateMinutes } from '@/lib/loans/due';
import { nextStep } from '@/lib/loans/nextStep';
import { loanState } from '@/lib/loans/states';
import { mayRead, type Reading } from '../../reader';
import { configurations, lenders, loanSteps, loans, people, places } from '../../schema';
import { readSetting } from '../settings';
import { type LoanRecord, loanRecord } from './facts';
import {
  countingOf,
  type LoanClaim,
  type LoanOnScreen,
  type LoanQuestion,
  linesOf,
  traysOf,
} from './loanOnScreen';

/** One loan whole, for its screen and its papers; `null` where there is none. */
export async function findLoan(db: Reading, id: string, now: string): Promise<LoanOnScreen | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [row] = await read
    .select({ loan: loans, lender: lenders, configuration: configurations, place: places.name })
    .from(loans)
    .innerJoin(lenders, eq(lenders.id, loans.lenderId))
    .leftJoin(configurations, eq(configurations.id, loans.configurationId))
    .leftJoin(places, eq(places.id, loans.placeId))
    .where(eq(loans.id, id));
  if (!row) return null;
  const [record, steps, { massLimitsGrams }] = await Promise.all([
    loanRecord(read, row.loan, now),
    read.select().from(loanSteps).where(eq(loanSteps.loanId, id)).orderBy(asc(loanSteps.seq)),
    readSetting(read, 'sets'),
  ]);
  const nameOf = await namesOf(db, record, steps);
  const { booked } = record;
  const { ourDeclaration: declared, handedOver: handed, dueRule: _rule, ...loan } = row.loan;
  return {
    loan: { ...loan, state: loanState.parse(loan.state) },
    next: nextStep(record.facts),
    lender: row.lender,
    booked: booked && {
      id: booked.id,
      reference: booked.reference,
      startsAt: booked.startsAt,
      surgeonId: booked.surgeonId,
      surgeon: nameOf(booked.surgeonId),
    },
    configuration: row.configuration,
    place: row.place,
    names: { askedBy: nameOf(loan.askedBy), papersBy: loan.papersBy && nameOf(loan.papersBy) },
    due: record.due,
    lateMinutes: lateMinutes(record.due.at, loan.arrivedAt),
    late: record.facts.late,
    lines: linesOf(record),
    trays: traysOf(record),
    counting: { in: countingOf(record, 'in', nameOf), out: countingOf(record, 'out', nameOf) },
    uses: record.uses.map(({ lineId, caseId, outcome, quantity }) => ({ lineId, caseId, outcome, quantity })),
    used: record.trays.some(({ used }) => used),
    questions: record.questions.map((one) => ({
      ...one,
      kind: one.kind as LoanQuestion['kind'],
      askedOf: { id: one.askedOf, name: nameOf(one.askedOf) },
      askedBy: nameOf(one.askedBy),
      answer: one.answer as LoanQuestion['answer'],
    })),
    claims: record.claims.map((one) => ({
      ...one,
      line: record.lines.find(({ id: lineId }) => lineId === one.lineId)?.name ?? '',
      stage: one.stage as LoanClaim['stage'],
      kind: one.kind as LoanClaim['kind'],
      lastThere: lastThereAt.parse(one.lastThere),
      openedBy: nameOf(one.openedBy),
      state: one.state as LoanClaim['state'],
    })),
    unclaimed: record.unclaimed,
    declared: declared === null ? null : ourDeclaration.parse(declared),
    handed: handed === null ? null : handedOver.parse(handed),
    story: steps.map(({ state, note, personId, doneAt }) => ({
      state: loanState.parse(state),
      note,
      by: nameOf(personId),
      at: doneAt,
    })),
    massLimitsGrams,
  };
}

type NameOf = (id: string) => string;

async function namesOf(
  { read }: Reading,
  { loan, booked, counts, questions, claims }: LoanRecord,
  steps: readonly { personId: string }[],
): Promise<NameOf> {
  const ids = [
    loan.askedBy,
    ...(loan.papersBy === null ? [] : [loan.papersBy]),
    ...(booked ? [booked.surgeonId] : []),
    ...counts.map(({ personId }) => personId),
    ...questions.flatMap(({ askedOf, askedBy }) => [askedOf, askedBy]),
    ...claims.map(({ openedBy }) => openedBy),
    ...steps.map(({ personId }) => personId),
  ];
  const rows = await read
    .select({ id: people.id, name: people.name })
    .from(people)
    .where(inArray(people.id, [...new Set(ids)]));
  const names = new Map(rows.map(({ id, name }) => [id, name]));
  return (id) => names.get(id) ?? id;
}
