import { asc, eq, inArray } from 'drizzle-orm';
import type { SetId } from '@/lib/identity/ids';
import {
  type HandedOver,
  handedOver,
  type LastThere,
  lastThereAt,
  type OurDeclaration,
  ourDeclaration,
} from '@/lib/loans/declaration';
import { lateMinutes } from '@/lib/loans/due';
import { type LoanNext, nextStep } from '@/lib/loans/nextStep';
import type { ReconciledLine } from '@/lib/loans/reconcile';
import { type LoanState, loanState } from '@/lib/loans/states';
import { type TurnStep, turnStep } from '@/lib/sets/setState';
import { mayRead, type Reading } from '../../reader';
import { configurations, lenders, loanSteps, loans, people, places } from '../../schema';
import { readSetting } from '../settings';
import { type LoanRecord, type LoanRow, loanRecord } from './facts';

type LenderRow = typeof lenders.$inferSelect;

interface LoanLine extends Omit<ReconciledLine, 'lineId' | 'listed'> {
  id: string;
  tray: number;
  itemId: string | null;
  code: string | null;
  gtin: string | null;
  name: string;
  quantity: number;
  implant: boolean | null;
  mustHaveClass: number | null;
}

export interface LoanTray {
  tray: number;
  tag: string | null;
  gramsIn: number | null;
  gramsOut: number | null;
  /** Something was done to it here beyond taking it in. */
  touched: boolean;
  set: { id: SetId; code: string; step: TurnStep; heldBecause: string | null; withdrawn: boolean } | null;
}

interface LoanQuestion {
  id: string;
  kind: 'acceptLate' | 'useWithout';
  askedOf: { id: string; name: string };
  askedBy: string;
  askedAt: string;
  words: string;
  answer: 'yes' | 'no' | null;
  answerWords: string | null;
  answeredAt: string | null;
}

export interface LoanClaim {
  id: string;
  line: string;
  stage: 'in' | 'out';
  kind: 'notFound' | 'damaged';
  quantity: number;
  lastThere: LastThere;
  words: string;
  openedBy: string;
  openedAt: string;
  state: 'open' | 'agreed' | 'disputed' | 'withdrawn';
  saidBy: string | null;
  saidWords: string | null;
}

export interface LoanOnScreen {
  loan: Omit<LoanRow, 'ourDeclaration' | 'handedOver' | 'state' | 'dueRule'> & { state: LoanState };
  next: LoanNext;
  lender: LenderRow;
  booked: { id: string; reference: string; startsAt: string; surgeonId: string; surgeon: string } | null;
  configuration: { id: string; code: string; name: string } | null;
  place: string | null;
  names: { askedBy: string; papersBy: string | null };
  due: LoanRecord['due'];
  lateMinutes: number | null;
  /** Came after it was due, were it by less than a minute. */
  late: boolean;
  lines: LoanLine[];
  trays: LoanTray[];
  counting: {
    [Stage in 'in' | 'out']: {
      next: LoanRecord['counting']['in']['next'];
      disputed: string[];
      firstBy: string | null;
      /** Who counted when; never what, before it is settled. */
      counts: { purpose: string; by: string; at: string }[];
    };
  };
  uses: { lineId: string; caseId: string; outcome: string; quantity: number }[];
  /** One of its trays was in theatre. */
  used: boolean;
  questions: LoanQuestion[];
  claims: LoanClaim[];
  unclaimed: LoanRecord['unclaimed'];
  declared: OurDeclaration | null;
  handed: HandedOver | null;
  story: { state: LoanState; note: string | null; by: string; at: string }[];
  massLimitsGrams: number[];
}

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

function linesOf({ lines, reconciled }: LoanRecord): LoanLine[] {
  return lines.map((line, at) => {
    const found = reconciled[at];
    if (!found) throw new Error('every line is reconciled');
    const { lineId: _lineId, listed: _listed, ...figures } = found;
    const { id, tray, itemId, code, gtin, name, quantity, implant, mustHaveClass } = line;
    return { id, tray, itemId, code, gtin, name, quantity, implant, mustHaveClass, ...figures };
  });
}

function traysOf({ trays }: LoanRecord): LoanTray[] {
  return trays.map(({ row, set, touched }) => ({
    touched,
    tray: row.tray,
    tag: row.tag,
    gramsIn: row.gramsIn,
    gramsOut: row.gramsOut,
    set: set && {
      id: set.id as SetId,
      code: set.code,
      step: turnStep.parse(set.step),
      heldBecause: set.heldBecause,
      withdrawn: set.withdrawnAt !== null,
    },
  }));
}

function countingOf({ counting, counts }: LoanRecord, stage: 'in' | 'out', nameOf: NameOf) {
  const { next, disputed, firstBy } = counting[stage];
  return {
    next,
    // which lines differ is told only to whoever counts those again
    disputed: next === 'settle' ? disputed : [],
    firstBy,
    counts: counts
      .filter((one) => one.stage === stage)
      .map(({ purpose, personId, at }) => ({ purpose, by: nameOf(personId), at }))
      .sort((a, b) => a.at.localeCompare(b.at)),
  };
}
