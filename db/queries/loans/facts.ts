import { and, asc, eq, inArray, notInArray } from 'drizzle-orm';
import { type CountStanding, countStanding, type LoanCount, type LoanStage } from '@/lib/loans/counting';
import { dueOf, lateMinutes, type NoticeTerms, neededAt, noticeTerms } from '@/lib/loans/due';
import type { LoanFacts, Paper } from '@/lib/loans/nextStep';
import {
  type Discrepancy,
  discrepancies,
  type ReconciledLine,
  reconcile,
  shortOnArrival,
} from '@/lib/loans/reconcile';
import { loanState } from '@/lib/loans/states';
import { turnStep } from '@/lib/sets/setState';
import { wallClock } from '@/lib/theatre/localTime';
import type { Queries } from '../../client';
import {
  cases,
  loanClaims,
  loanCountLines,
  loanCounts,
  loanLines,
  loanQuestions,
  type loans,
  loanTrays,
  loanUses,
  sets,
  turnSteps,
} from '../../schema';
import { readSetting } from '../settings';

export type LoanRow = typeof loans.$inferSelect;
type CaseRow = typeof cases.$inferSelect;
type SetRow = typeof sets.$inferSelect;

/** Everything on record about one loan, and what follows from it. */
export interface LoanRecord {
  loan: LoanRow;
  booked: CaseRow | null;
  lines: (typeof loanLines.$inferSelect)[];
  trays: { row: typeof loanTrays.$inferSelect; set: SetRow | null; touched: boolean; used: boolean }[];
  counts: (LoanCount & { id: string; stage: LoanStage })[];
  counting: Record<LoanStage, CountStanding>;
  uses: (typeof loanUses.$inferSelect)[];
  questions: (typeof loanQuestions.$inferSelect)[];
  claims: (typeof loanClaims.$inferSelect)[];
  /** When it is due, and by which rule: the setting's, or once it has arrived, the one kept with it. */
  due: { at: string | null; terms: NoticeTerms; neededAt: string | null };
  reconciled: ReconciledLine[];
  unclaimed: Discrepancy[];
  facts: LoanFacts;
}

/** Reads a loan whole. Inside or outside a write; permission is asked by the caller. */
export async function loanRecord(read: Queries, loan: LoanRow, now: string): Promise<LoanRecord> {
  const [lines, trays, counts, uses, questions, claims, bench, setting, [booked]] = await Promise.all([
    read.select().from(loanLines).where(eq(loanLines.loanId, loan.id)).orderBy(asc(loanLines.position)),
    traysOf(read, loan.id),
    countsOf(read, loan.id),
    read.select().from(loanUses).where(eq(loanUses.loanId, loan.id)),
    read
      .select()
      .from(loanQuestions)
      .where(eq(loanQuestions.loanId, loan.id))
      .orderBy(asc(loanQuestions.askedAt)),
    read.select().from(loanClaims).where(eq(loanClaims.loanId, loan.id)).orderBy(asc(loanClaims.openedAt)),
    readSetting(read, 'bench'),
    readSetting(read, 'loans'),
    loan.caseId === null ? [] : read.select().from(cases).where(eq(cases.id, loan.caseId)),
  ]);
  const needed = neededAt(loan, booked ?? null, setting);
  const terms = loan.dueRule === null ? noticeTerms(setting) : (loan.dueRule as NoticeTerms);
  const dueAt = loan.arrivedAt === null ? (needed === null ? null : dueOf(needed, terms)) : loan.dueAt;
  const standing = (stage: LoanStage) =>
    countStanding(
      lines,
      counts.filter((one) => one.stage === stage),
      bench.secondCheck,
    );
  const counting = { in: standing('in'), out: standing('out') };
  // what is still counted blind is in no figure: the second person could work the first one's out from it
  const figuresOf = (stage: LoanStage) =>
    counting[stage].next === 'done' ? counting[stage].figures : new Map();
  const reconciled = reconcile(lines, figuresOf('in'), uses, figuresOf('out'));
  const unclaimed = discrepancies(reconciled).filter(
    ({ lineId, stage, kind }) =>
      !claims.some((claim) => claim.lineId === lineId && claim.stage === stage && claim.kind === kind),
  );
  return {
    loan,
    booked: booked ?? null,
    lines,
    trays,
    counts,
    counting,
    uses,
    questions,
    claims,
    due: { at: dueAt, terms, neededAt: needed },
    reconciled,
    unclaimed,
    facts: {
      state: loanState.parse(loan.state),
      listed: lines.length > 0,
      late: (lateMinutes(dueAt, loan.arrivedAt) ?? 0) > 0 || isAfter(loan.arrivedAt, dueAt),
      declaration: loan.declaration as Paper | null,
      instructions: loan.instructions as Paper | null,
      trays: trays.map(({ row, set, touched }) => ({
        tray: row.tray,
        weighedIn: row.gramsIn !== null,
        weighedOut: row.gramsOut !== null,
        set: set && { step: turnStep.parse(set.step), touched },
      })),
      counting: { in: counting.in.next, out: counting.out.next },
      shortOnArrival: shortOnArrival(reconciled).length,
      questions: questions.map(({ kind, answer }) => ({
        kind: kind as 'acceptLate' | 'useWithout',
        answer: answer as 'yes' | 'no' | null,
      })),
      declared: loan.ourDeclaration !== null,
      openClaims: claims.filter(({ state }) => state === 'open' || state === 'disputed').length,
      unclaimed: unclaimed.length,
      timeToGo: timeToGo(loan, booked ?? null, now),
    },
  };
}

/** Late by less than a minute is late all the same. */
const isAfter = (arrivedAt: string | null, dueAt: string | null): boolean =>
  arrivedAt !== null && dueAt !== null && Date.parse(arrivedAt) > Date.parse(dueAt);

function timeToGo(loan: LoanRow, booked: CaseRow | null, now: string): boolean {
  const today = wallClock(now).date;
  if (loan.backBy !== null && loan.backBy <= today) return true;
  if (booked) return booked.cancelledAt !== null || booked.endsAt <= now;
  return loan.untilDate !== null && loan.untilDate < today;
}

async function traysOf(read: Queries, loanId: string): Promise<LoanRecord['trays']> {
  const rows = await read
    .select({ row: loanTrays, set: sets })
    .from(loanTrays)
    .leftJoin(sets, eq(sets.id, loanTrays.setId))
    .where(eq(loanTrays.loanId, loanId))
    .orderBy(asc(loanTrays.tray));
  const ids = rows.flatMap(({ set }) => (set ? [set.id] : []));
  const steps =
    ids.length === 0
      ? []
      : await read
          .selectDistinct({ setId: turnSteps.setId, step: turnSteps.step })
          .from(turnSteps)
          .where(and(inArray(turnSteps.setId, ids), notInArray(turnSteps.step, ['comingBack', 'held'])));
  return rows.map(({ row, set }) => {
    const own = steps.filter(({ setId }) => setId === set?.id);
    return { row, set, touched: own.length > 0, used: own.some(({ step }) => step === 'inTheatre') };
  });
}

async function countsOf(read: Queries, loanId: string): Promise<LoanRecord['counts']> {
  const rows = await read
    .select({ count: loanCounts, line: loanCountLines })
    .from(loanCounts)
    .leftJoin(loanCountLines, eq(loanCountLines.countId, loanCounts.id))
    .where(eq(loanCounts.loanId, loanId));
  const byId = new Map<
    string,
    LoanRecord['counts'][number] & { figures: Map<string, { sound: number; damaged: number }> }
  >();
  for (const { count, line } of rows) {
    const { id, personId, countedAt: at } = count;
    const kept = byId.get(id) ?? {
      id,
      personId,
      at,
      stage: count.stage as LoanStage,
      purpose: count.purpose as LoanCount['purpose'],
      figures: new Map(),
    };
    if (line) kept.figures.set(line.lineId, { sound: line.sound, damaged: line.damaged });
    byId.set(id, kept);
  }
  return [...byId.values()];
}
