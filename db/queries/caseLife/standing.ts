import { and, asc, eq, inArray, isNotNull, isNull, ne, sql } from 'drizzle-orm';
import { accountOf, returnOutcome } from '@/lib/caseLife/account';
import { type LifeFacts, type LifeStage, stageOf } from '@/lib/caseLife/life';
import { type WantedLine, wantedList } from '@/lib/caseLife/list';
import type { StockId } from '@/lib/identity/ids';
import type { Queries } from '../../client';
import { caseLives, casePicks, caseReturns, cases, returnsTakenBack } from '../../schema';

export type LifeRow = typeof caseLives.$inferSelect;
export type PickRow = typeof casePicks.$inferSelect;
export type ReturnRow = typeof caseReturns.$inferSelect;

/** The kit of a case as it is on record. */
export interface KitOnRecord {
  booked: typeof cases.$inferSelect;
  life: LifeRow | null;
  list: WantedLine[];
  /** Every pick, those put back too, in the order they were made. */
  picks: PickRow[];
  /** But for those a corrected record of use took back. */
  returns: ReturnRow[];
  stage: LifeStage;
}

export const stands = ({ putBackAt, issuedAt }: PickRow): boolean => putBackAt === null && issuedAt === null;

/** Picks that meet lines of the list: those that stand, and those that are out already, sent before the kit. */
export const meetingLines = ({ picks, returns }: Pick<KitOnRecord, 'picks' | 'returns'>): PickRow[] =>
  picks.filter(
    (pick) => stands(pick) || (pick.issuedAt !== null && !returns.some(({ pickId }) => pickId === pick.id)),
  );

/** The kit of one case, inside or outside a write; `null` when there is no such case. */
export async function kitOnRecord(read: Queries, caseId: string): Promise<KitOnRecord | null> {
  const [booked] = await read.select().from(cases).where(eq(cases.id, caseId));
  if (!booked) return null;
  return (await kitsOnRecord(read, [booked])).get(caseId) ?? null;
}

/** The kits of several cases, by case. */
export async function kitsOnRecord(
  read: Queries,
  booked: readonly (typeof cases.$inferSelect)[],
): Promise<Map<string, KitOnRecord>> {
  const ids = booked.map(({ id }) => id);
  const [lives, picks] = await Promise.all([
    read.select().from(caseLives).where(inArray(caseLives.caseId, ids)),
    read
      .select()
      .from(casePicks)
      .where(inArray(casePicks.caseId, ids))
      .orderBy(asc(casePicks.doneAt), asc(casePicks.id)),
  ]);
  const returns = await read
    .select({ row: caseReturns, caseId: casePicks.caseId })
    .from(caseReturns)
    .innerJoin(casePicks, eq(casePicks.id, caseReturns.pickId))
    .leftJoin(returnsTakenBack, eq(returnsTakenBack.returnId, caseReturns.id))
    .where(and(inArray(casePicks.caseId, ids), isNull(returnsTakenBack.returnId)))
    .orderBy(asc(caseReturns.doneAt), asc(caseReturns.id));
  return new Map(
    booked.map((one) => {
      const life = lives.find(({ caseId }) => caseId === one.id) ?? null;
      const own = picks.filter(({ caseId }) => caseId === one.id);
      const back = returns.filter(({ caseId }) => caseId === one.id).map(({ row }) => row);
      return [
        one.id,
        {
          booked: one,
          life,
          list: life === null ? [] : wantedList.parse(life.list),
          picks: own,
          returns: back,
          stage: stageOf(factsOf(one, life, own, back)),
        },
      ];
    }),
  );
}

function factsOf(
  booked: KitOnRecord['booked'],
  life: LifeRow | null,
  picks: readonly PickRow[],
  returns: readonly ReturnRow[],
): LifeFacts {
  return {
    cancelled: booked.cancelledAt !== null,
    begun: life !== null,
    pickedAt: life?.pickedAt ?? null,
    checkedAt: life?.checkedAt ?? null,
    issuedAt: life?.issuedAt ?? null,
    takenAt: life?.takenAt ?? null,
    standing: picks.filter(stands).length,
    issued: picks.filter(({ issuedAt }) => issuedAt !== null).length,
    stillOut: accountOf(
      picks.map(({ id, quantity, issuedAt }) => ({ id, quantity, issued: issuedAt !== null })),
      returns.map(({ pickId, outcome, quantity }) => ({
        pickId,
        outcome: returnOutcome.parse(outcome),
        quantity,
      })),
    ).stillOut,
  };
}

const standing = and(isNull(casePicks.putBackAt), isNull(casePicks.issuedAt));

/** Pieces of heaps that lie with a kit and have not left the store: they are there, and free for nobody else. */
export async function onKits(
  read: Queries,
  { exceptCase = null }: { exceptCase?: string | null } = {},
): Promise<Map<StockId, number>> {
  const rows = await read
    .select({ stockId: casePicks.stockId, pieces: sql<number>`sum(${casePicks.quantity})` })
    .from(casePicks)
    .where(
      and(
        standing,
        isNotNull(casePicks.stockId),
        exceptCase === null ? undefined : ne(casePicks.caseId, exceptCase),
      ),
    )
    .groupBy(casePicks.stockId);
  return new Map(rows.map(({ stockId, pieces }) => [stockId as StockId, pieces]));
}

/** The case whose kit each set lies with, and has not left the store; by set. */
export async function setsOnKits(
  read: Queries,
  only: string | null = null,
): Promise<Map<string, { caseId: string; reference: string }>> {
  const rows = await read
    .select({ setId: casePicks.setId, caseId: casePicks.caseId, reference: cases.reference })
    .from(casePicks)
    .innerJoin(cases, eq(cases.id, casePicks.caseId))
    .where(and(standing, only === null ? isNotNull(casePicks.setId) : eq(casePicks.setId, only)));
  return new Map(rows.map(({ setId, caseId, reference }) => [setId ?? '', { caseId, reference }]));
}

/** Pieces of heaps that are out for a case and may still be unopened: nobody has said what became of them. By heap. */
export async function packsOutFor(read: Queries, caseId: string): Promise<Map<string, number>> {
  const back = sql<number>`(SELECT coalesce(sum(r.quantity), 0) FROM case_returns r WHERE r.pick_id = case_picks.id
    AND r.id NOT IN (SELECT return_id FROM returns_taken_back))`;
  const rows = await read
    .select({ stockId: casePicks.stockId, pieces: sql<number>`sum(case_picks.quantity - ${back})` })
    .from(casePicks)
    .where(and(eq(casePicks.caseId, caseId), isNotNull(casePicks.issuedAt), isNotNull(casePicks.stockId)))
    .groupBy(casePicks.stockId);
  return new Map(rows.map(({ stockId, pieces }) => [stockId ?? '', pieces]));
}

/** The kit a labelled pouch lies with; `null` where it lies on its shelf. */
export async function kitOfPouch(read: Queries, packId: string): Promise<{ reference: string } | null> {
  const [row] = await read
    .select({ reference: cases.reference })
    .from(casePicks)
    .innerJoin(cases, eq(cases.id, casePicks.caseId))
    .where(and(standing, eq(casePicks.packId, packId)));
  return row ?? null;
}
