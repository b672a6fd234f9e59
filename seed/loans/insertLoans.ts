import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import {
  cases,
  configurationLines,
  items,
  lenders,
  loanCountLines,
  loanCounts,
  loanLines,
  loanQuestions,
  loanSteps,
  loans,
  loanTrays,
} from '@/db/schema';
import { groupBy } from '@/lib/lists/groupBy';
import { isImplant } from '@/lib/loads/implants';
import { CONFIGURATIONS } from '../configurations/configurations';
import { versionIdOf } from '../configurations/layout';
import type { HospitalClock } from '../hospitalClock';
import { LENDERS, LOANS } from './loanPlan';
import { type Dated, datedOf, later, loanRow, stepRows, trayRow } from './loanRows';

/** Lenders, and a loan of each kind. Needs the sets that are on loan, and the cases they are for. */
export async function insertLoans(write: Queries, clock: HospitalClock): Promise<void> {
  await insertMany(
    write,
    lenders,
    LENDERS.map((one) => ({ ...one, revision: 1 })),
  );
  const booked = new Map((await write.select().from(cases)).map((row) => [row.reference, row]));
  const lines = groupBy(await write.select().from(configurationLines), ({ versionId }) => versionId);
  const itemOf = new Map((await write.select().from(items)).map((row) => [row.id, row]));
  for (const plan of LOANS) {
    const dated = datedOf(plan, clock, booked);
    await write.insert(loans).values(loanRow(dated, clock));
    await insertMany(write, loanSteps, stepRows(dated, clock));
    if (!plan.arrived) continue;
    const listed = (lines.get(versionInForce(plan.configuration)) ?? []).map((line, at) => {
      const item = itemOf.get(line.itemId);
      if (!item) throw new Error(`${line.itemId} is in no catalogue`);
      return {
        id: `loanLine_demo-${plan.number.slice(3)}-${at + 1}`,
        loanId: dated.id,
        position: at + 1,
        tray: 1,
        itemId: item.id,
        code: item.code,
        gtin: item.gtin,
        name: item.name,
        quantity: line.expected,
        implant: isImplant(item.kind as never),
        mustHaveClass: line.mustHaveClass,
      };
    });
    if (plan.arrived.set !== null) await insertMany(write, loanLines, listed);
    await write.insert(loanTrays).values(trayRow(dated));
    await insertCounts(write, dated, listed);
    await insertQuestion(write, dated);
  }
}

async function insertCounts(
  write: Queries,
  { plan, id, arrivedAt }: Dated,
  lines: readonly { id: string; quantity: number }[],
) {
  if (!plan.counted || arrivedAt === null) return;
  for (const [at, personId] of plan.counted.entries()) {
    const countId = `loanCount_demo-${plan.number.slice(3)}-${at + 1}`;
    await write.insert(loanCounts).values({
      id: countId,
      loanId: id,
      stage: 'in',
      purpose: at === 0 ? 'count' : 'check',
      personId,
      countedAt: later(arrivedAt, 25 + at * 15),
    });
    await insertMany(
      write,
      loanCountLines,
      lines.map((line) => ({ countId, lineId: line.id, sound: line.quantity, damaged: 0 })),
    );
  }
}

async function insertQuestion(write: Queries, { plan, id, arrivedAt }: Dated) {
  if (!plan.late || arrivedAt === null) return;
  await write.insert(loanQuestions).values({
    id: `loanQuestion_demo-${plan.number.slice(3)}`,
    loanId: id,
    kind: 'acceptLate',
    askedOf: plan.late.askedOf,
    askedBy: 'person_dilys-harrow',
    askedAt: later(arrivedAt, 5),
    words: plan.late.asks,
    answer: 'yes',
    answerWords: plan.late.says,
    answeredAt: later(arrivedAt, 20),
  });
}

function versionInForce(code: string): string {
  const plan = CONFIGURATIONS.find((one) => one.code === code);
  const version = plan?.versions.find(({ status }) => status === 'inForce')?.version;
  if (version === undefined) throw new Error(`${code} has no version in force`);
  return versionIdOf(code, version);
}
