import type { SetId } from '@/lib/identity/ids';
import type { HandedOver, LastThere, OurDeclaration } from '@/lib/loans/declaration';
import type { LoanNext } from '@/lib/loans/nextStep';
import type { ReconciledLine } from '@/lib/loans/reconcile';
import type { LoanState } from '@/lib/loans/states';
import { type TurnStep, turnStep } from '@/lib/sets/setState';
import type { lenders } from '../../schema';
import type { LoanRecord, LoanRow } from './facts';

type LenderRow = typeof lenders.$inferSelect;

export interface LoanLine extends Omit<ReconciledLine, 'lineId' | 'listed'> {
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

export interface LoanQuestion {
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

export function linesOf({ lines, reconciled }: LoanRecord): LoanLine[] {
  return lines.map((line, at) => {
    const found = reconciled[at];
    if (!found) throw new Error('every line is reconciled');
    const { lineId: _lineId, listed: _listed, ...figures } = found;
    const { id, tray, itemId, code, gtin, name, quantity, implant, mustHaveClass } = line;
    return { id, tray, itemId, code, gtin, name, quantity, implant, mustHaveClass, ...figures };
  });
}

export function traysOf({ trays }: LoanRecord): LoanTray[] {
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

export function countingOf(
  { counting, counts }: LoanRecord,
  stage: 'in' | 'out',
  nameOf: (id: string) => string,
) {
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
